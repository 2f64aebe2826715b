# A draft that no licensed electrician has checked.
### Times, and who did something when.

# In the place of a time that no calendar has; inside a sentence.
time-unreadable = a una hora que este dispositivo no puede leer
# The same in a column of times.
time-exact-unreadable = ilegible
long-minutes = { $minutes } min
long-hours = { $hours } h
# Never fewer than two.
long-days = { $days } días
# When something was done, and who did it.
when-who = { $when }, { $who }
# Behind a name or a time: it was done without the PIN by which the device knows who acts.
without-pin = { $said } (sin PIN)
