# A draft that no licensed electrician has checked.
### What a shell says by itself, beside what a screen has.

# Before a caution, by its tone.
shell-warning = Warnung
shell-stop = Halt
shell-must = Vorgeschrieben
shell-note = Hinweis
# Above the field for a figure.
shell-volts = Volt
shell-number-counts = Die Zahl zählt. Feld leeren, um stattdessen eine Antwort zu wählen.
# A wide drawing.
shell-smaller = Kleiner
shell-larger = Größer
# Takes a drawn signature away.
shell-clear = Löschen
shell-clear-of = Löschen: { $label }
shell-type-name = oder den vollen Namen eintippen
# For a screen in the sun.
shell-contrast = Mehr Kontrast
