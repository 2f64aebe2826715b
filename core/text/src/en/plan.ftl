### What the gate refuses of people, plans, tags, steps that are passed over, and entries that are withdrawn.

nobody-acts = Say first who is signed on.
reason-says-nothing = Give the reason in words that another person will understand.
job-handed-back = This job is handed back. Open a new job for anything more.
job-given-up = The isolation was given up. Change the scope of the job first; then isolate and prove dead again.
job-finished = The work is finished. Change the scope of the job first; then isolate and prove dead again.
not-on-job = { $person } is not on this job: put them on it under People on the job first.
# $step is the title of a step, $lack a sentence.
first-step = First: { $step }. { $lack }
no-such-step = This job has no such step.
no-such-point = This job has no such point.

no-job-open = This belongs to a job or a site: open it first.
no-name = Give the person's name.
name-alike = "{ $name }" looks like { $other }, who is known here. Add what tells the two apart, or choose { $other }.
limit-unruled = Write the name of the company's rule that sets the limit.
# $limit is limit-too-high.
limit-lower = Set a lower one: { $limit }.
limit-too-high =
    a limit for dead has to be below { $bound } V { $current } here: below { $current ->
        [DC] 120
       *[AC] 50
    } V (EN 61243-3), and below half of the lowest voltage that a source puts on a line or pole
not-low-voltage = { $volts } V between conductors is no low voltage, which ends here at { $most } V. This method and its indicators do not serve.
own-conductors = List two to 64 conductors, each with a name of its own of at most 12 characters; and only with "your own set of conductors".
stays-live-unsaid = Say what stays live, where it is, and how it is screened.
may-not-stay-live = { $conductor } has to be proved dead: it lies behind a point, or is of the normal supply. Only a conductor of your own set, of another supply that no point opens, can stay live.

charge-with-locks = Locks are on: change who answers for the isolation through a shift change.
charge-left-with-locks = Locks are on, and this person answers for the isolation: that changes through a shift change.
leaves-lock = { $person } still has a lock on { $place }. It comes off, or is handed over, before they leave.
leaves-charge = { $person } answers for the isolation. Change the shift first.
control-device = A stop button, an interlock or a contactor is not a point of isolation: it can fail or be reset. Name the switch or the fuses that disconnect the supply.
point-alike = { $label } is already in this job, at a like place.
point-not-of-site = That point is not known at this site.
point-no-poles = Say which conductors this point opens.
point-opens-protective = { $conductor } is the protective conductor: no point of isolation opens it. Unmark it.
tag-no-point = There is no such point in this job.
tag-hangs = This tag hangs at { $at } already.
tags-most = { $at } had { $most } tags already. Add the point anew.
tag-gone-unsaid = Write what became of the tag.
tag-not-there = This tag does not hang at { $at }.
nothing-to-pass = This step lacks nothing: there is nothing to skip.
cannot-pass = This cannot be skipped. Do it, or do not go on.
limit-above-company = The rules of your company set { $ac } V AC and { $dc } V DC ({ $rule }). A job sets the limit lower, not higher.
limit-not-in-charge = Only the person in charge of the isolation changes the limit of a job.
wait-short = Wait at least { $wait }. For a shorter wait, type what the label on the equipment says.
looked-unsaid = Write where you looked: go there, a drawing is not enough.
only-control = Only a control supply brings terminals of its own.
no-terminals = Name the terminals of the control supply at the point of work: they are tested too.
# $name stands in quotation marks.
terminal-name = { $name } cannot be the name of a terminal: at most 12 characters, and none that is there.
terminals-most = At most { $most } terminals of one control supply.
conductors-most = More conductors than can be tested together.
no-control-voltage = Write the voltage of the control supply.
source-not-known = That source is not known at this site beside this job.
not-two-points = Choose a point of this job and the other point that it is not.
not-aside = No such entry about this job is put aside here.

withdrawn-already = This entry is already withdrawn.
withdraw-no-entry = There is no such entry in this job.
withdraw-stands-out = This reading does not look as it should: it stays. Read again, or answer for it.
withdraw-voltage = This reading showed a voltage: it stays. Write its cause, then prove the indicator and test again.
withdraw-point-locked = A lock is on this point. The point cannot be withdrawn while it is.
withdraw-done = This entry tells of something that was done: it cannot be withdrawn. Record what is true now instead.
