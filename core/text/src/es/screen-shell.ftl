# A draft that no licensed electrician has checked.
### What a shell says by itself, beside what a screen has.

# Before a caution, by its tone.
shell-warning = Atención
shell-stop = Alto
shell-must = Obligatorio
shell-note = Nota
# Above the field for a figure.
shell-volts = Voltios
shell-number-counts = Cuenta el número. Vaciar el campo para elegir una respuesta en su lugar.
# A wide drawing.
shell-smaller = Más pequeño
shell-larger = Más grande
# Takes a drawn signature away.
shell-clear = Borrar
shell-clear-of = Borrar: { $label }
shell-type-name = o escribir el nombre completo
# For a screen in the sun.
shell-contrast = Más contraste
