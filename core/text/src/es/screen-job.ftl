### A job from above: its steps, what is skipped, its time line.

# What was said or seen, and when and by whom.
job-noted = { $what } ({ $by })
job-place = Place
job-work = Work
# By which rules the job is done.
job-rules = Rules
job-at-any-time = At any time
# Behind locks-title.
job-locks-on = { $count } on now
job-changed = Something changed
job-changed-what = Another source, another scope, a neutral disconnected.
job-shift = Shift change
job-time-line = Time line
job-time-line-what = All that was recorded, and corrections.
job-record-what = A PDF that anyone can check, to hand on.

# The state of a step, in a word. What is "to do" may be done now, though it is not its turn.
job-word-done = done
job-word-now = now
job-word-to-do = to do
job-word-later = later
job-word-skipped = skipped
# Behind the first of what a step still lacks.
job-more = And { $count } more.
# life-critical
job-skipped = Skipped: { $why } ({ $by })

# The way on.
job-next = Next: { $step }
# life-critical
job-next-asides = Next: Look at the spot, entries are put aside
# life-critical
job-stop-work = Stop work: treat as live

# Skipping a step.
job-skip = Skip this step, give a reason
job-skip-title = Skip: { $step }
# life-critical
job-skip-says = This is saved in your name and shown from here on. Local rules may forbid it: ask who is in charge of the isolation.
# What the step still lacks.
job-not-done = Not done
job-skip-why = Why, and what is done instead
job-skip-why-hint = Another person has to understand it.
job-skip-signed = Skip it, signed by { $name }

# The time line.
job-time-line-stays = Nothing here can be changed or deleted. Tap an entry to withdraw it: that adds an entry. A proof that ended stays ended.
job-clock-was-behind = The phone's clock was behind: the time is in doubt, the order is not.
# The state of an entry, in a word.
job-withdrawn = withdrawn
job-withdrawn-why = Withdrawn: { $why } ({ $by })
job-withdraw-title = Withdraw entry { $number }?
job-it-says = It says
job-saved-by = Saved
# life-critical
job-withdraw-ends = Withdrawing ends any proof that stands. The entry stays in the time line, marked as withdrawn.
job-withdraw-why = What was wrong with it
job-leave-it = Leave it as it is
job-withdraw = Withdraw this entry
job-withdraw-done = The entry is withdrawn. It stays in the time line.
