# A draft that no licensed electrician has checked.
### A site's supply network: what is drawn of it, its parts, and a job beside it.

supply-of = Alimentación de { $site }
supply-unknown-site = un sitio que no está en este teléfono
supply-nothing-drawn = Todavía no hay nada dibujado. Empezar por la fuente y después cada tablero con lo que lo alimenta.
supply-add-link = Añadir un interruptor o cable
supply-nodes = Fuentes, tableros y cargas
supply-stops = Se para: { $what }
supply-not-traced = Sin rastrear: { $what }
supply-links = Interruptores y cables
# $kind is what the link is.
supply-link = { $from } a { $to }, { $kind }
supply-add-node = Añadir una fuente, un tablero o una carga

# What a part is.
supply-part-source-unsaid = Una fuente, nadie dijo cuál
supply-part-source = Fuente: { $sort }
supply-part-source-other = Otra fuente
supply-part-board = Tablero
supply-part-load = Carga
supply-part-junction = Empalme o bornes
# life-critical
supply-part-unknown = Nadie sabe qué es: puede ser una fuente
supply-part-takes-lock = admite candado
supply-part-takes-no-lock = no admite candado
supply-part-normally-open = normalmente abierto
supply-part-normally-closed = normalmente cerrado
supply-part-link-switch = Interruptor, automático o fusibles
supply-part-link-cable = Cable
supply-part-link-changeover = Vía de un conmutador
supply-part-link-tie = Acoplamiento entre dos alimentaciones
supply-part-link-inverter = Inversor que puede alimentar por sí solo
supply-part-link-inlet = Toma para un grupo móvil
supply-part-link-transformer = Transformador
supply-part-link-unknown = Sin rastrear

# The form for a part.
supply-part-new-node = Una fuente, un tablero o una carga
supply-part-fed-by = Qué lo alimenta, si se sabe
supply-part-from = De
supply-part-to = A
supply-part-save = Guardar esta parte
supply-part-new-link = Un interruptor o cable
supply-part-joins = Une dos partes. Añadir antes la primera fuente, tablero o carga.
# $what is what the part is.
supply-part-title = { $part }, { $what }
supply-part-noted = Anotado
supply-part-save-correction = Guardar la corrección
supply-part-last = Última posición
supply-part-seen-open = Lo veo abierto
supply-part-seen-closed = Lo veo cerrado
supply-part-changed = Esta parte se corrigió o se tachó entretanto
supply-part-not-there = No está ahí
supply-part-gone = Cómo se sabe
supply-part-gone-hint = Rastreado hasta su extremo y desmontado
supply-part-cross-out = Tacharlo
supply-part-name = Nombre, como está rotulado
supply-part-name-hint = Corto y propio, por ejemplo: DB4
supply-part-what = Qué es
supply-part-written = Qué más pone en él
supply-part-where = Dónde está
supply-part-where-hint = Sala y tablero
supply-part-what-stops = Qué se para cuando no tiene alimentación
supply-part-what-stops-hint = Por ejemplo: alumbrado de la nave de acabados
supply-part-tell = A quién avisar antes, uno por línea
supply-part-untraced = Algo más aquí que nadie ha rastreado
# life-critical
supply-part-untraced-hint = Por ejemplo: un cable que entra en la pared de atrás. Mientras conste aquí, no se demuestra que nada esté cortado.
supply-part-link-name = Nombre del interruptor o cable
supply-part-link-name-hint = Como está rotulado, por ejemplo: Q4
supply-part-link-kind = Clase de unión
supply-part-link-written = Qué más pone en el interruptor
supply-part-link-where = Dónde está el interruptor
supply-part-lockable = ¿Se puede bloquear abierto?
supply-part-lockable-yes = Admite candado
supply-part-lockable-no = No admite candado
supply-part-closed = Cerrado
supply-part-open = Abierto
supply-part-normally = En servicio normal está
supply-part-conductors = Conductores que hay que abrir aquí
supply-part-poles = Conductores que abre
# $seen is seen-open or seen-closed.
supply-part-seen = Guardado: { $link }, { $seen }.

# A job beside the network.
supply-cut-not-drawn = Sin dibujar para este sitio.
supply-cut-say-zone = Dibujada. Decir en qué se trabaja.
# $zone is a list of parts of the network.
# life-critical
supply-cut-all = Todos los caminos a { $zone } están cortados o alguien responde por ellos, hasta donde está dibujado.
# life-critical
supply-cut-some =
    { $count ->
        [one] 1 camino a { $zone } no está cortado por los puntos de esta intervención.
       *[other] { $count } caminos a { $zone } no están cortados por los puntos de esta intervención.
    }
supply-cut-title = Red de alimentación
supply-cut-no-site = Esta intervención no tiene sitio, así que no le corresponde ninguna red.
supply-cut-nothing-drawn = No hay nada dibujado de la alimentación de este sitio. Un dibujo muestra qué caminos llegan al trabajo y qué puntos los cortan.
supply-cut-draw = Dibujar la red
supply-cut-whole = La red completa
# life-critical
supply-cut-zone-gone = { $zone } ya no está en la red de alimentación. Decir otra vez en qué se trabaja.
supply-cut-now = Con lo bloqueado ahora
supply-cut-planned = Con los puntos de esta intervención bloqueados
# $check is what a look at the network found.
# life-critical
supply-cut-now-says = Con lo bloqueado ahora: { $check }
# life-critical
supply-cut-planned-says = Con los puntos de esta intervención bloqueados: { $check }
# life-critical
supply-cut-now-answered = Con lo bloqueado ahora: { $check } Una persona responde por cada uno de estos caminos.
# life-critical
supply-cut-planned-answered = Con los puntos de esta intervención bloqueados: { $check } Una persona responde por cada uno de estos caminos.
supply-cut-more = Y { $count } más.
supply-cut-shared = { $link } es compartido
supply-cut-shared-lock = Tiene puesto el candado { $lock } de { $owner }, para { $job }.
supply-cut-does-not-count = No cuenta
supply-cut-does-not-count-why = { $why } ({ $by })
supply-cut-zone = En qué se trabaja
supply-cut-link-itself = El propio { $link }
supply-cut-zone-parts = Partes de la red en que se trabaja
supply-cut-save-zone = Guardar la zona de trabajo
supply-cut-points = Puntos que la cortarían
supply-cut-lock = Bloquear { $points }
supply-cut-points-here = Estos son puntos de esta intervención.
supply-cut-plan = Planificar { $points }
supply-cut-proposals = Son propuestas: decide quien trabaja. Se pueden planificar otros puntos; lo que dejen abierto se muestra aquí.
# $worth is what speaks for a proposal.
supply-cut-worth = { $worth }.
supply-cut-nothing-lost = No se pierde ningún circuito.
supply-cut-stops = Se para: { $circuits }.
supply-cut-tell = Avisar: { $people }.
supply-cut-if-not = Si un camino no cuenta
# life-critical
supply-cut-if-not-says = Esto se guarda en su nombre y se muestra con cada verificación. Las reglas locales pueden prohibirlo: preguntar a quien es responsable de la desconexión.
supply-cut-which = Cuáles de ellos
supply-cut-why = Por qué no cuenta
supply-cut-why-hint = Por ejemplo: desmontado, extremos vistos y aislados
supply-cut-answer = Responder por ello en mi nombre
supply-cut-zone-saved = Guardado. Se muestran los caminos que llegan allí.
supply-cut-planned-points = Planificado: { $points }.
supply-cut-tell-people = Avisar: { $people }.
supply-cut-poles-unknown = Nadie anotó qué conductores abre { $link }. Mirar y marcarlos aquí.
