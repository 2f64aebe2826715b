### What is refused of instruments, tests, work and switching.

instrument-not-checked = This instrument is not checked for this job: check it under Indicator and proving unit.
# $fault is one of the fault- messages.
instrument-faulty = Do not use { $instrument }: { $fault }.
instrument-failed = { $instrument } failed. Check it again first, under Indicator and proving unit, or take another.
instrument-not-this-shift = { $instrument } was not checked in this shift: check it under Indicator and proving unit.
test-over = This test is over. Prove the indicator and begin again.
other-indicator = Prove the same indicator that took the readings.
not-a-pair = { $first } – { $then } is not a pair of this test.
live-line-shows-nothing = Without an earthed point, or where nobody knows of one, a live line to PE shows nothing. Measure to the main earthing terminal.
no-such-stored = This job has no such stored energy.
cause-of-nothing = Say which indication this is the cause of.
learner-signs = Somebody on the job who is not under supervision signs this test.
learner-begins = Who works under supervision does not begin work alone: the person in charge begins it.
work-under-way = Work is under way already.
nothing-stands = Treat as live: no proof stands, so work may not begin.
work-not-under-way = Work is not under way.
work-finished-already = The work is finished already.
stop-first = Stop work first, and get everybody clear.
work-stop-first = Work is under way. Stop work first, and get everybody clear.
nothing-open = Nothing is open yet: there is nothing to give up.
not-explained = A voltage or a failure was met. Say first what the cause was, and what was done about it.
instrument-lights-late = { $instrument } shows nothing on this job: it has to light at { $ac } V AC and { $dc } V DC or before.
proved-on-itself = An indicator is not proved on itself: name another unit, or a source known to be live.
no-live-source = Name the live source that it was proved on.

fault-leads = leads are damaged
fault-tips = tips are not fit for use
fault-case = case is damaged
fault-out-of-date = its check is out of date

# $wait is one of the wait- messages.
still-charged = { $what }: wait { $wait } from opening, { $left } min to go. Covers stay on.
no-such-circuit = This job has no such circuit.
circuit-off-already = { $label } is off already.
circuit-next = In order: { $label } comes next.
circuits-on-already = Every circuit is on already.
point-open-already = This point is open already.
sign-before-lock = No lock is on { $at }: the lock comes before the sign.
sign-under-lock = A lock is still on this point: the sign comes down after it.
point-locked = A lock is still on this point.
point-locked-aside = { $at } stays open: lock { $lock } of { $owner } is on it, by an entry put aside. Look at the point, then answer that entry.
cover-back-already = This cover is back already.
no-such-cover = This job has no such cover.
not-a-pair-to-read = { $first } – { $then } is not a pair to read here.

# Temporary earths. $label is the number on one, $at where it is.
earth-unsaid = Write the number on the earth, and where it is fitted.
earth-alike = Earth { $label } is in already: { $at }. Number each differently.
# life-critical
earth-not-proved = Treat as live: prove dead first, then earth.
earth-not-in = This earth is not in. Look at the list.
# life-critical
earth-left-in = Earth { $label } is still in: { $at }. Take it off first.
