### Times, and who did something when.

# In the place of a time that no calendar has; inside a sentence.
time-unreadable = at a time that this device cannot read
# The same in a column of times.
time-exact-unreadable = unreadable
# A day of this year: "24 Nov 10:42". $month: as below.
time-of-year = { $day } { $month } { $time }
# Months, short.
month =
    { $number ->
        [1] Jan
        [2] Feb
        [3] Mar
        [4] Apr
        [5] May
        [6] Jun
        [7] Jul
        [8] Aug
        [9] Sep
        [10] Oct
        [11] Nov
       *[12] Dec
    }
long-minutes = { $minutes } min
long-hours = { $hours } h
# Never fewer than two.
long-days = { $days } days
# When something was done, and who did it.
when-who = { $when }, { $who }
# Behind a name or a time: it was done without the PIN by which the device knows who acts.
without-pin = { $said } (no PIN)
