# A draft that no licensed electrician has checked.
### Giving up an isolation before the work is done, from wherever it stands.

give-up-title = Abandonar esta desconexión
give-up-given-up = Abandonada
give-up-given-up-why = { $why } ({ $by })
give-up-finished = El trabajo ha terminado: reponer la alimentación paso a paso.
# life-critical
give-up-at-work = El trabajo está en curso. Primero parar el trabajo y sacar a todos de la zona.
give-up-stop-work = Primero parar el trabajo
give-up-nothing-open = Todavía no hay nada abierto: no hay nada que abandonar.
# life-critical
give-up-live = Tratar como si estuviera en tensión. Desde ahora no hay nada verificado y aquí no trabaja nadie.
give-up-then = Después: tapas puestas, personas avisadas, candados quitados por sus titulares. Cerrar solo lo que se halló cerrado.
give-up-why = Por qué se abandona
give-up-why-hint = No se halló la causa, no queda tiempo
give-up-clear = Cómo se vio que todos están fuera de la zona
give-up-clear-hint = Personas y herramientas contadas, mirado dentro del tablero
# life-critical
give-up-done = La desconexión está abandonada. Tratar como si estuviera en tensión. Poner tapas, quitar candados y después cerrar lo que antes estaba cerrado.
