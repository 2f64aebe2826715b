### What a shell says by itself, beside what a screen has.

# Before a caution, by its tone.
shell-warning = Warning
shell-stop = Stop
shell-must = Must do
shell-note = Note
# Above the field for a figure.
shell-volts = Volts
shell-number-counts = The number counts. Empty it to choose an answer instead.
# A wide drawing.
shell-smaller = Smaller
shell-larger = Larger
# Takes a drawn signature away.
shell-clear = Clear
shell-clear-of = Clear: { $label }
shell-type-name = or type your full name
# For a screen in the sun.
shell-contrast = More contrast
