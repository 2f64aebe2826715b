# A draft that no licensed electrician has checked.
### What is refused of instruments, tests, work and switching.

instrument-not-checked = Este instrumento no está revisado para esta intervención: revisarlo en Detector y unidad de prueba.
# $fault is one of the fault- messages.
instrument-faulty = No usar { $instrument }: { $fault }.
instrument-failed = { $instrument } falló. Revisarlo otra vez antes, en Detector y unidad de prueba, o tomar otro.
instrument-not-this-shift = { $instrument } no se revisó en este turno: revisarlo en Detector y unidad de prueba.
test-over = Este ensayo ha terminado. Probar el detector y empezar otra vez.
other-indicator = Probar el mismo detector con el que se hicieron las lecturas.
not-a-pair = { $first } – { $then } no es un par de este ensayo.
live-line-shows-nothing = Sin un punto puesto a tierra, o si nadie sabe de uno, una fase en tensión contra PE no muestra nada. Medir hasta el borne principal de tierra.
no-such-stored = Esta intervención no tiene esa energía acumulada.
cause-of-nothing = Decir de qué indicación es esta la causa.
learner-signs = Este ensayo lo firma alguien de la intervención que no esté bajo supervisión.
learner-begins = Quien trabaja bajo supervisión no empieza el trabajo por su cuenta: lo empieza la persona responsable.
work-under-way = El trabajo ya está en curso.
nothing-stands = Tratar como si estuviera en tensión: no hay verificación vigente, el trabajo no puede empezar.
work-not-under-way = El trabajo no está en curso.
work-finished-already = El trabajo ya ha terminado.
stop-first = Primero parar el trabajo y sacar a todos de la zona.
work-stop-first = El trabajo está en curso. Primero parar el trabajo y sacar a todos de la zona.
nothing-open = Todavía no hay nada abierto: no hay nada que abandonar.
not-explained = Se halló una tensión o un fallo. Decir primero cuál fue la causa y qué se hizo.
instrument-lights-late = { $instrument } no muestra nada en esta intervención: tiene que encenderse a { $ac } V AC y { $dc } V DC, o antes.
proved-on-itself = Un detector no se prueba consigo mismo: nombrar otra unidad, o una fuente que se sepa en tensión.
no-live-source = Nombrar la fuente en tensión con la que se probó.

fault-leads = cables dañados
fault-tips = puntas no aptas para el uso
fault-case = carcasa dañada
fault-out-of-date = revisión caducada

# $wait is one of the wait- messages.
still-charged = { $what }: esperar { $wait } desde la apertura, faltan { $left } min. Las tapas se quedan puestas.
no-such-circuit = Esta intervención no tiene ese circuito.
circuit-off-already = { $label } ya está apagado.
circuit-next = En orden: ahora toca { $label }.
circuits-on-already = Todos los circuitos ya están encendidos.
point-open-already = Este punto ya está abierto.
sign-before-lock = No hay candado en { $at }: el candado va antes que el cartel.
sign-under-lock = Este punto tiene todavía un candado: el cartel se quita después.
point-locked = Este punto tiene todavía un candado.
point-locked-aside = { $at } queda abierto: tiene puesto el candado { $lock } de { $owner }, según una anotación apartada. Mirar el punto y después responder esa anotación.
cover-back-already = Esta tapa ya está puesta otra vez.
no-such-cover = Esta intervención no tiene esa tapa.
not-a-pair-to-read = { $first } – { $then } no es un par que haya que leer aquí.

# Temporary earths. $label is the number on one, $at where it is.
earth-unsaid = Escribir el número de la tierra temporal y dónde está puesta.
earth-alike = La tierra temporal { $label } ya está puesta: { $at }. Dar a cada una un número distinto.
# life-critical
earth-not-proved = Tratar como si estuviera en tensión: primero verificar la ausencia de tensión, después poner a tierra.
earth-not-in = Esta tierra temporal no está puesta. Mirar la lista.
# life-critical
earth-left-in = La tierra temporal { $label } sigue puesta: { $at }. Quitarla primero.
