### What does not look as it should with the supply back. $at is a pair, $other what the lines are read to.

odd-line-missing = { $at }: { $volts } V. A line is missing: isolate again, then find out.
odd-neutral-missing = { $at }: { $volts } V. { $other } is missing, or changed with a line: isolate again, then find out.
odd-neutral-off = { $other } stands { $volts } V off the middle of the lines: it is missing. Isolate again, then find out.
odd-outside = { $at }: { $volts } V, outside { $least } to { $most } V ({ $tolerance }). Find out why.
odd-not-at-earth = { $at }: { $volts } V, and this line should be at earth.
odd-at-reference = { $at }: { $volts } V, and the line is there: an earth fault, or a supply with this line at earth.
odd-not-together = Line to line is { $ratio } times line to { $other }, and should be { $wanted } times. Read both again.
odd-unbalanced = The line-to-line voltages are unbalanced by { $percent } %. Look for a broken neutral or a lost line.
odd-delta-corner = { $line }: these are the voltages of a delta with this line earthed. Make sure which supply this is.
odd-delta-high-leg = { $line }: these are the voltages of a delta with its mid-point earthed; this line is the high leg. Make sure which supply this is.
