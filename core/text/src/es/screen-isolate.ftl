# A draft that no licensed electrician has checked.
### The screens of isolating: loads switched off, each point opened, locked, signed and photographed.

isolate-no-loads = No hay ninguna carga en la lista.
isolate-order = Apagar en este orden. Ir y mirar, o que alguien mire: lo que alimenta se apaga de verdad.
isolate-seen = Qué se vio
isolate-seen-hint = { $circuit }: qué se vio apagarse, y quién lo vio. Puede quedar vacío.
# Where nobody wrote what they saw.
isolate-seen-plain = Se vio apagarse
# Behind a load that is off: what was seen, and who saw it.
isolate-seen-by = { $seen } ({ $by })
isolate-off = { $circuit } está apagado, y se vio apagarse
isolate-off-early = Fuera de orden: { $circuit } está apagado, y se vio apagarse
isolate-on-again = Encendido otra vez: { $by }
# The words of the rows of loads.
isolate-word-again = estaba apagado, encendido otra vez
isolate-word-off = apagado
isolate-word-now = apagar ahora
isolate-word-later = sin apagar todavía

# life-critical
isolate-closed-beside = { $point } se cerró para otra intervención: { $job } ({ $when }). Tratar como si estuviera en tensión. Ver que esté abierto, y decirlo.
isolate-point = Punto
isolate-known = Conocido en este sitio
isolate-known-of = { $label }, { $at }, de { $job }
isolate-opened = Abierto
isolate-closed = Cerrado
isolate-sign = Cartel de aviso

isolate-another = Si es otro interruptor
# life-critical
isolate-hold-both = Todo candado puesto en uno u otro retiene los dos. Decir que son dos solo estando ante { $point }.
isolate-apart = Qué distingue a los dos
isolate-apart-hint = Otra celda, otro número en la puerta
isolate-two = Son dos: este, y { $label } de { $job }
isolate-none-of-these = No es ninguno de estos: es otro interruptor

# life-critical
isolate-listed-by = { $name } puso este punto en la lista. Antes de abrirlo: ver que es { $point } en { $at }, y que corta lo que dice el plan.
# life-critical
isolate-proves-nothing = Tratar como si estuviera en tensión. Abrir no demuestra nada: la ausencia de tensión se verifica después, en el punto de trabajo.
# life-critical
isolate-open-already = Ya está abierto para { $held }. Ir allí y verlo.
isolate-off-load = Abrirlo sin carga.
# life-critical
isolate-still-on = Sigue encendido: { $loads }. Cortar con carga puede provocar un arco. Apagar primero las cargas.
isolate-how-opened = ¿Cómo se abrió?
isolate-opened-off-load = Sin carga: no pasaba corriente
isolate-opened-on-load = Con carga: el aparato está hecho para cortarla
isolate-found = Cómo se halló
isolate-found-on = Cerrado: lo abrí yo
isolate-found-off = Ya abierto
isolate-saw-off = Qué se vio apagarse
isolate-shows-open = Qué muestra que está abierto
isolate-shows-open-hint = Lámparas, una pantalla, la posición de las cuchillas
# A statement of whoever taps it. $load: whether loads had to be off.
isolate-is-open =
    { $load ->
        [off] { $point } está abierto, sin carga
       *[any] { $point } está abierto
    }

isolate-locks = Candados puestos ahora en él
isolate-padlock = Candado
isolate-hasp = Candado en una pinza de bloqueo
# life-critical
isolate-no-lock = No es un candado: { $how }
isolate-key-owner = la llave la tiene el titular
isolate-key-box = la llave está en { $holder }
isolate-lock = { $owner }: { $lock } en { $place }
isolate-lock-means = { $means }, { $key }
isolate-since = desde { $when }
isolate-sign-hangs = El cartel de aviso está en { $point }
isolate-photo-of = { $point }, foto de { $by }. { $note }
isolate-photo-now = Hacer la foto ahora
isolate-photo = Foto de { $point }
isolate-photo-hint =
    { $tag ->
        [yes] Se tiene que leer en ella: la posición de abierto, el candado, el cartel, el rótulo del punto y del equipo, la etiqueta.
       *[no] Se tiene que leer en ella: la posición de abierto, el candado, el cartel, el rótulo del punto y del equipo.
    }
# life-critical
isolate-photo-elsewhere = La última foto muestra la etiqueta de otro punto, no de { $point }. Todavía no está guardada en el acta.
isolate-photo-waits = La foto todavía sin guardar
isolate-photo-unsaved = Sin guardar todavía
isolate-photo-why = Por qué se guarda a pesar de ello
isolate-photo-why-hint = Queda junto a la foto.
isolate-photo-save = Guardarla con este motivo
