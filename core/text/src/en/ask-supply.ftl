### What is asked about a site's supply network.

ask-supply-zone = Mark what is worked on.
ask-supply-ways = Mark which way you answer for.
ask-supply-ways-why = Write why it does not count.
ask-supply-fed-from = Choose where it is fed from, or leave the name of the switch empty.
ask-supply-from = Choose where it begins.
ask-supply-to = Choose where it ends.
ask-supply-kind = Choose what it is.
ask-supply-link-kind = Choose what kind of link it is.
ask-supply-lockable = Choose whether it takes a lock.
ask-supply-normally = Choose whether it is open or closed in normal service.
ask-supply-name = Write its name, as it is labelled.
