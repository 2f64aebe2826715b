# A draft that no licensed electrician has checked.
### The plan of a dead test: what is expected of a pair, why its probes go so, and what else has to be shown.

# Begin small: they stand behind "Expected:".
if-dead-perhaps-joined = sin indicación; continuidad si los dos están unidos en la fuente o en el origen
if-dead-line-to-earth = sin indicación; continuidad apunta a un defecto a tierra, un filtro o un descargador de sobretensiones
if-dead-other-to-earth = sin indicación; continuidad apunta a un defecto a tierra, un filtro o un polo puesto a tierra
if-dead-to-line = sin indicación; continuidad si los une una carga o un devanado
if-dead-to-other = sin indicación; continuidad si los une una carga, un devanado o un convertidor
if-dead-bond-at-source = sin indicación, como mucho unos voltios; resistencia baja por la unión en la fuente, resistencia alta apunta a N o PE interrumpido
if-dead-bond-at-origin = sin indicación, como mucho unos voltios; resistencia muy baja por la unión en el origen: la continuidad es normal
if-dead-open-in-tn = sin indicación, o una inducida; circuito abierto: continuidad apunta a un neutro prestado o a una segunda unión
if-dead-unsaid-in-tn = sin indicación, como mucho unos voltios; continuidad donde N no se abre, circuito abierto donde sí: averiguar cuál
if-dead-closed-in-tt = puede haber algunos voltios; de decenas a cientos de ohmios por los electrodos. En TT hay que abrir N: no está abierto
if-dead-open-in-tt = sin indicación, o una inducida; circuito abierto
if-dead-unsaid-in-tt = sin indicación, o una inducida, donde N está abierto; en TT hay que abrir N: averiguar si lo está
if-dead-in-it = sin indicación, o una inducida; resistencia alta. Un primer defecto puede estar oculto

if-live-middles = desde unos voltios (un camino compartido o prestado que lleva corriente) hasta { $most } V si uno de los dos está interrumpido
if-live-middles-line = desde unos voltios (un camino compartido o prestado que lleva corriente) hasta la tensión de una fase si uno de los dos está interrumpido
if-live-about = unos { $volts } V; cualquier valor menor si uno de los dos está cortado y flota
if-live-up-to = cualquier valor hasta { $volts } V; puede no aparecer nada aunque los dos estén en tensión
if-live-either = unos { $phases } V entre dos fases, { $middle } V con punto medio; cualquier valor menor si uno está cortado y flota
if-live-unsaid = la tensión de la alimentación; no se dio su tensión nominal

why-less-dangerous = { $first } es el menos peligroso de los dos si uno sigue en tensión: su punta se pone primero y se quita al final.
why-then-stays = Ninguno es menos peligroso: la punta en { $then } se queda puesta, la otra va a { $first }.
why-then-stays-next = Ninguno es menos peligroso: la punta en { $first } se quita primero, para que { $then } se quede para el par siguiente.
why-first-held = Ninguno es menos peligroso: mantener la punta en { $first } y quitar primero la de { $then }.

reference-why = Todos los pares a cero muestran que los conductores están al mismo potencial, no que sea tierra: con { $conductor } interrumpido, un tablero en tensión no da lectura.
reference-why-none = No hay conductor de protección ni PEN en la lista: todos los pares pueden no dar lectura mientras todos los conductores están en tensión contra tierra.
earth-list = Poner en la lista el conductor de protección, o una tierra que se sepa que lo es, y hacer el plan otra vez.
earth-known-line = Leer de { $conductor } a una fase que se sabe en tensión y que no es parte de esta desconexión: tiene que aparecer la tensión completa contra tierra.
earth-main-terminal = Medir una resistencia baja de { $conductor } al borne principal de tierra, con un cable largo.
earth-bonded = Medir una resistencia baja de { $conductor } a partes metálicas con unión equipotencial en otro lugar.

discharge-wait = Esperar al menos { $seconds } s desde el corte, como dice el rótulo ({ $what }).
discharge-find-time = Buscar el tiempo de descarga en el rótulo o en el manual ({ $what }) y esperar ese tiempo desde el corte.
discharge-read = Leer la tensión continua en { $what }: { $plus } a { $minus }, y cada uno a PE. El tiempo solo no demuestra nada.
discharge-still = Si algo da indicación, tratar como si estuviera en tensión: seguir esperando y leer otra vez, o descargar como dice el fabricante.
pole-plus = más
pole-minus = menos

dc-drive = Un variador guarda carga y puede poner tensión continua en su alimentación y en su motor.
dc-ups = Un UPS (SAI) tiene una batería detrás.
dc-pv = Los módulos fotovoltaicos están en tensión mientras hay luz.
dc-stored = La energía acumulada es tensión continua.
dc-conductors = Hay conductores DC.

warn-no-reference = No hay conductor de protección ni PEN en la lista: aquí nada muestra una tensión contra tierra.
# $lines, $neutrals, $conductors: one or more, with commas.
warn-lines-closed = El punto de corte no abre: { $lines }. Tratar como si estuviera en tensión hasta que otro punto de corte lo separe.
warn-neutrals-closed =
    Sin abrir: { $neutrals }; { $earthing ->
        [TT] en TT puede estar a algunos voltios
        [IT] en IT es un conductor en tensión
       *[other] si no se sabe el esquema de tierra, puede estar en tensión
    }: abrirlo también.
warn-charged = Ningún punto de corte abre { $conductors }: tratar como si estuviera en tensión hasta que se haya descargado y leído su DC.
warn-it = IT: un primer defecto queda oculto, y una fase en tensión puede no mostrar nada contra tierra.
warn-supplies = { $count } alimentaciones en una envolvente ({ $supplies }): cada una necesita su propio punto de corte.
warn-control = Los circuitos de mando a menudo se alimentan de otro lugar: buscar qué los alimenta.
warn-pv = Los módulos fotovoltaicos no se pueden apagar: hasta el punto que los corta, su lado sigue en tensión con luz.
warn-ups = Un UPS (SAI) alimenta su salida aunque su entrada esté cortada: desconectar también su salida y su bypass.
warn-generator = Un generador puede arrancar solo: bloquearlo como una fuente aparte.
warn-lights-late = El detector no muestra nada por debajo de { $lowest } V: usar uno cuyo primer escalón sea de { $bound } V o menos.

note-prove-indicator = Probar el detector antes de la primera comprobación y después de la última: hasta entonces ninguna lectura cuenta.
note-common-practice = El peligro según la función y el orden de los pares son práctica común sin fuente: la regla del sitio tiene prioridad.
note-neutral-inferred = Lo que debe leerse de N a PE es deducción de ingeniería: que lo revise quien lea BS 7671 o IEC 60364.
note-earthing-unsaid = No se dio el esquema de tierra: lo esperado contra tierra es lo general, y una fase que se sabe en tensión no demuestra la tierra.
note-poles-unsaid = No se dijo qué abre el punto de corte: desde aquí no se puede decir si todas las fases están cortadas.
note-more-moves =
    Este orden propio pone una punta en un conductor { $count ->
        [1] una vez
       *[other] { $count } veces
    } más que el mejor orden.

# The drawing of the terminals, in words. $terminals and $stops are lists.
terminals-hold = FIJA
terminals-none = Bornes, sin puntas en ellos.
terminals = Bornes { $terminals }. Primera punta en { $held }, fija. La otra punta: { $stops }. Cada vez, quitar primero la otra punta; la de { $held } se quita al final.
terminals-stop = { $number } en { $conductor }
