# A draft that no licensed electrician has checked.
### What an entry says, in one sentence without a full stop at its end: for time lines, lists and the record. What people wrote stands in it
### as they wrote it.

# $says is what this version can read of it.
entry-more = { $says } (una versión más nueva escribió aquí más de lo que esta puede leer)
# life-critical
entry-newer = Escrito por una versión más nueva, aquí no se puede leer ({ $kind }): actualizar esta app
# What is about a site or a device and not about a job.
entry-not-of-job = No es de esta intervención

# What a part is called that is withdrawn, or that this device does not know. These stand in the place of its name.
part-point-withdrawn = un punto retirado
part-circuit-withdrawn = un circuito retirado
part-lock = candado { $label } de { $owner } en { $place }
part-lock-unknown = un candado que aquí no se conoce
part-direct-withdrawn = algo retirado
part-source-unknown = Una fuente de este sitio
part-cover-unknown = una tapa

entry-job-opened = Intervención abierta: { $title }
entry-job-opened-by = Intervención abierta: { $title }, según las reglas de { $company }, versión { $version }
entry-earth-in = Tierra temporal { $label } puesta: { $at }
entry-earth-off = Tierra temporal { $label } quitada
entry-system-corrected = Corregido: { $system }, { $volts } V, { $earthing }. { $why }
entry-stays-live = Sigue en tensión: { $what } en { $at }. Apantallado: { $screened }
entry-scope = Nuevo alcance: { $scope }. { $why }
entry-permit = Permiso { $reference }
entry-no-permit = Sin permiso: { $why }
entry-no-permit-unsaid = Sin permiso: no se dio el motivo
entry-in-charge = { $person } responde de la desconexión
entry-works = { $person } trabaja
entry-learns = { $person } aprende bajo supervisión
entry-left-job = { $person } dejó la intervención
# $who was told, $how: in which way.
entry-told-off = Aviso de que se corta la alimentación: { $who }, { $how }
# life-critical
entry-told-back = Aviso de que vuelve la alimentación: { $who }, { $how }
# $what is a barrier or a sign, $at where it stands.
entry-barrier = { $what } en { $at }
# $kind is a kind of source.
entry-source-found = { $kind }: se halló { $what } en { $at }
# $looked is where somebody looked.
entry-source-none = { $kind }: no se halló. Se buscó en: { $looked }
# $wait is one of the wait- messages.
entry-stored-found = Energía acumulada: { $what } en { $at }, esperar { $wait }
entry-stored-found-label = Energía acumulada: { $what } en { $at }, esperar { $wait } (su rótulo: { $label })
entry-stored-none = Energía acumulada: no se halló. Se buscó en: { $looked }
entry-point = Punto de corte { $label }, { $at }
entry-box = Caja de bloqueo { $label }, { $at }
# $serves is what the circuit feeds.
entry-circuit = Circuito { $label }: { $serves }
# Circuits are switched off before the supply goes off, so that nothing is switched under load.
entry-no-circuit = Nada que apagar antes: { $why }
# life-critical
entry-instrument =
    { $instrument }, revisado: { $fit ->
        [yes] apto para el uso
       *[no] no apto para el uso
    }
# $seen is how it is known to be off.
entry-circuit-off = { $circuit } apagado. { $seen }
# $seen is how it is known to be open.
# life-critical
entry-point-found-open = { $point }: hallado abierto. { $seen }
# $off_load: whether no current flowed when it was opened.
# life-critical
entry-point-opened =
    { $point }: abierto { $off_load ->
        [yes] sin carga
       *[no] con carga
    }. { $seen }
# life-critical
entry-no-lock = { $place }: sin candado; cierre impedido por { $person }: { $how }
# life-critical
entry-lock = Candado { $label } de { $owner } en { $place }
# One cable or bar goes through two devices and holds both open.
# life-critical
entry-lock-through = Candado { $label } de { $owner } en { $place }: un mismo cable o barra pasa por este y por otro
entry-sign = Cartel de aviso en { $at }
# $tag is what is written on a tag.
entry-tag-hangs = Etiqueta { $tag } colocada en { $at }
entry-tag-hangs-why = Etiqueta { $tag } colocada en { $at }. { $why }
entry-tag-gone = Etiqueta { $tag } ya no está en { $at }: { $why }
entry-tag-read = Etiqueta { $tag } leída en { $at }
# $hash is the beginning of the picture's hash.
entry-photo = Foto de { $of }, SHA-256 { $hash }…
# $photo is entry-photo, or this message again; $doubt one of the photo- messages.
entry-photo-doubt = { $photo }. { $doubt }
entry-photo-kept = { $photo } Se conserva porque: { $note }
# $lock is part-lock. The key goes with it.
entry-key-offered = Se ofrece a { $person }: { $lock }
entry-key-taken = Candado y llave recibidos, firmado
# $told is what the next shift has to know.
entry-shift-offered = Turno ofrecido a { $person }: { $told }
entry-shift-taken = Turno recibido, firmado
# life-critical
entry-lock-cut = Cortado por su titular, sin llave: { $lock }. { $why }
# life-critical
entry-lock-off = Quitado por su titular: { $lock }
# $authority is who allows it, $function their post, $reached how they were reached.
entry-forced-begun = Retirada forzada iniciada; responde { $authority }, { $function }, contactado: { $reached }. { $lock }. { $why }
entry-owner-not-on-site = El titular no está en el sitio: { $how }
entry-owner-sought = Se buscó al titular: { $how }. { $outcome }
# life-critical
entry-lock-forced = Quitado en ausencia de su titular: { $lock }
entry-owner-told = Titular informado: { $how }
entry-cover-off = Tapa quitada: { $what }
entry-no-cover = No se quita ninguna tapa: { $why }
# $on is a proving unit or entry-live-source. Before the tests the indicator is proved, after them it is proved again.
# life-critical
entry-indicator =
    Detector { $again ->
        [yes] probado otra vez
       *[no] probado
    } con { $on }: { $works ->
        [yes] funciona
       *[no] no responde
    }. { $indicator }
entry-live-source = una fuente que se sabe en tensión, { $what }
# $reading is one of the reading- messages.
# life-critical
entry-reading =
    { $dc ->
        [yes] { $pair } DC: { $reading }
       *[no] { $pair }: { $reading }
    }
# life-critical
entry-voltage-met = Tensión hallada en { $at }: { $reading }
# $how is how it was shown: one of the shown-earth- messages, or what somebody wrote.
# life-critical
entry-reference =
    Referencia: { $holds ->
        [yes] se demostró que es tierra
       *[no] no es tierra
    }: { $how }
entry-run-signed = Ensayo bajo supervisión firmado
# life-critical
entry-direct = Tensión continua en { $at }: { $reading }
# The cause of a voltage or a failure that was met.
entry-cause = Causa: { $cause }
# life-critical
entry-cause-not-found = Causa no hallada: { $cause }
# life-critical
entry-work-stopped = Trabajo parado, todos fuera de la zona
# $clear is how it is known that everybody is clear.
entry-given-up = Desconexión abandonada: { $why }. { $clear }
# The figures below which a reading counts as no indication; with a limit, limit-set says it.
entry-no-limit = Ya no hay límite para los valores leídos
# Written by the device that heard of them: none were known where the job was opened.
entry-company-heard = Recibidas las reglas de { $company }, versión { $version }: desde aquí la intervención las sigue
# life-critical
entry-source-elsewhere = { $source } no llega a este trabajo: { $why }
# Two points have the same label. $apart is how they are told apart.
entry-points-parted = { $point } es otro punto, no el de igual rótulo: { $apart }
entry-rotation-before = Sentido de giro antes de desconectar: { $rotation }. { $how }
entry-rotation-before-unread = Sentido de giro no leído antes de desconectar: { $how }
# What became of a reading with the supply back that was not as it should be.
entry-answer-mended = Lectura fuera de tolerancia, reparado: { $who }. { $how }
entry-answer-left-off = Lectura fuera de tolerancia, se deja apagado: { $who }. { $how }
entry-answer-accepted = Lectura fuera de tolerancia, aceptado: { $who }. { $how }
entry-aside-answered = Se miró en el lugar una anotación apartada: { $why }
entry-work-began = El trabajo empezó con la verificación vigente
entry-work-left = Se dejó el trabajo: { $why }
# life-critical
entry-neutral-parted = Neutro desconectado: { $what }
# $clear is how it is known that everybody is clear.
entry-work-finished = Trabajo terminado. { $clear }
entry-cover-back = Tapa puesta otra vez: { $what }
entry-sign-down = Cartel quitado en { $at }
# life-critical
entry-point-closed = { $point }: cerrado
# life-critical
entry-point-closed-beside = { $point }: cerrado junto a otra fuente: { $why }
# $pair is two conductors.
entry-presence = Alimentación repuesta, { $pair }: { $reading }
# $rotation is one of the rotation- messages.
entry-rotation = Sentido de giro: { $rotation }. { $how }
entry-rotation-uncoupled = Sentido de giro: { $rotation }. { $how } (lo que gira estaba desacoplado)
entry-rotation-bumped = Sentido de giro: { $rotation }. { $how } (se observó un arranque breve)
entry-circuit-on = { $circuit } encendido
entry-handed-back = Instalación devuelta a { $to }, firmado. { $note }
# $step is a step's title.
# life-critical
entry-passed-over = Paso omitido, «{ $step }»: { $why }
entry-withdrawn = Se retiró una anotación: { $why }
# $switch is a link of the supply network.
entry-point-drawn = { $point } es { $switch } en la red de alimentación
# $zone is a list of parts of the supply network.
entry-zone = Zona de trabajo en la red de alimentación: { $zone }
# $ways is a list of links.
# life-critical
entry-way-answered = Alguien responde por un camino de la red de alimentación ({ $ways }): { $why }
