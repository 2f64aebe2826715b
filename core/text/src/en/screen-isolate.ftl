### The screens of isolating: loads switched off, each point opened, locked, signed and photographed.

isolate-no-loads = No load is listed.
isolate-order = Switch off in this order. Go and look, or have somebody look: what it serves really goes off.
isolate-seen = What was seen
isolate-seen-hint = { $circuit }: what was seen to go off, and by whom. May stay empty.
# Where nobody wrote what they saw.
isolate-seen-plain = Seen to go off
# Behind a load that is off: what was seen, and who saw it.
isolate-seen-by = { $seen } ({ $by })
isolate-off = { $circuit } is off and was seen to go off
isolate-off-early = Out of order: { $circuit } is off and was seen to go off
isolate-on-again = On again: { $by }
# The words of the rows of loads.
isolate-word-again = was off, on again
isolate-word-off = off
isolate-word-now = switch off now
isolate-word-later = not off yet

# life-critical
isolate-closed-beside = { $point } was closed for another job, { $job }, { $when }. Treat as live. See that it is open, and say so.
isolate-point = Point
isolate-known = Known at this site
isolate-known-of = { $label }, { $at }, from { $job }
isolate-opened = Opened
isolate-closed = Closed
isolate-sign = Caution sign

isolate-another = If it is another switch
# life-critical
isolate-hold-both = Every lock on either holds both. Say that they are two only while you stand at { $point }.
isolate-apart = By what they are told apart
isolate-apart-hint = Another bay, another number on the door
isolate-two = These are two: this, and { $label } of { $job }
isolate-none-of-these = It is none of these: another switch

# life-critical
isolate-listed-by = { $name } listed this point. Before you open it: see that this is { $point } at { $at }, and that it cuts off what the plan says.
# life-critical
isolate-proves-nothing = Treat as live. Opening proves nothing: prove dead later, at the point of work.
# life-critical
isolate-open-already = Open already for { $held }. Go there and see it.
isolate-off-load = Open it off load.
# life-critical
isolate-still-on = Still on: { $loads }. Breaking load can draw an arc. Switch off the loads first.
isolate-how-opened = How was it opened?
isolate-opened-off-load = Off load: no current flowed
isolate-opened-on-load = On load: the device is made to break it
isolate-found = How you found it
isolate-found-on = On: I switched it off
isolate-found-off = Off already
isolate-saw-off = What you saw go off
isolate-shows-open = What shows that it is open
isolate-shows-open-hint = Lamps, a display, the position of the blades
# A statement of whoever taps it. $load: whether loads had to be off.
isolate-is-open =
    { $load ->
        [off] { $point } is open, off load
       *[any] { $point } is open
    }

isolate-locks = Locks on it now
isolate-padlock = Padlock
isolate-hasp = Padlock on a hasp
# life-critical
isolate-no-lock = Not a lock: { $how }
isolate-key-owner = key with the owner
isolate-key-box = key in { $holder }
isolate-lock = { $owner }: { $lock } on { $place }
isolate-lock-means = { $means }, { $key }
isolate-since = since { $when }
isolate-sign-hangs = The caution sign hangs at { $point }
isolate-photo-of = { $point }, photo of { $by }. { $note }
isolate-photo-now = Take the photo now
isolate-photo = Photo of { $point }
isolate-photo-hint =
    { $tag ->
        [yes] To be read in it: the open position, the lock, the sign, the label of the point and of the equipment, the tag.
       *[no] To be read in it: the open position, the lock, the sign, the label of the point and of the equipment.
    }
# life-critical
isolate-photo-elsewhere = The last photo shows the tag of another point, not of { $point }. It is not saved in the record yet.
isolate-photo-waits = The photo that is not saved yet
isolate-photo-unsaved = Not saved yet
isolate-photo-why = Why it is saved all the same
isolate-photo-why-hint = It stays with the photo.
isolate-photo-save = Save it with this reason
