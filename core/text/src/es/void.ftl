# A draft that no licensed electrician has checked.
### Why a proof is void: one or two sentences each.

ended-lock-off = Se quitó un candado de { $place }.
ended-stored-found = Se halló energía acumulada: { $what }.
ended-source-found = Se halló otra fuente: { $what }.
ended-point-added = Se añadió un punto de corte: { $label }.
ended-point-opened = Se abrió { $label }.
ended-closed-between = Se cerró { $label } entretanto, para otra intervención.
ended-point-closed = Se cerró { $label }.
ended-some-point-closed = Se cerró un punto.
ended-opened-and-closed = { $label }: se abrió en un dispositivo y se cerró en otro que no lo sabía.
ended-scope = Cambió el alcance de la intervención.
ended-zone = Cambió la zona de trabajo en la red de alimentación.
ended-shift = Cambió el turno.
ended-way-answered = Alguien respondió por un camino que muestra la red de alimentación.
ended-work-left = Se dejó el trabajo.
ended-work-finished = El trabajo ha terminado.
ended-work-stopped = Se paró el trabajo.
ended-given-up = Se abandonó la desconexión.
ended-cover-off = Se quitó una tapa: { $what }.
ended-limit = Se cambió el límite para ausencia de tensión.
ended-company-limit = Se recibieron reglas de empresa. Fijan un límite más bajo para dar por ausente la tensión.
ended-neutral-parted = Se desconectó un neutro: { $what }.
ended-withdrawn = Se retiró una anotación de esta intervención.
ended-system-corrected = Los conductores, el esquema de tierra o la tensión se habían anotado mal.
ended-earth-off = Se quitó la tierra temporal { $label }.
ended-stays-live = Algo sigue en tensión: { $what }.
# $says is an answer with what it is about.
ended-answered = { $says }.

# $at is a pair or a place, $reading what was read.
trouble-voltage = Indicación: { $at }, { $reading }.
trouble-not-earth = La referencia no es tierra: las lecturas contra ella no demuestran nada. Primero, encontrar la interrupción.
trouble-indicator-failed = El detector falló en su segunda prueba: toda comprobación desde la primera prueba queda anulada.

# $trouble is one of the trouble- messages.
void-trouble-unknown = { $trouble } Quien empezó este ensayo no lo sabía, o no sabía la causa.
void-indicator-unfit = El detector de este ensayo se halló no apto para el uso.
void-prover-unfit = Aquello con lo que se probó el detector se halló no apto para el uso.
void-test-twice = No se halló la causa: ensayar otra vez, con otro detector o por otra persona.
void-alone = Esto se dice sin lo que se sabe fuera de la intervención.
void-newer = Una versión más nueva de la app escribió aquí algo que esta no puede leer. Tratar como si estuviera en tensión y actualizar la app.
void-forgotten = Este teléfono ha olvidado lo que escribió. Verificar otra vez.
void-source-known = Se sabe de otra fuente en este sitio: { $what } ({ $by }).
void-source-found = Se halló otra fuente en este sitio: { $what }.
void-network = La red de alimentación muestra un camino que ningún candado corta. { $says }
void-zone-unsaid = La alimentación del sitio está dibujada y en la última hora nadie ha dicho en qué parte se trabaja.
# $says is what the entry says, without a full stop.
void-aside = Hay apartada una anotación sobre esta intervención: { $says }. Mirar en el lugar y verificar otra vez.
void-lights-late = El detector se enciende demasiado tarde para las tensiones de esta intervención: aquí no demuestra nada.
void-prover-unknown = Este dispositivo no conoce aquello con lo que se probó el detector.
void-not-this-shift = El detector no se revisó en este turno.
void-clock-doubt = Algún reloj no puede ir bien: nadie sabe la edad de la verificación. Verificar otra vez.
void-too-old = La verificación es demasiado antigua. Verificar otra vez.
