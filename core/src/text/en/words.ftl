### Words and pieces that stand inside other messages.

place-unknown = a point that this device does not know
place-of-other-job = a point of another job
told-by-network = the supply network
direct-voltage = direct voltage
pair = { $first } – { $then }
wait-by-label = as the label says
wait-minutes = { $minutes } min
wait-seconds = { $seconds } s
# Two things of a list; of a longer one, all but the last and the last.
list-comma = { $first }, { $then }
list-and = { $first } and { $then }
