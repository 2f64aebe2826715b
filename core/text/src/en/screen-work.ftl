### The work under a proof that stands, what ends it, the change of shift, temporary earths, who lets the work start.

work-given-up = Isolation given up
work-finished = Work finished
# How it was seen that everybody is clear.
work-seen-clear = Seen clear
work-begin = Begin work
# Dead is proved, and a step before the work is not done.
# life-critical
work-not-yet = A step before this one is not done. Do it before anybody works.
# life-critical
work-do-not = Do not work. Not proved dead: treat as live.
# $why is one of the void- or ended- messages.
# life-critical
work-do-not-why = Do not work. Not proved dead: treat as live. { $why }
# The proof ended while people are at work.
# life-critical
work-ended = The proof has ended: treat as live. Get everybody clear now.
# life-critical
work-stop = Stop work: everybody is clear
# life-critical
work-stopped = Work is stopped. Treat as live until it is proved dead again.
# life-critical
work-indication = An indication. Stop, and treat as live.

# What is proved, and with what.
work-indicator = Indicator
work-proved-before = Indicator proved before
work-proved-after = Indicator proved after
work-pairs = Pairs tested
# life-critical
work-pairs-none = { $count }, none gave an indication
# life-critical
work-pairs-under-limit = { $count }, none above the limit for dead
# What was met before this proof. $what is one of the trouble- messages.
work-earlier = Earlier: { $what }
work-earlier-met = Earlier: { $at } { $reading }
work-cause-none = { $when }. Cause not noted
work-cause = { $when }. Cause: { $cause }
# life-critical
work-cause-not-found = { $when }. Cause not found: { $cause }
# What follows is limit-set.
work-limit = Counted as no indication
# $how is what holds the point in the place of a lock.
# life-critical
work-no-lock = { $place } is secured for { $owner } without a lock: { $how }.
# standing-void-when stands above it.
# life-critical
work-holds = The proof is for this place and scope only. What ends it stands above. Disconnecting a neutral ends it too. Site rules may ask for more.

# At work.
work-finish-when = When the work is finished
work-clear = How you saw that people, tools and earths are clear
work-clear-hint = Counted people and tools, looked into the panel, earths off.
work-finish = Work is finished
work-leave-before = If you leave before that
# life-critical
work-leave-ends = Leaving ends the proof. When you come back: prove the indicator and test every pair again.
work-leave-why = Why the work is left
work-leave-why-hint = Break, end of the day, called away.
work-leave = Leave the work
# life-critical
work-left = Saved. The proof has ended: prove dead again when you come back.

# What changed since the proof: a heading each, and what follows from it.
# life-critical
change-stop = Stop work. Get everybody clear. From the change on, treat as live until it is proved dead again.
# life-critical
change-voided = Saved. The proof has ended: treat as live until it is proved dead again.
change-source = Another source was found
# life-critical
change-source-ends = This ends the proof. Add a point that cuts the source off before you test again.
change-source-kind = What kind of source
change-source-what = What it is
change-source-what-hint = Its name on the equipment or the drawing.
change-source-save = Save the source that was found
# life-critical
change-source-saved = Saved. The proof has ended: treat as live. Add the point that cuts this source off.
change-met = A voltage was met
# life-critical
change-met-says = Anything that showed a voltage, whoever saw it. Stop, get clear, treat as live.
change-met-at = Where it was met
change-met-at-hint = The conductor, terminal or part
change-met-volts = Volts, if it was a figure
# life-critical
change-met-save = A voltage was met here
change-scope = The scope has changed
# life-critical
change-scope-ends = This ends the proof: it was for another scope.
change-scope-now = What will be worked on now
change-scope-why = Why the scope changes
change-scope-save = Save the new scope
# life-critical
change-scope-saved = Saved. The proof has ended: treat as live. The new scope may have other sources and stored energy: look again.
# Above the question whether it carries current.
change-neutral-before = Before you disconnect a neutral
change-neutral = A neutral was disconnected
# life-critical
change-neutral-ends = This ends the proof. A disconnected neutral can be live from another circuit: test every pair again.
change-neutral-which = Which neutral, and where
change-neutral-save = Save: neutral disconnected
change-point = A point of isolation is missing
# life-critical
change-point-ends = This ends the proof. Open and lock the new point and hang its sign before you test again.
change-person = A person leaves or joins
# life-critical
change-person-leaves = Whoever leaves takes their own lock off first. This ends the proof.
# life-critical
change-person-joins = Whoever joins fits their own lock at every point before they work. If in doubt, prove dead again first.
change-not-now = The work is not done now
change-not-now-says = What was opened can be closed again, from wherever the job stands.

# The change of shift: one person offers it, another takes it.
# life-critical
shift-no-gap = Leave no gap: the incoming person's locks are on every point before a lock of the outgoing person comes off.
# life-critical
shift-ends = Taking the shift ends the proof. Then the outgoing person takes their own locks off, and the incoming person proves dead again.
shift-offer = Offer the shift
shift-offer-again = Offer the shift again
shift-to-other = Offer it to somebody else
shift-nobody = Nobody else is on this job. Add the incoming person first.
shift-add-person = Add a person to the job
shift-to = Who takes the shift
shift-told = What you told them
shift-told-hint = State of the work, what is locked, what is still open, who was told.
shift-taking = Offered to { $name }
shift-taking-from = From
# What they were told.
shift-taking-told = Told
shift-give-phone = Give the phone to { $name }. { $name } signs below.
shift-taking-signs = { $name } signs for the shift
shift-take = { $name } takes the shift
# life-critical
shift-taking-no-lock = { $name } has no lock of their own on { $point }.
shift-taking-locks = Fit the locks of { $name }
# $from is who had the shift.
# life-critical
shift-taken = Saved. { $name } is now in charge. { $from } takes their own locks off and leaves under People. Then prove dead again.

# Where somebody else than the tester lets the work start.
release-give-phone = Give the phone to who lets work start
# Where they sign.
release = { $name } lets the work start
release-sign = Sign as { $name }

# Temporary earths. $label is the number on one.
work-earths = Temporary earths
work-earth = Earth { $label }
work-earth-number = Number on the earth
work-earth-at = Where it is fitted
# life-critical
work-earth-at-hint = Earth end first on, last off
work-earth-in = This earth is in
work-earth-off = Earth { $label } is off
