# A draft that no licensed electrician has checked.
### The screens of the plan.

# Nobody may take "not asked" for "not there".
# life-critical
sources-caution = Ir y mirar. Una fuente que nadie buscó: tratarla como si estuviera en tensión.
sources-looked-for = Buscadas y NO halladas: tocar cada una
sources-stored = Energía acumulada
where-looked = Dónde se buscó
where-looked-hint = Salas, tableros, rótulos, personas preguntadas
sources-save-none = Guardar: no hallada
sources-found = Se halló una
sources-kind = Clase de fuente
sources-what = Qué se halló
as-labelled = Como está rotulado
sources-at = Por dónde entra
sources-at-hint = Tablero, borne o cable
sources-save = Guardar esta fuente
counts-second-feeder = Conmutadores, acoplamientos, una alimentación desde otro tablero u otro transformador.
counts-generator = Grupos de emergencia, y tomas para un grupo móvil.
counts-ups = Los centrales y los pequeños en armarios y bajo mesas, y sus bypass.
counts-pv = Paneles e inversores. Los paneles dan tensión mientras hay luz.
counts-battery = Baterías, y cargadores de vehículos que devuelven energía.
counts-control = Tensión de mando, calefactores, alumbrado o medida que vienen de otro tablero.

duty-in-charge = Responsable de la desconexión
duty-working = Trabaja en ello
duty-learning = Bajo supervisión

site = Sitio
equipment = Equipo
scope = Alcance del trabajo
conductors-and-rules = Conductores y reglas

cover-off-last = Esta tapa está quitada, ninguna más
cover-off-more = Esta tapa está quitada

still-to-do = Pendiente
may-stay-empty = Puede quedar vacío
and-more = y { $count } más

# Readings of nothing say nothing while the earth is not shown to be earth.
# life-critical
earth-first = Con la tierra interrumpida, un tablero en tensión puede no dar lectura en ningún par. Comprobar primero la tierra.

# Permit.
permit = Permiso
permit-none = Sin permiso
permit-says = Aquí se guarda solo la referencia. Esta app no expide ningún permiso ni sustituye ninguno.
permit-reference = Referencia
permit-reference-hint = Como está escrita en el permiso
permit-save = Guardar la referencia
permit-why-none = O por qué no hay permiso
permit-why-none-hint = Por ejemplo: el sitio no lo pide por debajo de 63 A
permit-save-none = Sin permiso: guardar el motivo

# People on the job. $duty is one of the duty- messages, $card what stands on the person's card.
worker = { $duty }, desde { $when }.
worker-card = { $duty }, desde { $when }. { $card }.
worker-leaves = { $name } deja la intervención
# life-critical
people-locks = Cada persona pone su propio candado en cada punto, o en la caja que guarda la llave de ese punto.
person = Persona
person-here = { $name } (ya en la intervención)
duty = Función
person-save = Guardar persona y función
person-new = Añadir a alguien que no está en la lista

# life-critical
told-says = Avisar a todos los que se quedan sin alimentación, y a todos los que podrían volver a darla.
told-who = A quién se avisó
told-who-hint = Nombre, o el grupo de personas
told-how = Cómo
told-how-hint = En persona, por teléfono, con un aviso en la puerta
told-save = Guardar a quién se avisó
# Buttons that save; below what the record has of them.
told-in-person = Avisado en persona
told-by-telephone = Avisado por teléfono
in-person = En persona
by-telephone = Por teléfono

# life-critical
barriers-say = Las partes próximas siguen en tensión. Apantallarlas y poner carteles como pidan las reglas locales.
barrier = Barrera o cartel
barrier-hint = Por ejemplo: barrera de cadena; cartel de peligro
barrier-at = Dónde está
barrier-save = Guardar esta barrera o cartel
# The same, and goes on.
barrier-only = Guardar solo esta barrera o cartel

# Loads to switch off before the point is opened.
# A row of the list.
circuit-number = { $number }. { $label }
circuits-none = Nada que apagar antes
# life-critical
circuits-order = Ponerlos en la lista en el orden en que se apagan, para que el punto se abra sin carga.
circuit = Circuito, como está rotulado
circuit-hint = Por ejemplo: L3 alumbrado, o varios: F1 a F6
circuit-serves = Qué alimenta
circuit-serves-hint = Qué hay que ver apagarse
circuit-save = Poner este circuito en la lista
# The same, and goes on.
circuit-only = Anotar este, ninguno más
circuits-why-none = O por qué no hay nada que apagar antes
circuits-why-none-hint = Por ejemplo: un solo motor, parado antes

# Instruments, looked over before use.
check-sound = Cables, puntas y carcasa en buen estado, en fecha. ({ $by })
check-sound-note = Cables, puntas y carcasa en buen estado, en fecha. { $note } ({ $by })
# $faults is a list of fault- messages.
# life-critical
check-faults = { $name }: { $faults }. No usarlo. ({ $by })
# life-critical
check-faults-note = { $name }: { $faults }. { $note } No usarlo. ({ $by })
check-heading = Revisarlo antes de usarlo
instrument = Instrumento
# $kind is one of the instrument-kind- messages.
instrument-of-kind = { $kind }: { $name }
instrument-checked = { $kind }: { $name } (revisado)
# life-critical
instrument-not-fit = { $kind }: { $name } (no apto para el uso)
check-mark = Marcar lo que se miró y se halló en buen estado
check-leads = Cables en buen estado
check-tips = Puntas en buen estado
check-case = Carcasa en buen estado
check-date = Su revisión está en fecha
# life-critical
check-tips-say = Puntas: como mucho 4 mm de metal desnudo, mejor 2 mm, y protección para los dedos (GS38, guía). Las reglas locales tienen prioridad.
check-note = Qué no está en buen estado, o algo más sobre él
check-note-hint = Vacío si todo está en buen estado
check-save = Guardar esta revisión
# life-critical
check-not-sound = Guardado. No todo está en buen estado en { $name }: apartarlo y no usarlo.
instrument-kind-indicator = Detector de tensión bipolar
instrument-kind-proving-unit = Unidad de prueba
instrument-kind-rotation-indicator = Indicador de sentido de giro
instrument-new = Un instrumento que no está en la lista
instrument-for = Para qué es
instrument-name = Fabricante y tipo
instrument-serial = Número de serie
instrument-printed = Como está impreso en él
# life-critical
lights-say = De un detector: la tensión más baja a la que se enciende o muestra una cifra, según su fabricante.
lights-volts = { $volts } V
lights-ac = Su indicación más baja, AC
lights-dc = Su indicación más baja, DC
lights-dc-none = No muestra tensión continua
instrument-add = Añadir este instrumento
instrument-added = Está en la lista. Ahora revisarlo antes de usarlo.

# Points of isolation. $words is point-in-words, $job the title of another job.
point-same = { $words } Este es el punto que se conoce de { $job }.
# $poles is a list of conductors, $cuts a supply or source.
# life-critical
point-in-words =
    { $kind }, { $place }. Abre { $poles }. Corta { $cuts }. { $lockable ->
        [yes] Admite candado.
       *[no] No admite candado.
    }{ $stays_open ->
        [yes] {" "}Abierto en servicio normal: se queda abierto.
       *[no] {""}
    }
# life-critical
points-say = Los pulsadores de paro, enclavamientos y contactores no son puntos de corte. Usar un aparato que desconecte los conductores.
point = Punto, como está rotulado
point-hint = Por ejemplo: Q1 interruptor general
point-at = Dónde está el punto
point-at-hint = Sala y tablero
point-kind = Qué es
point-lockable = ¿Se puede bloquear abierto?
point-lock-yes = Admite candado
point-lock-none = No admite candado
point-poles = Conductores que abre
# life-critical
point-poles-say = Marcar lo que abre de verdad. Si también hay que abrir el neutro, lo dicen las reglas locales.
point-cuts = Qué corta
point-cuts-supply = La alimentación normal
# $kind is a kind of source.
point-cuts-source = { $kind }: { $what }, en { $place }
point-switch = Qué interruptor de la red de alimentación es
point-not-drawn = No está dibujado allí
point-add = Añadir este punto
# The same, and goes on.
point-only = Añadir este punto, ninguno más
points-known = Conocidos en este sitio
point-known = { $point }, { $place }
point-known-from = Se conoce de { $job }. Tocar para usarlo aquí.
points-more = Un punto más
# life-critical
point-typed = Este es el punto que se conoce de { $job }: { $point }, { $place }. Todo candado puesto en él cuenta también aquí.
point-another = Es otro punto
point-added-known = Guardado. Este es el punto que se conoce de { $job }: { $point }, { $place }. Si son dos, decirlo en su paso.
# life-critical
point-filled-in = Se conoce de { $job }. Comprobar cada línea ante el interruptor, y después añadirlo.
lock-box-use = Usar una caja de bloqueo
lock-box-says = Para varias personas: las llaves de los candados de los puntos van a la caja, y cada persona bloquea la caja.
lock-box = Caja de bloqueo { $name }
lock-box-label = Número o nombre de la caja
lock-box-at = Dónde está la caja
lock-box-add = Añadir esta caja de bloqueo

# Rotation before anything is isolated.
# life-critical
rotation-says = Leerlo solo donde no haya que quitar ninguna tapa: una toma, puntos de medida, un motor en marcha.
rotation = En qué sentido gira ahora
rotation-where = Dónde se leyó
rotation-where-hint = Instrumento y toma, o qué motor
rotation-why-not = O por qué no se leyó
rotation-why-not-hint = No hay ninguna toma en esta alimentación
rotation-not-read = No leído antes

# Sources: what was answered, and what is known at the site beside this job.
sources-answers = Respuestas hasta ahora
source-of-site = Una fuente de este sitio
source-placed = { $what }, en { $at }
# life-critical
source-elsewhere = { $what } no llega a este trabajo
# life-critical
source-none = { $kind }: no se halló ninguna
looked-by = Se buscó en: { $place } ({ $by })
source = { $kind }: { $what }
source-comes-in = Entra por: { $at } ({ $by })
# life-critical
source-needs-point = { $what } necesita su propio punto de corte. Añadirlo en Puntos de corte.
known-source = Conocida en este sitio: { $what }
known-stored = Conocida en este sitio: { $what } (energía acumulada)
# $who is a job, or told-by-network.
# life-critical
known-says = { $what }, según { $who }. ¿Llega a este trabajo? Ir y mirar.
known-source-here = Aquí también es una fuente
known-stored-here = Aquí también acumula energía
known-elsewhere = O por qué no llega a este trabajo
known-elsewhere-hint = Qué se vio, y dónde
known-elsewhere-save = No llega a este trabajo
control-terminals = Sus bornes en el punto de trabajo, con comas
control-terminals-hint = Solo alimentaciones de mando, según el plano: X3:1, X3:2. También se comprueban.
control-volts = Su tensión en voltios
control-volts-hint = Solo alimentaciones de mando, por ejemplo 24

# Stored energy.
# life-critical
stored-says = Variadores y condensadores siguen cargados después de cortar la alimentación. Esperar lo que dice el rótulo o esta lista. Después solo cuenta una lectura de tensión continua.
# $wait is one of the wait- messages.
# life-critical
stored-wait = En { $at }, esperar { $wait } ({ $by })
stored-none = No se halló ninguna
stored-looked-hint = Variadores, baterías de condensadores, rótulos, personas preguntadas
stored-save-none = No se halló energía acumulada
stored-what = O qué se halló
stored-what-hint = Por ejemplo: variador de la bomba 3
stored-at = Dónde están sus bornes
stored-at-hint = Donde se lee la tensión continua
stored-kind-field = Qué es, y la espera sin rótulo
stored-minutes = Espera según su rótulo, en minutos
# life-critical
stored-minutes-hint = Del rótulo, nunca de memoria. Vacío si no lo hay.
stored-longer = O una espera más larga, en minutos
stored-save = Se halló energía acumulada
