### The parts of a job and its steps, as their titles say them.

stage-plan = Plan
stage-isolate = Isolate
stage-prove = Prove dead
stage-work = Work
stage-restore = Restore
# In the place of a stage, once nothing is left to do.
stage-over = Handed back

step-permit = Permit reference
step-people = People on the job
step-told = Tell the people affected
step-barriers = Barriers and danger signs
step-sources = Look for other sources
step-stored = Look for stored energy
step-points = Points of isolation
step-instruments = Indicator and proving unit
step-rotation-found = Rotation before isolating
step-circuits = Loads to switch off
step-shed = Switch off the loads
step-isolate = Isolate { $point }
step-isolate-unknown = Isolate a point
step-open-up = Covers off: treat as live
step-prove-before = Prove the indicator
step-prove-reference = Prove the earth
step-discharge = Stored energy and direct voltage
step-dead-test = Test every pair
step-prove-after = Prove the indicator again
step-work = Work
step-covers-back = Covers back
step-warn = Warn before energising
step-unlock = Locks and signs off
step-close = Switch the isolators back on
# $turns: whether the supply has more than one line.
step-presence = { $turns ->
    [yes] Supply back: voltage and rotation
   *[no] Supply back: check voltage
}
step-circuits-on = Circuits on, in order
step-hand-back = Hand back
