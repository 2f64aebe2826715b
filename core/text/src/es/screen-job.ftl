# A draft that no licensed electrician has checked.
### A job from above: its steps, what is skipped, its time line.

# What was said or seen, and when and by whom.
job-noted = { $what } ({ $by })
job-place = Lugar
job-work = Trabajo
# By which rules the job is done.
job-rules = Reglas
job-at-any-time = En cualquier momento
# Behind locks-title.
job-locks-on = Puestos ahora: { $count }
job-changed = Algo ha cambiado
job-changed-what = Otra fuente, otro alcance, un neutro desconectado.
job-shift = Cambio de turno
job-time-line = Cronología
job-time-line-what = Todo lo anotado, y las correcciones.
job-record-what = Un PDF que cualquiera puede comprobar, para entregarlo.

# The state of a step, in a word. What is "to do" may be done now, though it is not its turn.
job-word-done = hecho
job-word-now = ahora
job-word-to-do = pendiente
job-word-later = después
job-word-skipped = omitido
# Behind the first of what a step still lacks.
job-more = Y { $count } más.
# life-critical
job-skipped = Omitido: { $why } ({ $by })

# The way on.
job-next = Siguiente: { $step }
# life-critical
job-next-asides = Siguiente: Mirar en el lugar, hay anotaciones apartadas
# life-critical
job-stop-work = Parar el trabajo: tratar como si estuviera en tensión

# Skipping a step.
job-skip = Omitir este paso, dar un motivo
job-skip-title = Omitir: { $step }
# life-critical
job-skip-says = Esto se guarda con el nombre de quien lo omite y se muestra desde aquí en adelante. Las reglas locales pueden prohibirlo: preguntar a la persona responsable de la desconexión.
# What the step still lacks.
job-not-done = Sin hacer
job-skip-why = Por qué, y qué se hace en su lugar
job-skip-why-hint = Otra persona tiene que entenderlo.
job-skip-signed = Omitirlo, firma { $name }

# The time line.
job-time-line-stays = Aquí no se puede cambiar ni borrar nada. Tocar una anotación para retirarla: eso añade una anotación. Una verificación que acabó sigue acabada.
job-clock-was-behind = El reloj del teléfono iba atrasado: la hora es dudosa, el orden no.
# The state of an entry, in a word.
job-withdrawn = retirada
job-withdrawn-why = Retirada: { $why } ({ $by })
job-withdraw-title = ¿Retirar la anotación { $number }?
job-it-says = Dice
job-saved-by = Guardada
# life-critical
job-withdraw-ends = Retirarla acaba toda verificación vigente. La anotación se queda en la cronología, marcada como retirada.
job-withdraw-why = Qué estaba mal en ella
job-leave-it = Dejarla como está
job-withdraw = Retirar esta anotación
job-withdraw-done = La anotación está retirada. Se queda en la cronología.
