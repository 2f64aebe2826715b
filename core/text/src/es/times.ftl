# A draft that no licensed electrician has checked.
### Times, and who did something when.

# In the place of a time that no calendar has; inside a sentence.
time-unreadable = a una hora que este dispositivo no puede leer
# The same in a column of times.
time-exact-unreadable = ilegible
# A day of this year: "24 Nov 10:42". $month: as below.
time-of-year = { $day } { $month } { $time }
# Months, short.
month =
    { $number ->
        [1] ene
        [2] feb
        [3] mar
        [4] abr
        [5] may
        [6] jun
        [7] jul
        [8] ago
        [9] sep
        [10] oct
        [11] nov
       *[12] dic
    }
long-minutes = { $minutes } min
long-hours = { $hours } h
# Never fewer than two.
long-days = { $days } días
# When something was done, and who did it.
when-who = { $when }, { $who }
# Behind a name or a time: it was done without the PIN by which the device knows who acts.
without-pin = { $said } (sin PIN)
