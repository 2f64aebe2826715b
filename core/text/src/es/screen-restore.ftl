# A draft that no licensed electrician has checked.
### Restoring: covers back, people warned, locks and signs off, points closed, the supply read, circuits on, handed back.

# The state of a row, in a word.
restore-done = hecho
restore-now = ahora
restore-to-do = pendiente
restore-later = después
restore-stays-open = queda abierto

# Covers.
# life-critical
restore-look-inside = Antes de cerrar cada tapa, mirar: que no quede dentro ninguna herramienta, hilo suelto ni tierra temporal.
restore-no-cover = No hay ninguna tapa anotada como quitada.
restore-cover-back-by = Puesta otra vez: { $by }.
restore-off-since = Quitada desde { $when }.
restore-cover-back = { $cover }: puesta otra vez

# Warning people.
# life-critical
restore-warn-everybody = Avisar a todos los que puedan tocar la instalación o lo que acciona. Esperar hasta que estén fuera de la zona.
restore-warned = Avisado: { $by }
restore-warned-how = { $who }: { $how }
restore-warn-somebody = Se avisó a alguien
restore-warned-who = A quién se avisó
restore-warned-who-hint = Un nombre, o todos los de un lugar nombrado.
restore-how-warned = Cómo se le avisó
restore-how-warned-hint = En persona, por teléfono, por la radio del sitio.
restore-save-warning = Guardar este aviso

# Locks and signs off.
# life-critical
restore-own-lock = Cada persona quita su propio candado, con su propia mano. Desde que se quite el primer candado, tratar como si estuviera en tensión.
# life-critical
restore-not-finished = El trabajo no ha terminado: dejar los candados puestos. El primer candado quitado acaba la verificación.
restore-take-off = Quitar mi candado de { $place }, firma { $owner }
# Where the owner has several locks at one place.
restore-take-off-this = Quitar mi candado de { $place }: { $lock }, firma { $owner }
restore-since = Desde { $when }.
restore-sign-stays = Dejar el cartel de aviso en { $point } mientras haya un candado puesto.
restore-sign-off = Cartel de aviso quitado de { $point }
restore-locks-of-others = Siguen puestos candados de otras personas. Dar el teléfono al titular del siguiente.
# The button leads to where people sign on.
restore-next-owner = Identificar al siguiente titular

# Closing the points.
# life-critical
restore-closing = Cerrar repone la alimentación. Circuitos apagados, todos fuera de la zona. Ponerse a un lado del interruptor.
restore-site-order = Seguir el orden de maniobras del sitio.
restore-only-found-on = Solo se vuelve a cerrar lo que se halló cerrado.
restore-closed = Cerrado: { $by }.
restore-never-opened = No se abrió nunca.
restore-normally-open = Queda abierto, como en servicio normal.
restore-found-off = Hallado abierto: se queda abierto.
# $points is a list of points.
restore-after = Cerrarlo después de { $points }: solo sigue a la alimentación.
restore-look-at-aside = Mirar la anotación apartada
# $caution is what to look out for at this point.
restore-caution = { $point }: { $caution }
# $supply is what comes back, $at where the point is.
restore-brings-back = Hallado cerrado. Repone { $supply }. { $at }
restore-is-closed = { $point } está cerrado
restore-is-closed-because = { $point } está cerrado, por este motivo
restore-leave-open = Dejar { $point } abierto, dar un motivo
# $own and $others are supplies.
restore-brings-beside = Hallado cerrado. Pone { $own } junto a { $others }. { $at }
# life-critical
restore-do-not-close = No cerrar { $point }: { $own } y { $others } en un mismo tablero pueden matar y destruir. Solo si antes estaban puestas las dos a la vez.
restore-why-both = Por qué van las dos a la vez
restore-why-both-hint = Qué las mantiene separadas o en sincronismo
restore-close-beside = Cerrar { $point } junto a { $others }
# life-critical
restore-held-aside = Queda abierto: tiene puesto el candado { $lock } de { $owner }, según una anotación apartada. Mirar el punto.
# life-critical
restore-held = Queda abierto: lo retiene el candado { $lock } de { $owner }, para { $job }.
# $why is what is wrong with the network as it is drawn.
restore-no-order = La red de alimentación no da ningún orden: { $why }
restore-still-open = Sigue abierto.

# The supply is back.
# life-critical
restore-supply-on = La alimentación está puesta: tratar como si estuviera en tensión. Llevar puesto lo que piden las reglas del sitio. Las tapas se quedan puestas: leer en una toma o en puntos de medida.
restore-nothing-to-read = Aquí no se repone ninguna alimentación: nada que leer.
restore-read-pair = Leer { $first } – { $then }
restore-pair = { $first } – { $then }
restore-probes = Una punta en { $first }, la otra en { $then }.
restore-present = Alimentación presente
restore-no-indication = Sin indicación
restore-lit = Encendido
restore-read-again = Leer otra vez y guardar
restore-save-readings = Guardar las lecturas
# What does not look as it should, and what became of it.
restore-answered = { $finding } { $answer }
restore-answered-how = { $who }. { $how } ({ $by })
restore-what-is-done = Qué se hace con ello
restore-which-readings = Qué lecturas
restore-answer = Respuesta
restore-answer-who = Quién lo acepta, qué se deja apagado, o qué estaba mal
restore-answer-who-hint = Nombre de quien lo acepta; o qué se deja apagado; o qué estaba mal
restore-answer-how = Cómo
restore-answer-how-hint = Cómo se le informó y por qué; cómo se mantiene apagado; o qué se reparó
restore-save-answer = Guardar esta respuesta
restore-mended = Guardado. Ahora leer otra vez: solo una lectura nueva lo demuestra.
restore-rotation = Sentido de giro de las fases
restore-rotation-before = Antes de desconectar
# $way is which way the lines turned before, $how and $by how and by whom it was read.
restore-rotation-right = { $way }: ese es el correcto. { $how } ({ $by })
# What turns the wrong way can hurt people.
# life-critical
restore-rotation-unread = El sentido de giro no se leyó antes. Primero desacoplar lo que gira, u observar un arranque breve.
# life-critical
restore-rotation-unread-why = El sentido de giro no se leyó antes ({ $why }). Primero desacoplar lo que gira, u observar un arranque breve.
restore-rotation-read = Leído: { $by }
restore-rotation-read-how = { $way }. { $how }
restore-rotation-way = En qué sentido gira
restore-rotation-guard = Cómo se evita dañar los motores
restore-rotation-how = Cómo se sabe
restore-rotation-how-hint = Instrumento y dónde se leyó, o por qué no hace falta.
restore-save-rotation = Guardar el sentido de giro

# Circuits on.
restore-one-at-a-time = Un circuito cada vez, en este orden. Observar qué arranca con cada uno antes de encender el siguiente.
restore-no-circuit = No hay ningún circuito en la lista de esta intervención.
restore-circuit = { $circuit }: { $serves }
restore-circuit-on-by = Encendido: { $by }.
restore-circuit-not-off = No se apagó.
restore-circuit-on = { $circuit } está encendido

# Handed back.
restore-handed-back = Instalación devuelta
restore-taken-back-by = Recibida por
restore-note = Nota
restore-signature = Firma
restore-signature-none = ninguna
restore-signature-drawn = dibujada, guardada con esta anotación
restore-record = Acta de esta intervención
restore-steps = Pasos de esta intervención
# life-critical
restore-tell-owner = Informar a { $owner }: se quitó su candado { $lock } y todavía no lo sabe.
restore-to = Quién recibe la instalación
restore-to-hint = Nombre y de qué responde.
restore-note-to-them = Nota para esa persona
restore-note-hint = Qué se hizo, qué cambió, qué vigilar. Puede quedar vacío.
restore-give-phone = Dar el teléfono a quien recibe la instalación. Firma abajo.
restore-signature-of = Firma de la persona que la recibe
restore-hand-back = Devolver la instalación
