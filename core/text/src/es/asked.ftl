# A draft that no licensed electrician has checked.
### Questions of the procedure. Of each: the question, what stands before an answer in a list, its answers as buttons, and what has to be said
### with an answer. $of is the point or source that it is asked of, as people wrote it.

# Where an answer is told: $asked is what the question is about, $answer a button's text, $words what was said with it, which may be empty.
asked-told = { $words ->
    [none] { $asked }: { $answer }
   *[other] { $asked }: { $answer }. { $words }
}
asked-lacks = Responder: { $asked }
# An answer that nothing goes on under. Life-critical.
asked-stopped = { $asked }: { $answer }. Tratar como si estuviera en tensión, corregirlo y responder otra vez.
asked-first = Responder primero: { $asked }
asked-unknown = Esta pregunta no es de esta intervención, o no tiene esa respuesta. Volver y responder lo que aquí se pregunta.
# On a button; $answer is one of the answers.
asked-save = Guardar: { $answer }
asked-not-so = Según lo anotado, todavía no es así. Hacerlo y anotarlo primero en la lista, o dar otra respuesta.
asked-words = Decir cómo, qué o dónde: una o dos palabras.
# What was read with an instrument for an answer, and what was said with it.
asked-answer-with = { $answer }: { $with }
asked-read-said = { $read }. { $words }
asked-as-shown = Como se muestra, sin redondear
asked-save-reading = Guardar esta lectura
asked-save-nothing = Guardar: sin indicación
# $read is a figure with its unit; $answer is the answer that stops. Life-critical.
asked-over = { $read } se guarda como: { $answer }. Tratar como si estuviera en tensión y buscar la causa.
asked-unread-current = Escribir la corriente que muestra la pinza, en amperios.
asked-unread-voltage = Escribir la tensión leída, o guardar que no hubo indicación.

asked-told-each-other = ¿Se han dicho propietario y contratista cómo bloquean y quién controla los puntos?
asked-told-each-other-short = Propietario y contratista
asked-told-each-other-told = Se lo han dicho
asked-told-each-other-told-words = Quién se lo dijo a quién
asked-told-each-other-one-employer = Una sola empresa

asked-instrument-fit = ¿Tienen el detector y sus cables dos polos, y categoría y tensión para este lugar?
asked-instrument-fit-short = Instrumentos para este lugar
asked-instrument-fit-fits = Sí, leído en instrumento y cables
asked-instrument-fit-does-not-fit = No

asked-right-board = ¿Es { $of } el interruptor correcto? Ver en tensión lo que alimenta, sin abrir nada.
asked-right-board-short = Interruptor correcto, { $of }
asked-right-board-seen-live = Visto en tensión
asked-right-board-seen-live-words = Qué se vio en tensión: una lámpara, una carga, un contador
asked-right-board-traced = Rastreado
asked-right-board-traced-words = Cómo se rastreó
asked-right-board-not-shown = No se pudo demostrar
asked-right-board-not-shown-words = Por qué no

asked-labels = ¿Se leen en las fotos los rótulos de { $of } y del equipo, y coinciden?
asked-labels-short = Los dos rótulos, { $of }
asked-labels-in-photo = Los dos se leen, y coinciden
asked-labels-not-shown = No se pudo demostrar
asked-labels-not-shown-words = Qué rótulo, y por qué no
asked-labels-do-not-match = No coinciden

asked-starts-itself = ¿Puede { $of } arrancar o volver por sí solo, o a distancia?
asked-starts-itself-short = Arranque por sí solo, { $of }
asked-starts-itself-blocked = Bloqueado en su controlador
asked-starts-itself-blocked-words = Cómo está bloqueado
asked-starts-itself-cannot = No puede
asked-starts-itself-cannot-words = Cómo se sabe
asked-starts-itself-not-blocked = Sí, y no está bloqueado

asked-tried-to-start = Accionar los mandos normales, con aviso a todos los que estén cerca. ¿Arranca algo? Volver a dejarlos en paro.
asked-tried-to-start-short = Intento de arranque
asked-tried-to-start-nothing-moved = Nada arrancó
asked-tried-to-start-not-tried = No se intentó
asked-tried-to-start-not-tried-words = Por qué no
asked-tried-to-start-it-started = Arrancó

asked-neutral-current = Poner la pinza en el neutro antes de desconectarlo, con todo lo demás en tensión. ¿Lleva corriente?
asked-neutral-current-short = Corriente en el neutro
asked-neutral-current-none = Sin corriente
asked-neutral-current-none-read = Amperios en la pinza
asked-neutral-current-none-words = Qué neutro, con qué pinza
asked-neutral-current-current = Lleva corriente

asked-live-beside = ¿Sigue algo en tensión al alcance desde el trabajo?
asked-live-beside-short = Partes en tensión junto al trabajo
asked-live-beside-none = Nada al alcance
asked-live-beside-screened = Apantallado
asked-live-beside-screened-words = Qué está en tensión y cómo está apantallado
asked-live-beside-not-screened = En tensión y sin apantallar

asked-left-inside = Contar herramientas, puentes, cortocircuitos y tierras temporales. ¿Queda algo dentro?
asked-left-inside-short = Olvidado dentro
asked-left-inside-nothing = Nada: todo contado y fuera
asked-left-inside-something = Queda algo dentro

asked-rcd = ¿Se probaron los diferenciales, con la alimentación repuesta?
asked-rcd-short = Diferenciales
asked-rcd-measured = Con instrumento
asked-rcd-measured-words = Tiempo y corriente de disparo, con qué
asked-rcd-button = Solo con su botón
asked-rcd-none-fitted = No hay ninguno
asked-rcd-not-tested = Sin probar
asked-rcd-not-tested-words = Por qué no

asked-controls-back = ¿Está el mando de { $of } otra vez en automático?
asked-controls-back-short = Mando de { $of }
asked-controls-back-automatic = Otra vez en automático
asked-controls-back-automatic-words = A quién se informó
asked-controls-back-left-blocked = Se deja bloqueado
asked-controls-back-left-blocked-words = Por qué, y quién lo sabe

asked-high-line = ¿Qué fase está más alta contra el neutro? Leer cada fase a N, antes de abrir nada.
asked-high-line-short = La fase alta
asked-high-line-l1 = L1
asked-high-line-l1-words = Qué se leyó, L1, L2 y L3 a N
asked-high-line-l2 = L2
asked-high-line-l2-words = Qué se leyó, L1, L2 y L3 a N
asked-high-line-l3 = L3
asked-high-line-l3-words = Qué se leyó, L1, L2 y L3 a N
asked-high-line-not-known = No se sabe
asked-high-line-not-known-words = Por qué no se pudo leer

asked-grounded-line = ¿Qué fase está a tierra? Leer cada fase a PE, antes de abrir nada.
asked-grounded-line-short = La fase a tierra
asked-grounded-line-l1 = L1
asked-grounded-line-l1-words = Qué se leyó, L1, L2 y L3 a PE
asked-grounded-line-l2 = L2
asked-grounded-line-l2-words = Qué se leyó, L1, L2 y L3 a PE
asked-grounded-line-l3 = L3
asked-grounded-line-l3-words = Qué se leyó, L1, L2 y L3 a PE
asked-grounded-line-not-known = No se sabe
asked-grounded-line-not-known-words = Por qué no se pudo leer

asked-earthed-pole = ¿Hay un polo a tierra? Leer cada uno a PE, antes de abrir nada.
asked-earthed-pole-short = El polo a tierra
asked-earthed-pole-plus = L+
asked-earthed-pole-plus-words = Qué se leyó, L+ y L- a PE
asked-earthed-pole-minus = L-
asked-earthed-pole-minus-words = Qué se leyó, L+ y L- a PE
asked-earthed-pole-none = Ninguno
asked-earthed-pole-none-words = Cómo se sabe
asked-earthed-pole-not-known = No se sabe
asked-earthed-pole-not-known-words = Por qué no se pudo leer

asked-temporary-earths = ¿Se piden aquí tierras temporales? Primero verificar la ausencia de tensión; después ponerlas, abajo.
asked-temporary-earths-short = Tierras temporales
asked-temporary-earths-fitted = Puestas, según la lista
asked-temporary-earths-not-asked = No se piden
asked-temporary-earths-not-asked-words = Según qué regla

asked-charge-returned = Leer otra vez la carga acumulada en el lugar de trabajo, tras la espera. ¿Vuelve algo?
asked-charge-returned-short = Carga que vuelve
asked-charge-returned-gone = No volvió ninguna carga
asked-charge-returned-gone-read = Voltios DC en el lugar de trabajo
asked-charge-returned-gone-words = Dónde se leyó, con qué
asked-charge-returned-shorted = Se deja un cortocircuito puesto
asked-charge-returned-shorted-words = Dónde, y con qué está marcado
asked-charge-returned-returned = Volvió carga

asked-coupled = Cargar el conductor que mostró tensión: un comprobador de baja impedancia, con su botón pulsado. ¿Se mantiene?
asked-coupled-short = La tensión bajo carga
asked-coupled-other-cause = Otra causa, anotada
asked-coupled-other-cause-words = Qué mostró esa causa
asked-coupled-gone-under-load = Desaparece bajo carga: acoplada
asked-coupled-gone-under-load-read = Voltios que quedan bajo carga
asked-coupled-gone-under-load-words = Qué conductor, con qué
asked-coupled-stays-under-load = Se mantiene bajo carga: una fuente

asked-current-transformers = ¿Hay transformadores de corriente dentro? Nunca abrir un secundario con corriente: primero cortocircuitarlo.
asked-current-transformers-short = Transformadores de corriente
asked-current-transformers-none = No hay dentro
asked-current-transformers-left-closed = Hay; no se abre nada de ellos
asked-current-transformers-shorted = Cortocircuitados antes de abrir
asked-current-transformers-shorted-words = Dónde, cuántos cortocircuitos
asked-current-transformers-open = Hay un secundario abierto

asked-shorts-off = ¿Se quitaron los cortocircuitos de los transformadores de corriente, y se vio otra vez su corriente?
asked-shorts-off-short = Cortocircuitos de transformadores de corriente
asked-shorts-off-off = Quitados, y corriente vista otra vez
asked-shorts-off-off-words = Dónde se vio la corriente
asked-shorts-off-left-on = Se dejan puestos
asked-shorts-off-left-on-words = Por qué, y quién lo sabe

asked-interlocks = Aquí pueden juntarse dos alimentaciones. Mirar cada enclavamiento y obturador. ¿Hay alguno puenteado o retenido?
asked-interlocks-short = Enclavamientos y obturadores
asked-interlocks-none-fitted = No hay ninguno
asked-interlocks-in-order = Mirados, ninguno está puenteado
asked-interlocks-in-order-words = Cuáles, y cómo se probaron
asked-interlocks-bridged = Hay uno puenteado o retenido

asked-polarity-back = ¿Están los polos donde están marcados? Leer L+ a L- con su signo.
asked-polarity-back-short = Polaridad
asked-polarity-back-as-marked = Como está marcado
asked-polarity-back-as-marked-words = Qué se leyó, con su signo
asked-polarity-back-reversed = Invertida

asked-counted-back = ¿Están instrumentos, llaves, rótulos y planos otra vez en su lugar?
asked-counted-back-short = Recuento final
asked-counted-back-all = Está todo
asked-counted-back-missing = Falta algo
asked-counted-back-missing-words = Qué, y quién lo busca

asked-released-by = ¿Quién autoriza el inicio del trabajo? Si no es quien hizo el ensayo, firma abajo primero.
asked-released-by-short = Autoriza el inicio del trabajo
asked-released-by-tester = Lo autoriza quien hizo el ensayo
asked-released-by-another = Otra persona, que firmó

asked-line-at-earth = ¿Está una de las fases a tierra? Leer cada fase a PE, antes de abrir nada.
asked-line-at-earth-short = Una fase a tierra
asked-line-at-earth-none = Ninguna: todas leen igual
asked-line-at-earth-none-words = Qué se leyó, L1, L2 y L3 a PE
asked-line-at-earth-not-known = No se sabe
asked-line-at-earth-not-known-words = Por qué no se pudo leer
asked-line-at-earth-one-is = Una lo está: corregir los conductores
asked-line-at-earth-corrected = Una lo está, y los conductores están corregidos
# A point of a company's own checklist: $of is what the company wrote, a sentence or a few words.
asked-company = { $of }
asked-company-short = { $of }
asked-company-done = Hecho
asked-company-does-not-apply = No procede
asked-company-does-not-apply-words = Por qué no procede
asked-company-not-as-it-should-be = No está como debería

# What is seen live as a rule, offered in a tap where nobody has said anything like it before; it stands in the record as said.
usual-lamp = Lámpara encendida
usual-load = Carga en marcha
usual-tester = Comprobador de enchufe encendido
