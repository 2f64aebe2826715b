### Restoring: covers back, people warned, locks and signs off, points closed, the supply read, circuits on, handed back.

# The state of a row, in a word.
restore-done = done
restore-now = now
restore-to-do = to do
restore-later = later
restore-stays-open = stays open

# Covers.
# life-critical
restore-look-inside = Before each cover closes, look: no tool, loose strand or temporary earth left inside.
restore-no-cover = No cover is recorded as taken off.
restore-cover-back-by = Back { $by }.
restore-off-since = Off since { $when }.
restore-cover-back = { $cover } is back

# Warning people.
# life-critical
restore-warn-everybody = Warn everybody who could touch the installation or what it drives. Wait until they are clear.
restore-warned = Warned { $by }
restore-warned-how = { $who }: { $how }
restore-warn-somebody = Somebody was warned
restore-warned-who = Who was warned
restore-warned-who-hint = A name, or everybody in a named place.
restore-how-warned = How they were warned
restore-how-warned-hint = In person, by telephone, over the site radio.
restore-save-warning = Save this warning

# Locks and signs off.
# life-critical
restore-own-lock = Each person takes off their own lock, with their own hand. From the first lock off, treat as live.
# life-critical
restore-not-finished = Work is not finished: leave the locks on. The first lock off ends the proof.
restore-take-off = Take my lock off { $place }, as { $owner }
# Where the owner has several locks at one place.
restore-take-off-this = Take my lock off { $place }: { $lock }, as { $owner }
restore-since = Since { $when }.
restore-sign-stays = Leave the caution sign at { $point } up while a lock is on.
restore-sign-off = Caution sign taken off { $point }
restore-locks-of-others = Other people's locks are still on. Hand the phone to the owner of the next one.
# The button leads to where people sign on.
restore-next-owner = Sign on the next owner

# Closing the points.
# life-critical
restore-closing = Closing brings the supply back. Circuits off, everybody clear. Stand to the side of the switch.
restore-site-order = Follow your site's switching order.
restore-only-found-on = Only what was found on goes back on.
restore-closed = Closed { $by }.
restore-never-opened = It was never opened.
restore-normally-open = It stays open, as in normal service.
restore-found-off = Found off: it stays off.
# $points is a list of points.
restore-after = Close it after { $points }: it only follows the supply.
restore-look-at-aside = Look at the entry put aside
# $caution is what to look out for at this point.
restore-caution = { $point }: { $caution }
# $supply is what comes back, $at where the point is.
restore-brings-back = Found on. Brings back { $supply }. { $at }
restore-is-closed = { $point } is closed
restore-is-closed-because = { $point } is closed, for this reason
restore-leave-open = Leave { $point } open, give a reason
# $own and $others are supplies.
restore-brings-beside = Found on. Brings { $own } beside { $others }. { $at }
# life-critical
restore-do-not-close = Do not close { $point }: { $own } and { $others } on one board can kill and destroy. Only if both were on together before.
restore-why-both = Why both go on together
restore-why-both-hint = What keeps the two apart or in step
restore-close-beside = Close { $point } beside { $others }
# life-critical
restore-held-aside = Stays open: lock { $lock } of { $owner } is on it, from an entry put aside. Look at the point.
# life-critical
restore-held = Stays open: held by lock { $lock } of { $owner }, for { $job }.
# $why is what is wrong with the network as it is drawn.
restore-no-order = The supply network gives no order: { $why }
restore-still-open = Still open.

# The supply is back.
# life-critical
restore-supply-on = Supply is on: treat as live. Wear what your site's rules ask for. Covers stay on: read at an outlet or test points.
restore-nothing-to-read = No supply goes back on here: nothing to read.
restore-read-pair = Read { $first } – { $then }
restore-pair = { $first } – { $then }
restore-probes = One probe on { $first }, the other on { $then }.
restore-present = Supply present
restore-no-indication = No indication
restore-lit = Lit
restore-read-again = Read again and save
restore-save-readings = Save the readings
# What does not look as it should, and what became of it.
restore-answered = { $finding } { $answer }
restore-answered-how = { $who }. { $how } ({ $by })
restore-what-is-done = What is done about it
restore-which-readings = Which readings
restore-answer = Answer
restore-answer-who = Who accepts it, what is left off, or what was wrong
restore-answer-who-hint = Name of who accepts it; or what is left off; or what was wrong
restore-answer-how = How
restore-answer-how-hint = How they were told and why; how it stays off; or what was repaired
restore-save-answer = Save this answer
restore-mended = Saved. Now read again: only a new reading shows it.
restore-rotation = Phase rotation
restore-rotation-before = Before isolating
# $way is which way the lines turned before, $how and $by how and by whom it was read.
restore-rotation-right = { $way }: that is right. { $how } ({ $by })
# What turns the wrong way can hurt people.
# life-critical
restore-rotation-unread = Rotation was not read before. First uncouple what turns, or watch a short bump.
# life-critical
restore-rotation-unread-why = Rotation was not read before ({ $why }). First uncouple what turns, or watch a short bump.
restore-rotation-read = Read { $by }
restore-rotation-read-how = { $way }. { $how }
restore-rotation-way = Which way it turns
restore-rotation-guard = How motors are kept from harm
restore-rotation-how = How you know
restore-rotation-how-hint = Instrument and where it was read, or why it is not needed.
restore-save-rotation = Save the rotation

# Circuits on.
restore-one-at-a-time = One circuit at a time, in this order. Watch what each starts before you switch on the next.
restore-no-circuit = No circuit is listed for this job.
restore-circuit = { $circuit }: { $serves }
restore-circuit-on-by = On { $by }.
restore-circuit-not-off = It was not switched off.
restore-circuit-on = { $circuit } is on

# Handed back.
restore-handed-back = Handed back
restore-taken-back-by = Taken back by
restore-note = Note
restore-signature = Signature
restore-signature-none = none
restore-signature-drawn = drawn, saved with this entry
restore-record = Record of this job
restore-steps = Steps of this job
# life-critical
restore-tell-owner = Tell { $owner }: their lock { $lock } was taken off, and they do not know yet.
restore-to = Who takes the installation back
restore-to-hint = Name and what they answer for.
restore-note-to-them = Note to them
restore-note-hint = What was done, what changed, what to watch. May stay empty.
restore-give-phone = Give the phone to whoever takes the installation back. They sign below.
restore-signature-of = Signature of the person who takes it back
restore-hand-back = Hand back
