### Locks and keys of a job: the list, one lock, fitting one, handing one over, and taking off the lock of somebody absent.

locks-title = Locks and keys
# A button on top of the list.
locks-tell = Tell { $owner } about { $lock }
locks-on = Locks on
locks-off = Locks off
locks-none-on = No lock of this job is on.
# $caution is locks-no-clearance.
# life-critical
locks-none-on-here = No lock of this job is on. { $caution }
# Wherever locks are listed: a list that is empty, or short, is taken for a clearance.
# life-critical
locks-no-clearance = No lock listed does NOT mean it is clear. Check at the isolator.
locks-key = Key: { $place }.
# $by is when and by whom. $means is one of the messages locks-by-.
locks-fitted = Fitted { $by }. { $means }.
# The lock changed hands.
locks-with-since = With { $owner } since { $when }.
locks-offered = Offered to { $to }, not taken yet.
locks-removal-begun = Forced removal has started.
# A row that opens the lock.
locks-row = { $owner } on { $place }: { $lock }
locks-row-off = Off { $place }: { $owner }, { $lock }
# A row whose title is there already.
locks-again = { $title } ({ $count })
locks-no-point = No point of isolation yet: nothing to lock.
locks-add-point = Add a point of isolation
locks-steps = Steps of this job
locks-take-off = Locks and signs off
locks-beside = Locks of other jobs on the same points
locks-pin-of = PIN of { $name }
locks-pin-hint = Leave empty to sign without. The record then says "no PIN".

# How a point is secured.
locks-by-padlock = Padlock through the device
locks-by-hasp = Padlock on a hasp
locks-by-other = Not a lock: { $how }
# $places is a list of points.
locks-by-bar = Padlock on a cable or bar, also through { $places }
locks-a-box = a lock box
locks-in-box = in { $lockbox }
# $by is when and by whom.
locks-cut = Cut by its owner, who had no key: { $by }.
locks-taken-off = Taken off by its owner: { $by }.
locks-forced-off = Taken off { $when } without its absent owner. { $authority } answered for it.
locks-forced-off-unknown = Taken off by force: { $by }.
locks-still-on = Still on.

# Locks of other jobs at the same point.
held-since = since { $when }
held-for = For: { $job }
held-telephone = Telephone { $number }
# $why is the reason why an entry of another phone is not believed.
# life-critical
held-aside = From an entry put aside: { $why }. Counts as on until somebody has looked.
held-row = { $owner }, lock { $lock }, on { $place }
held-row-off = { $owner }, lock { $lock }, was on { $place }
held-says = { $job }: lock { $lock } of { $owner }
# A place of another job.
held-place = { $place }, for { $job }
# $places is a list of places of other jobs.
held-off-too = Saved. The padlock went through both: it is off { $places } too.

# One lock.
lock-unknown = This phone does not know this lock
lock-unknown-look = Look for it in the list of this job's locks.
lock-all = All locks of this job
lock-title = Lock of { $owner }
lock-label = Lock
lock-place = On
lock-secured = Secured by
lock-key-holder = Key holder
lock-fitted = Fitted
lock-theirs-since = Theirs since
lock-telephone = Telephone
lock-telephone-none = not given
lock-off = Off
lock-ring = Ring { $owner }
lock-ringing = Ringing { $owner }.
lock-take-it-off = Take it off
# life-critical
lock-through-both = This padlock goes through { $place } too, for { $job }. Both come off, and the proof of both ends.
lock-finished = Work is finished. Take your lock off with your own hand, then save it here.
lock-take-mine-off = Take my lock off { $place }, as { $owner }
# life-critical
lock-not-finished = Work is not finished. Get everybody clear first. Taking this lock off ends the proof: treat everything as live.
lock-key-lost = If the key is lost
lock-cut-why = Why you cut your own lock
lock-cut-hint = Such as: key fell into the shaft. The lock counts as off; the proof ends.
lock-cut-mine = My lock on { $place } is cut, as { $owner }
lock-hand-over-offered = Hand-over
lock-hand-over = Hand over lock and key
lock-give-phone = Give the phone to { $to }, who signs below. Until then { $owner } keeps lock and key.
lock-signs = { $to } signs for lock and key
lock-takes = { $to } takes lock and key
lock-nobody-else = Nobody else is on this job. Add the person first, then hand over.
lock-offer-to = To whom
lock-offer-to-other = Or offer it to
lock-offer = Offer lock and key
lock-offer-other = Offer it to this person instead
lock-taken = Saved. { $to } has lock, key and this phone.

# The form for a lock.
fit-not-on-job = You are not on this job: put no lock of yours on it.
fit-yours = Fit your lock
fit-of-other = Enter a lock that { $name } fitted
fit-of-other-only = Only if { $name } is here and fitted it. The key stays with { $name }.
# life-critical
fit-takes-no-lock = This point takes no lock. How it is secured is shown with every proof.
fit-secured = How the point is secured without a lock
fit-secured-hint = What came out or went in, and where it is: fuse links in Mara Lind's tool case
fit-label = What is written on the lock
fit-label-hint = Name or number
fit-save-secured = Save how it is secured, as { $name }
fit-save = Save lock, fitted by { $name }
fit-back-to-mine = Back to my own lock: { $name }
fit-where = Where the lock is
fit-on-box = On lock box { $lockbox }
fit-on-point = On { $point } itself
fit-locks-on-box = A key of this point is in the lock box. Put personal locks on the box.
fit-key = Where the key is
fit-key-owner = With the owner
fit-key-box = In lock box { $lockbox }
fit-means = How it is locked
fit-means-padlock = Padlock through the device or box
fit-means-hasp = Padlock on a hasp
fit-means-other = No lock: secured another way
fit-means-which = Which other way
fit-means-which-hint = Only without a lock, such as fuse links kept on you.
# $places is a list of places of other jobs. A lock is known by its owner and label.
fit-on-already = { $lock } of { $owner } is on already: { $places }. Say which it is.
fit-on-already-below = { $lock } of { $owner } is on already: { $places }. Say below which it is.
fit-moved-ends = Moved here: then it is off there, and the proof of that job ends.
fit-moved-by-owner = Moved here? Only { $owner } can say so. Hand over the phone.
fit-moved = Moved here: I took it off there
fit-through = One cable or bar through both
fit-another = Another padlock with the same name
fit-on-elsewhere = This padlock is on elsewhere
fit-mark = What tells the two apart
fit-mark-hint = Only for another padlock: blue tape, a notch
fit-was-moved = Saved. { $lock } is off { $place }, and on here.

# Taking off the lock of somebody who is absent.
removal-title = Removal in the owner's absence
removal-authority = Authority
# $reached is how they were reached, $by when and by whom it was begun.
removal-authority-is = { $authority }, { $function }, reached { $reached }. Started { $by }.
removal-cannot-wait = Why it cannot wait
removal-not-on-site = Not on site, { $by }
removal-sought = Tried to reach, { $by }
# What was tried, and what came of it.
removal-sought-how = { $how }: { $outcome }
removal-told = Told, { $by }
removal-told-how = How { $owner } was told
removal-told-how-hint = In person, by telephone.
removal-has-been-told = { $owner } has been told
removal-done = Saved. The lock is off and the proof has ended. Tell { $owner } before they resume. { $authority } has this phone.
# life-critical
removal-must-tell = Tell { $owner } before they resume: they think lock { $lock } is still on. { $authority } answered for taking it off.
removal-if-absent = If { $owner } is absent
# life-critical
removal-only-owner = Only { $owner } takes this lock off. Anybody else only where your site's procedure allows it.
# life-critical
removal-conditions = First: a named authority answers for it, { $owner } is not on site, you tried everything to reach them. They know before they resume.
removal-who-answers = Who answers for it
removal-function = Their role at this site
removal-function-hint = Site manager, control room
removal-reached = How you reached them
removal-reached-hint = In person, by telephone at what time
removal-begin = Start a forced removal
removal-found-absent = How you found that { $owner } is not on site
removal-found-absent-hint = Gate list, site radio, asked whom.
removal-is-absent = { $owner } is not on site
removal-tried = How you tried to reach them
removal-tried-hint = Number rung, at what time.
removal-outcome = What came of it
removal-outcome-hint = No answer, message left.
removal-save-attempt = Save this attempt
# life-critical
removal-ends-proof = Taking the lock off ends the proof: treat everything as live. Check yourselves that { $owner } and their tools are clear.
removal-give-phone = Give the phone to { $authority }, who signs below.
removal-signs = { $authority } signs for the removal
removal-take-off = Take the lock off under the authority of { $authority }
