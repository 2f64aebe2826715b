# A draft that no licensed electrician has checked.
### The work under a proof that stands, what ends it, the change of shift, temporary earths, who lets the work start.

work-given-up = Desconexión abandonada
work-finished = Trabajo terminado
# How it was seen that everybody is clear.
work-seen-clear = Todos fuera de la zona: cómo se vio
work-begin = Empezar el trabajo
# Dead is proved, and a step before the work is not done.
# life-critical
work-not-yet = Hay un paso anterior a este sin hacer. Hacerlo antes de que nadie trabaje.
# life-critical
work-do-not = No trabajar. Ausencia de tensión no verificada: tratar como si estuviera en tensión.
# $why is one of the void- or ended- messages.
# life-critical
work-do-not-why = No trabajar. Ausencia de tensión no verificada: tratar como si estuviera en tensión. { $why }
# The proof ended while people are at work.
# life-critical
work-ended = La verificación ha acabado: tratar como si estuviera en tensión. Sacar a todos de la zona ahora mismo.
# life-critical
work-stop = Parar el trabajo: todos están fuera de la zona
# life-critical
work-stopped = El trabajo está parado. Tratar como si estuviera en tensión hasta verificar otra vez la ausencia de tensión.
# life-critical
work-indication = Una indicación. Parar, y tratar como si estuviera en tensión.

# What is proved, and with what.
work-indicator = Detector
work-proved-before = Detector probado antes
work-proved-after = Detector probado después
work-pairs = Pares comprobados
# life-critical
work-pairs-none = { $count }, ninguno dio indicación
# life-critical
work-pairs-under-limit = { $count }, ninguno por encima del límite para ausencia de tensión
# What was met before this proof. $what is one of the trouble- messages.
work-earlier = Antes: { $what }
work-earlier-met = Antes: { $at }, { $reading }
work-cause-none = { $when }. Causa no anotada
work-cause = { $when }. Causa: { $cause }
# life-critical
work-cause-not-found = { $when }. Causa no hallada: { $cause }
# What follows is limit-set.
work-limit = Cuenta como sin indicación
# $how is what holds the point in the place of a lock.
# life-critical
work-no-lock = { $place }: cierre impedido para { $owner } sin candado: { $how }.
# standing-void-when stands above it.
# life-critical
work-holds = La verificación vale solo para este lugar y este alcance. Arriba consta qué la anula. También la anula desconectar un neutro. Las reglas del sitio pueden pedir más.

# At work.
work-finish-when = Cuando el trabajo haya terminado
work-clear = Cómo se vio que no quedan personas, herramientas ni tierras temporales
work-clear-hint = Personas y herramientas contadas, mirado dentro del tablero, tierras quitadas.
work-finish = El trabajo ha terminado
work-leave-before = Si se deja el trabajo antes
# life-critical
work-leave-ends = Dejar el trabajo acaba la verificación. Al volver: probar el detector y comprobar otra vez todos los pares.
work-leave-why = Por qué se deja el trabajo
work-leave-why-hint = Pausa, fin de jornada, aviso de otro lugar.
work-leave = Dejar el trabajo
# life-critical
work-left = Guardado. La verificación ha acabado: al volver, verificar otra vez la ausencia de tensión.

# What changed since the proof: a heading each, and what follows from it.
# life-critical
change-stop = Parar el trabajo. Sacar a todos de la zona. Desde el cambio, tratar como si estuviera en tensión hasta verificar otra vez la ausencia de tensión.
# life-critical
change-voided = Guardado. La verificación ha acabado: tratar como si estuviera en tensión hasta verificar otra vez la ausencia de tensión.
change-source = Se halló otra fuente
# life-critical
change-source-ends = Esto acaba la verificación. Añadir un punto que corte la fuente antes de ensayar otra vez.
change-source-kind = Qué clase de fuente
change-source-what = Qué es
change-source-what-hint = Su nombre en el equipo o en el plano.
change-source-save = Guardar la fuente hallada
# life-critical
change-source-saved = Guardado. La verificación ha acabado: tratar como si estuviera en tensión. Añadir el punto que corta esta fuente.
change-met = Se halló una tensión
# life-critical
change-met-says = Todo lo que haya mostrado tensión, lo viera quien lo viera. Parar, salir de la zona, tratar como si estuviera en tensión.
change-met-at = Dónde se halló
change-met-at-hint = El conductor, el borne o la parte
change-met-volts = Voltios, si fue una cifra
# life-critical
change-met-save = Aquí se halló una tensión
change-scope = Ha cambiado el alcance
# life-critical
change-scope-ends = Esto acaba la verificación: era para otro alcance.
change-scope-now = En qué se va a trabajar ahora
change-scope-why = Por qué cambia el alcance
change-scope-save = Guardar el nuevo alcance
# life-critical
change-scope-saved = Guardado. La verificación ha acabado: tratar como si estuviera en tensión. El nuevo alcance puede tener otras fuentes y energía acumulada: mirar otra vez.
# Above the question whether it carries current.
change-neutral-before = Antes de desconectar un neutro
change-neutral = Se desconectó un neutro
# life-critical
change-neutral-ends = Esto acaba la verificación. Un neutro desconectado puede estar en tensión por otro circuito: comprobar otra vez todos los pares.
change-neutral-which = Qué neutro, y dónde
change-neutral-save = Guardar: neutro desconectado
change-point = Falta un punto de corte
# life-critical
change-point-ends = Esto acaba la verificación. Abrir y bloquear el punto nuevo y colgar su cartel antes de ensayar otra vez.
change-person = Una persona se va o se incorpora
# life-critical
change-person-leaves = Quien se va quita primero su propio candado. Esto acaba la verificación.
# life-critical
change-person-joins = Quien se incorpora pone su propio candado en cada punto antes de trabajar. En caso de duda, verificar antes otra vez la ausencia de tensión.
change-not-now = El trabajo no se hace ahora
change-not-now-says = Lo que se abrió se puede volver a cerrar, sea cual sea el paso en que esté la intervención.

# The change of shift: one person offers it, another takes it.
# life-critical
shift-no-gap = Que no quede ningún hueco: los candados de la persona entrante están en todos los puntos antes de quitar un candado de la saliente.
# life-critical
shift-ends = Recibir el turno acaba la verificación. Después la persona saliente quita sus propios candados, y la entrante verifica otra vez la ausencia de tensión.
shift-offer = Ofrecer el turno
shift-offer-again = Ofrecer otra vez el turno
shift-to-other = Ofrecerlo a otra persona
shift-nobody = No hay nadie más en esta intervención. Añadir primero a la persona entrante.
shift-add-person = Añadir una persona a la intervención
shift-to = Quién recibe el turno
shift-told = Qué se le dijo
shift-told-hint = Estado del trabajo, qué está bloqueado, qué sigue abierto, a quién se avisó.
shift-taking = Ofrecido a { $name }
shift-taking-from = De
# What they were told.
shift-taking-told = Se le dijo
shift-give-phone = Dar el teléfono a { $name }, que firma abajo.
shift-taking-signs = { $name } firma por el turno
shift-take = { $name } recibe el turno
# life-critical
shift-taking-no-lock = { $name } no tiene candado propio en { $point }.
shift-taking-locks = Poner los candados de { $name }
# $from is who had the shift.
# life-critical
shift-taken = Guardado. { $name } responde de la desconexión. Ahora { $from } quita sus propios candados y deja la intervención en Personas de la intervención. Después verificar otra vez la ausencia de tensión.

# Where somebody else than the tester lets the work start.
release-give-phone = Dar el teléfono a quien autoriza el inicio del trabajo
# Where they sign.
release = { $name } autoriza el inicio del trabajo
release-sign = Firmar como { $name }

# Temporary earths. $label is the number on one.
work-earths = Tierras temporales
work-earth = Tierra { $label }
work-earth-number = Número de la tierra
work-earth-at = Dónde está puesta
# life-critical
work-earth-at-hint = El extremo de tierra: primero al poner, último al quitar
work-earth-in = Esta tierra está puesta
work-earth-off = La tierra { $label } está quitada
