### The screens of the plan.

# Nobody may take "not asked" for "not there".
# life-critical
sources-caution = Go and look. A source that nobody looked for is to be treated as live.
sources-looked-for = Looked for and NOT found: tap each
sources-stored = Stored energy
where-looked = Where you looked
where-looked-hint = Rooms, boards, labels, persons asked
sources-save-none = Save: not found
sources-found = Found one
sources-kind = Kind of source
sources-what = What you found
as-labelled = As it is labelled
sources-at = Where it comes in
sources-at-hint = Board, terminal or cable
sources-save = Save this source
counts-second-feeder = Changeover switches, ties, a feed from another board or another transformer.
counts-generator = Standby sets, and inlets for a mobile set.
counts-ups = Central ones and small ones in cabinets and under desks, and their bypass.
counts-pv = Panels and inverters. Panels give voltage as long as there is light.
counts-battery = Battery stores, and vehicle chargers that feed back.
counts-control = Control voltage, heaters, lighting or metering that comes from another board.

duty-in-charge = In charge of the isolation
duty-working = Working on it
duty-learning = Under supervision

site = Site
equipment = Equipment
scope = Scope of the work
conductors-and-rules = Conductors and rules

cover-off-last = This cover is off, no other
cover-off-more = This cover is off

still-to-do = Still to do
may-stay-empty = May stay empty
and-more = and { $count } more

# Readings of nothing say nothing while the earth is not shown to be earth.
# life-critical
earth-first = With a broken earth a live board can read nothing on every pair. Prove the earth first.

# Permit.
permit = Permit
permit-none = No permit
permit-says = Only the reference is saved here. This app issues no permit and replaces none.
permit-reference = Reference
permit-reference-hint = As written on the permit
permit-save = Save the reference
permit-why-none = Or why there is no permit
permit-why-none-hint = Such as: the site asks for none below 63 A
permit-save-none = No permit: save the reason

# People on the job. $duty is one of the duty- messages, $card what stands on the person's card.
worker = { $duty }, since { $when }.
worker-card = { $duty }, since { $when }. { $card }.
worker-leaves = { $name } leaves the job
# life-critical
people-locks = Each person fits their own lock at every point, or at the box that holds its key.
person = Person
person-here = { $name } (on the job already)
duty = Duty
person-save = Save person and duty
person-new = Add somebody who is not listed

# life-critical
told-says = Tell everybody who loses the supply, and everybody who could switch it on again.
told-who = Who was told
told-who-hint = Name, or the group of people
told-how = How
told-how-hint = In person, by telephone, by a notice at the door
told-save = Save who was told
# Buttons that save; below what the record has of them.
told-in-person = Told in person
told-by-telephone = Told by telephone
in-person = In person
by-telephone = By telephone

# life-critical
barriers-say = Adjacent parts stay live. Screen them off and put up signs as your local rules ask.
barrier = Barrier or sign
barrier-hint = Such as: chain barrier; danger sign
barrier-at = Where it stands or hangs
barrier-save = Save this barrier or sign
# The same, and goes on.
barrier-only = Save this, no other barrier or sign

# Loads to switch off before the point is opened.
# A row of the list.
circuit-number = { $number }. { $label }
circuits-none = Nothing to switch off first
# life-critical
circuits-order = List them in the order you switch them off, so that the point opens with no load on it.
circuit = Circuit, as it is labelled
# "F1 to F6" may be typed as each language says it: the words stand in `core/src/screens/plan.rs`.
circuit-hint = Such as: L3 lighting, or several: F1 to F6
circuit-serves = What it serves
circuit-serves-hint = What must be seen to go off
circuit-save = List this circuit
# The same, and goes on.
circuit-only = List this, no other load
circuits-why-none = Or why there is nothing to switch off
circuits-why-none-hint = Such as: one motor only, stopped before

# Instruments, looked over before use.
check-sound = Leads, tips and case sound, in date. ({ $by })
check-sound-note = Leads, tips and case sound, in date. { $note } ({ $by })
# $faults is a list of fault- messages.
# life-critical
check-faults = { $name }: { $faults }. Do not use it. ({ $by })
# life-critical
check-faults-note = { $name }: { $faults }. { $note } Do not use it. ({ $by })
check-heading = Look it over before use
instrument = Instrument
# $kind is one of the instrument-kind- messages.
instrument-of-kind = { $kind }: { $name }
instrument-checked = { $kind }: { $name } (checked)
# life-critical
instrument-not-fit = { $kind }: { $name } (not fit)
check-mark = Mark what you looked at and found sound
check-leads = Leads are sound
check-tips = Tips are sound
check-case = Case is sound
check-date = Its check is in date
# life-critical
check-tips-say = Tips: at most 4 mm of bare metal, better 2 mm, and finger barriers (GS38, guidance). Local rules come first.
check-note = What is not sound, or anything else about it
check-note-hint = Empty if all is sound
check-save = Save this check
# life-critical
check-not-sound = Saved. Not everything on { $name } is sound: put it aside and do not use it.
instrument-kind-indicator = Two-pole voltage indicator
instrument-kind-proving-unit = Proving unit
instrument-kind-rotation-indicator = Phase rotation indicator
instrument-new = An instrument that is not listed
instrument-for = What it is for
instrument-name = Maker and type
instrument-serial = Serial number
instrument-printed = As printed on it
# life-critical
lights-say = For an indicator: the lowest voltage at which it lights or shows a figure, as its maker says.
lights-volts = { $volts } V
lights-ac = Its lowest indication, AC
lights-dc = Its lowest indication, DC
lights-dc-none = It shows no direct voltage
instrument-add = Add this instrument
instrument-added = Listed. Now look it over before use.

# Points of isolation. $words is point-in-words, $job the title of another job.
point-same = { $words } This is the point known from { $job }.
# $poles is a list of conductors, $cuts a supply or source.
# life-critical
point-in-words =
    { $kind }, { $place }. Opens { $poles }. Cuts off { $cuts }. { $lockable ->
        [yes] Takes a lock.
       *[no] Takes no lock.
    }{ $stays_open ->
        [yes] {" "}Open in normal service: it stays open.
       *[no] {""}
    }
# life-critical
points-say = Stop buttons, interlocks and contactors are no points of isolation. Use a device that disconnects the conductors.
point = Point, as it is labelled
point-hint = Such as: Q1 main switch
point-at = Where the point is
point-at-hint = Room and board
point-kind = What it is
point-lockable = Can it be locked open?
point-lock-yes = It takes a lock
point-lock-none = It takes no lock
point-poles = Conductors that it opens
# life-critical
point-poles-say = Mark what it really opens. Whether the neutral must open too, your local rules say.
point-cuts = What it cuts off
point-cuts-supply = The normal supply
# $kind is a kind of source.
point-cuts-source = { $kind }: { $what }, at { $place }
point-switch = Which switch of the supply network it is
point-not-drawn = It is not drawn there
point-add = Add this point
# The same, and goes on.
point-only = Add this point, no other
points-known = Known at this site
point-known = { $point }, { $place }
point-known-from = Known from { $job }. Tap to use it here.
points-more = One more point
# life-critical
point-typed = This is the point known from { $job }: { $point }, { $place }. Every lock on it counts here too.
point-another = It is another point
point-added-known = Saved. This is the point known from { $job }: { $point }, { $place }. If they are two, say so on its step.
# life-critical
point-filled-in = Known from { $job }. Check each line at the switch, then add it.
lock-box-use = Use a lock box
lock-box-says = For several people: keys of the locks at the points go into the box, and each person locks the box.
lock-box = Lock box { $name }
lock-box-label = Number or name of the box
lock-box-at = Where the box hangs
lock-box-add = Add this lock box

# Rotation before anything is isolated.
# life-critical
rotation-says = Read it only where no cover has to come off: an outlet, test points, a motor that runs.
rotation = Which way it turns now
rotation-where = Where you read it
rotation-where-hint = Instrument and outlet, or which motor
rotation-why-not = Or why it was not read
rotation-why-not-hint = No outlet on this supply
rotation-not-read = Not read before

# Sources: what was answered, and what is known at the site beside this job.
sources-answers = Answers so far
source-of-site = A source of this site
source-placed = { $what }, at { $at }
# life-critical
source-elsewhere = { $what } does not reach this work
# life-critical
source-none = { $kind }: none found
looked-by = Looked: { $place } ({ $by })
source = { $kind }: { $what }
source-comes-in = Comes in at { $at } ({ $by })
# life-critical
source-needs-point = { $what } needs its own point of isolation. Add it under Points of isolation.
known-source = Known at this site: { $what }
known-stored = Known at this site: { $what } (stored energy)
# $who is a job, or told-by-network.
# life-critical
known-says = { $what }, told by { $who }. Does it reach this work? Go and look.
known-source-here = It is a source here too
known-stored-here = It stores energy here too
known-elsewhere = Or why it does not reach this work
known-elsewhere-hint = What you saw, and where
known-elsewhere-save = It does not reach this work
control-terminals = Its terminals at the work, with commas
control-terminals-hint = Control supplies only, from the drawing: X3:1, X3:2. They are tested too.
control-volts = Its voltage in volts
control-volts-hint = Control supplies only, such as 24

# Stored energy.
# life-critical
stored-says = Drives and capacitors stay charged after the supply is cut. Wait as the label or this list says. Then only a direct-voltage reading counts.
# $wait is one of the wait- messages.
# life-critical
stored-wait = At { $at }, wait { $wait } ({ $by })
stored-none = None found
stored-looked-hint = Drives, capacitor banks, labels, persons asked
stored-save-none = No stored energy found
stored-what = Or what you found
stored-what-hint = Such as: drive of pump 3
stored-at = Where its terminals are
stored-at-hint = Where the direct voltage is read
stored-kind-field = What it is, and the wait without a label
stored-minutes = Waiting time on its label, in minutes
# life-critical
stored-minutes-hint = From the label, never from memory. Empty if there is none.
stored-longer = Or a longer wait, in minutes
stored-save = Stored energy found
