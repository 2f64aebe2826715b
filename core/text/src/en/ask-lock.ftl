### What is asked about locks and keys.

ask-lock-secured-instead = This point takes no lock. Write how it is secured instead.
ask-lock-label = Write what is on the lock's label.
ask-lock-where = Choose where the lock is: on a point, or on a lock box.
ask-lock-key = Choose where the key of this lock is.
ask-lock-key-with-owner = The key of a personal lock on a box stays with its owner. Choose: with the owner.
ask-lock-means = Choose how it is locked: a padlock through the device, or a padlock on a hasp.
ask-lock-means-other = Write which other means secures the point.
ask-lock-padlock-mark = Write what tells the two padlocks apart, such as: blue tape.
ask-lock-offer-to = Choose who takes the lock and the key.
ask-lock-offer-first = This lock is not on offer. Its holder offers it first.
ask-lock-cut-why = Write why there was no key.
ask-lock-authority = Choose who answers for taking this lock off.
ask-lock-authority-first = Name first who answers for taking this lock off.
ask-lock-authority-is = Write what the authority is at this site.
ask-lock-authority-reached = Write how the authority was reached.
ask-lock-cannot-wait = Write why it cannot wait for the owner.
ask-lock-not-on-site = Write how you found that the owner is not on site.
ask-lock-sought-how = Write how you tried to reach the owner.
ask-lock-sought-outcome = Write what came of the attempt.
ask-lock-told-how = Write how the owner was told.
ask-lock-telephone = No telephone number is kept for the owner. Ask for it on site.
