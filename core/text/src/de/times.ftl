# A draft that no licensed electrician has checked.

### Times, and who did something when.

# In the place of a time that no calendar has; inside a sentence.
time-unreadable = Zeit auf diesem Gerät nicht lesbar
# The same in a column of times.
time-exact-unreadable = nicht lesbar
# A day of this year: "24 Nov 10:42". $month: as below.
time-of-year = { $day }. { $month } { $time }
# Months, short.
month =
    { $number ->
        [1] Jan.
        [2] Feb.
        [3] März
        [4] Apr.
        [5] Mai
        [6] Juni
        [7] Juli
        [8] Aug.
        [9] Sept.
        [10] Okt.
        [11] Nov.
       *[12] Dez.
    }
long-minutes = { $minutes } min
long-hours = { $hours } h
# Never fewer than two.
long-days = { $days } Tage
# When something was done, and who did it.
when-who = { $when }, { $who }
# Behind a name or a time: it was done without the PIN by which the device knows who acts.
without-pin = { $said } (ohne PIN)
