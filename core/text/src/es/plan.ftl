# A draft that no licensed electrician has checked.
### What the gate refuses of people, plans, tags, steps that are passed over, and entries that are withdrawn.

nobody-acts = Decir primero quién usa el dispositivo.
reason-says-nothing = Dar el motivo con palabras que otra persona entienda.
job-handed-back = En esta intervención la instalación ya está devuelta. Para algo más, abrir una intervención nueva.
job-given-up = Se abandonó la desconexión. Cambiar primero el alcance de la intervención; después desconectar y verificar la ausencia de tensión otra vez.
job-finished = El trabajo ha terminado. Cambiar primero el alcance de la intervención; después desconectar y verificar la ausencia de tensión otra vez.
not-on-job = { $person } no está en esta intervención: añadir primero en Personas de la intervención.
# $step is the title of a step, $lack a sentence.
first-step = Primero: { $step }. { $lack }
no-such-step = Esta intervención no tiene ese paso.
no-such-point = Esta intervención no tiene ese punto.

no-job-open = Esto es de una intervención o de un sitio: abrirlo primero.
no-name = Dar el nombre de la persona.
name-alike = «{ $name }» se parece a { $other }, persona que aquí ya se conoce. Añadir lo que distingue a las dos, o elegir { $other }.
limit-unruled = Escribir el nombre de la regla de la empresa que fija el límite.
# $limit is limit-too-high.
limit-lower = Fijar uno más bajo: { $limit }.
limit-too-high =
    un límite para ausencia de tensión tiene que estar aquí por debajo de { $bound } V { $current }: por debajo de { $current ->
        [DC] 120
       *[AC] 50
    } V (EN 61243-3) y de la mitad de la tensión más baja que una fuente pone en una fase o polo
not-low-voltage = { $volts } V entre conductores no es baja tensión, que aquí acaba en { $most } V. Este método y sus detectores no sirven.
own-conductors = Dar de 2 a 64 conductores, cada uno con nombre propio de 12 caracteres como mucho; y solo con «Juego propio de conductores».
stays-live-unsaid = Decir qué sigue en tensión, dónde está y cómo está apantallado.
may-not-stay-live = { $conductor } tiene que verificarse sin tensión: está detrás de un punto, o es de la alimentación normal. Solo puede seguir en tensión un conductor de su juego propio, de otra alimentación que ningún punto abre.

charge-with-locks = Hay candados puestos: cambiar quién responde de la desconexión mediante un cambio de turno.
charge-left-with-locks = Hay candados puestos y esta persona responde de la desconexión: eso se cambia mediante un cambio de turno.
leaves-lock = { $person } tiene todavía un candado en { $place }. Se quita, o se entrega, antes de que se vaya.
leaves-charge = { $person } responde de la desconexión. Cambiar primero el turno.
control-device = Un pulsador de paro, un enclavamiento o un contactor no es un punto de corte: puede fallar o rearmarse. Nombrar el interruptor o los fusibles que desconectan la alimentación.
point-alike = { $label } ya está en esta intervención, en un lugar parecido.
point-not-of-site = Ese punto no se conoce en este sitio.
point-no-poles = Decir qué conductores abre este punto.
point-opens-protective = { $conductor } es el conductor de protección: ningún punto de corte lo abre. Quitar su marca.
tag-no-point = No hay tal punto en esta intervención.
tag-hangs = Esta etiqueta ya está en { $at }.
tags-most = { $at } ya tuvo { $most } etiquetas. Añadir el punto de nuevo.
tag-gone-unsaid = Escribir qué ha pasado con la etiqueta.
tag-not-there = Esta etiqueta no está en { $at }.
nothing-to-pass = A este paso no le falta nada: no hay nada que omitir.
cannot-pass = Esto no se puede omitir. Hacerlo, o no seguir.
limit-above-company = Las reglas de la empresa fijan { $ac } V AC y { $dc } V DC ({ $rule }). Una intervención puede bajar el límite, no subirlo.
limit-not-in-charge = Solo la persona responsable de la desconexión cambia el límite de una intervención.
wait-short = Esperar al menos { $wait }. Para una espera más corta, escribir lo que dice el rótulo del equipo.
looked-unsaid = Escribir dónde se buscó: ir allí, un plano no basta.
only-control = Solo una alimentación de mando trae bornes propios.
no-terminals = Nombrar los bornes de la alimentación de mando en el punto de trabajo: también se comprueban.
# $name stands in quotation marks.
terminal-name = { $name } no puede ser el nombre de un borne: como mucho 12 caracteres, y ninguno que ya exista.
terminals-most = Como mucho { $most } bornes de una alimentación de mando.
conductors-most = Más conductores de los que se pueden comprobar juntos.
no-control-voltage = Escribir la tensión de la alimentación de mando.
source-not-known = Esa fuente no se conoce en este sitio fuera de esta intervención.
not-two-points = Elegir un punto de esta intervención y el otro punto que no es el mismo.
not-aside = Aquí no hay apartada tal anotación sobre esta intervención.

withdrawn-already = Esta anotación ya está retirada.
withdraw-no-entry = No hay tal anotación en esta intervención.
withdraw-stands-out = Esta lectura no es como debería: se queda. Leer otra vez, o responder por ella.
withdraw-voltage = Esta lectura mostró una tensión: se queda. Escribir su causa, después probar el detector y ensayar otra vez.
withdraw-point-locked = Hay un candado en este punto. Mientras esté puesto, el punto no se puede retirar.
withdraw-done = Esta anotación cuenta algo que se hizo: no se puede retirar. Anotar en su lugar lo que vale ahora.
