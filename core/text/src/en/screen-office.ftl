### The office: joining one, what waits to be sent and why, and what does not agree.

office-alone = This phone works on its own.
office-reached = { $office }, last reached { $when }
office-not-reached = { $office }, not reached yet
office-all-sent = All sent.
office-unsent =
    { $count ->
        [one] 1 entry waits to be sent.
       *[other] { $count } entries wait to be sent.
    }
office-title = Office
# Nobody has joined an office yet.
# life-critical
office-none = This phone works on its own: others do not see its locks. An office shares records between phones at the same sites.
office-scan = Scan the office's code
office-name = Office
office-at = { $office }, { $address }
office-last-reached = Last reached
office-not-yet = not yet
office-now = Now
office-running = Exchanging.
office-next-try = Next try
office-next = { $when }, or as soon as there is something new
office-another = Another office
office-scan-another = Scan the code of another office
office-exchange = Exchange now
office-waiting = Waiting to send
office-entries = Entries
office-entries-unsent = { $count }, saved on this phone. They go first, in order.
# Photos are sent in three sizes, the smallest first.
office-pictures-small = Small pictures
office-pictures-larger = Larger pictures
office-pictures-original = Original photos
office-pictures-sent = All sent that the office asked for.
office-pictures-going = { $count }, on their way.
office-pictures-after = { $count }, after the entries.
office-pictures-wifi = { $count }, waiting for Wi-Fi or another link that costs nothing.
office-send-originals = Send the originals over this link
office-photos-gone =
    { $count ->
        [one] 1 photo that the office asks for is no longer on this phone.
       *[other] { $count } photos that the office asks for are no longer on this phone.
    }
office-aside-there =
    { $count ->
        [one] The office put 1 entry of this phone aside until somebody there looks. Check this phone's clock. Ask the office.
       *[other] The office put { $count } entries of this phone aside until somebody there looks. Check this phone's clock. Ask the office.
    }
office-old-key = The office knows this phone by its old key and puts aside what it sends. Scan a new code of the office.
# life-critical
office-differs = Office and phone do not match, even after fetching all again. Nothing here was changed. Locks of others may be missing here.
office-compare = Compare again
office-put-aside = Put aside here
# life-critical
office-not-in-journal = These are not in the journal. Entries about a job are listed on that job: look at the spot.
# $device is the beginning of what the device is known by.
office-aside = Entry { $number } of device { $device }
office-code = Or the code as text
office-code-hint = It begins with stillbar-enrol
office-use-code = Use this code
office-address = Office at
office-everything-goes = Every record on this phone, past and future, goes to this office with names and photos. Others at the same sites see it.
office-unencrypted = This address is not encrypted: anybody on the way can read along. Only for trying out.
office-asking = Asking the office.
office-join = Join this office
office-do-not-join = Do not join

office-asked = Asked. This screen changes when the office answers.
office-originals-go = The originals go out now.
office-compared = Everything is compared again.
