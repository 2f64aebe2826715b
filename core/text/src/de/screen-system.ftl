### The conductors of a job and their supply: picked, corrected, and what stays live beside them.

system-conductors = Conductors at the point of work
system-conductors-own = Your conductors, with commas
# What stands in this example is as it is typed: name[colour]=role@supply.
system-conductors-own-hint = L1, L2[black], N1=neutral, PE. Of another supply: S+=dc-plus@String A
system-earthing = Earthing arrangement
# $hint is one of the named-by- messages, $volts a list of figures.
system-usual-here = { $hint }. Usual here: { $volts }
system-nominal = Nominal voltage in volts

system-wrong = The conductors were noted wrong
# life-critical
system-wrong-ends = This ends the proof. What was recorded stays. Points keep the conductors noted for them.
system-wrong-what = What was wrong
system-correct = Correct the conductors

# What stays live beside the work.
system-live = What cannot be made dead here
# life-critical
system-live-what = STILL LIVE: { $what }
# life-critical
system-live-at = { $place }. Screened: { $screened } ({ $by })
# life-critical
system-live-such-as = Such as the supply side of the main switch, PV strings by day, battery terminals. Name it, and screen it.
system-live-conductors = Which of your conductors it is
system-live-name = What stays live
system-live-where = Where it is
system-live-screened = How it is screened, and who looked
system-live-save = This stays live
