# A draft that no licensed electrician has checked.
### Locks and keys of a job: the list, one lock, fitting one, handing one over, and taking off the lock of somebody absent.

locks-title = Candados y llaves
# A button on top of the list.
locks-tell = Informar a { $owner } sobre { $lock }
locks-on = Candados puestos
locks-off = Candados quitados
locks-none-on = No hay ningún candado de esta intervención puesto.
# $caution is locks-no-clearance.
# life-critical
locks-none-on-here = No hay ningún candado de esta intervención puesto. { $caution }
# Wherever locks are listed: a list that is empty, or short, is taken for a clearance.
# life-critical
locks-no-clearance = Que no haya candados en la lista NO significa vía libre. Comprobar en el propio punto de corte.
locks-key = Llave: { $place }.
# $by is when and by whom. $means is one of the messages locks-by-.
locks-fitted = Puesto: { $by }. { $means }.
# The lock changed hands.
locks-with-since = Lo tiene { $owner } desde { $when }.
locks-offered = Ofrecido a { $to }, sin recibir todavía.
locks-removal-begun = La retirada forzada ha empezado.
# A row that opens the lock.
locks-row = { $owner } en { $place }: { $lock }
locks-row-off = Quitado de { $place }: { $owner }, { $lock }
# A row whose title is there already.
locks-again = { $title } ({ $count })
locks-no-point = Todavía no hay punto de corte: nada que bloquear.
locks-add-point = Añadir un punto de corte
locks-steps = Pasos de esta intervención
locks-take-off = Quitar candados y carteles
locks-beside = Candados de otras intervenciones en los mismos puntos
locks-pin-of = PIN de { $name }
locks-pin-hint = Dejar vacío para firmar sin él. El acta dice entonces «sin PIN».

# How a point is secured.
locks-by-padlock = Candado por el aparato
locks-by-hasp = Candado en una pinza de bloqueo
locks-by-other = No es un candado: { $how }
# $places is a list of points.
locks-by-bar = Candado en un cable o barra, que pasa también por { $places }
locks-a-box = una caja de bloqueo
locks-in-box = en { $lockbox }
# $by is when and by whom.
locks-cut = Cortado por su titular, que no tenía llave: { $by }.
locks-taken-off = Quitado por su titular: { $by }.
locks-forced-off = Quitado ({ $when }) sin su titular, ausente. Respondió de ello { $authority }.
locks-forced-off-unknown = Quitado por la fuerza: { $by }.
locks-still-on = Sigue puesto.

# Locks of other jobs at the same point.
held-since = desde { $when }
held-for = Para: { $job }
held-telephone = Teléfono { $number }
# $why is the reason why an entry of another phone is not believed.
# life-critical
held-aside = De una anotación apartada: { $why }. Cuenta como puesto hasta que alguien haya mirado.
held-row = { $owner }, candado { $lock }, en { $place }
held-row-off = { $owner }, candado { $lock }, estaba en { $place }
held-says = { $job }: candado { $lock } de { $owner }
# A place of another job.
held-place = { $place }, para { $job }
# $places is a list of places of other jobs.
held-off-too = Guardado. El candado pasaba por los dos: también está quitado de { $places }.

# One lock.
lock-unknown = Este teléfono no conoce este candado
lock-unknown-look = Buscarlo en la lista de candados de esta intervención.
lock-all = Todos los candados de esta intervención
lock-title = Candado de { $owner }
lock-label = Candado
lock-place = En
lock-secured = Cierre impedido por
lock-key-holder = Tiene la llave
lock-fitted = Puesto
lock-theirs-since = Lo tiene desde
lock-telephone = Teléfono
lock-telephone-none = no indicado
lock-off = Quitado
lock-ring = Llamar a { $owner }
lock-ringing = Llamando a { $owner }.
lock-take-it-off = Quitarlo
# life-critical
lock-through-both = Este candado pasa también por { $place }, para { $job }. Se quitan los dos, y acaba la verificación de ambas intervenciones.
lock-finished = El trabajo ha terminado. Quitar el candado propio con la propia mano y después guardarlo aquí.
lock-take-mine-off = Quitar mi candado de { $place }, firma { $owner }
# life-critical
lock-not-finished = El trabajo no ha terminado. Primero sacar a todos de la zona. Quitar este candado acaba la verificación: tratar todo como si estuviera en tensión.
lock-key-lost = Si se ha perdido la llave
lock-cut-why = Por qué se cortó el candado propio
lock-cut-hint = Por ejemplo: la llave cayó al foso. El candado cuenta como quitado; la verificación acaba.
lock-cut-mine = Mi candado en { $place } está cortado, firma { $owner }
lock-hand-over-offered = Entrega
lock-hand-over = Entregar candado y llave
lock-give-phone = Dar el teléfono a { $to }, que firma abajo. Hasta entonces { $owner } conserva candado y llave.
lock-signs = { $to } firma por candado y llave
lock-takes = { $to } recibe candado y llave
lock-nobody-else = No hay nadie más en esta intervención. Primero añadir a la persona, después entregar.
lock-offer-to = A quién
lock-offer-to-other = U ofrecerlo a
lock-offer = Ofrecer candado y llave
lock-offer-other = Ofrecerlo a esta otra persona
lock-taken = Guardado. { $to } tiene candado, llave y este teléfono.

# The form for a lock.
fit-not-on-job = No está en esta intervención: no poner en ella ningún candado propio.
fit-yours = Poner el candado propio
fit-of-other = Anotar un candado que puso { $name }
fit-of-other-only = Solo si { $name } está aquí y lo puso. La llave se queda con { $name }.
# life-critical
fit-takes-no-lock = Este punto no admite candado. Cómo se impide su cierre se muestra con cada verificación.
fit-secured = Cómo se impide el cierre del punto sin candado
fit-secured-hint = Qué se sacó o se metió, y dónde está: fusibles en la caja de herramientas de Mara Lind
fit-label = Qué pone en el candado
fit-label-hint = Nombre o número
fit-save-secured = Guardar cómo se impide el cierre, firma { $name }
fit-save = Guardar candado, puesto por { $name }
fit-back-to-mine = Volver a mi candado: { $name }
fit-where = Dónde está el candado
fit-on-box = En la caja de bloqueo { $lockbox }
fit-on-point = En el propio { $point }
fit-locks-on-box = En la caja de bloqueo hay una llave de este punto. Poner los candados personales en la caja.
fit-key = Dónde está la llave
fit-key-owner = La tiene el titular
fit-key-box = En la caja de bloqueo { $lockbox }
fit-means = Cómo está bloqueado
fit-means-padlock = Candado por el aparato o la caja
fit-means-hasp = Candado en una pinza de bloqueo
fit-means-other = Sin candado: cierre impedido de otro modo
fit-means-which = De qué otro modo
fit-means-which-hint = Solo sin candado, por ejemplo fusibles que lleva consigo.
# $places is a list of places of other jobs. A lock is known by its owner and label.
fit-on-already = { $lock } de { $owner } ya está puesto: { $places }. Decir cuál es.
fit-on-already-below = { $lock } de { $owner } ya está puesto: { $places }. Decir abajo cuál es.
fit-moved-ends = Trasladado aquí: entonces allí está quitado, y acaba la verificación de esa intervención.
fit-moved-by-owner = ¿Trasladado aquí? Solo { $owner } puede decirlo. Entregar el teléfono.
fit-moved = Trasladado aquí: lo quité allí
fit-through = Un mismo cable o barra por los dos
fit-another = Otro candado con el mismo nombre
fit-on-elsewhere = Este candado está puesto en otro lugar
fit-mark = Qué distingue a los dos
fit-mark-hint = Solo para otro candado: cinta azul, una muesca
fit-was-moved = Guardado. { $lock } está quitado de { $place } y puesto aquí.

# Taking off the lock of somebody who is absent.
removal-title = Retirada en ausencia del titular
removal-authority = Autoridad
# $reached is how they were reached, $by when and by whom it was begun.
removal-authority-is = { $authority }, { $function }, contactado: { $reached }. Iniciada: { $by }.
removal-cannot-wait = Por qué no se puede esperar
removal-not-on-site = No está en el sitio, { $by }
removal-sought = Intento de contacto, { $by }
# What was tried, and what came of it.
removal-sought-how = { $how }: { $outcome }
removal-told = Informado, { $by }
removal-told-how = Cómo se informó a { $owner }
removal-told-how-hint = En persona, por teléfono.
removal-has-been-told = { $owner } ya lo sabe
removal-done = Guardado. El candado está quitado y la verificación ha acabado. Informar a { $owner } antes de que reanude el trabajo. { $authority } tiene este teléfono.
# life-critical
removal-must-tell = Informar a { $owner } antes de que reanude el trabajo: cree que el candado { $lock } sigue puesto. De quitarlo respondió { $authority }.
removal-if-absent = Si { $owner } no está
# life-critical
removal-only-owner = Solo { $owner } quita este candado. Cualquier otra persona, solo donde el procedimiento del sitio lo permita.
# life-critical
removal-conditions = Primero: una autoridad nombrada responde de ello, { $owner } no está en el sitio, se intentó contactar por todos los medios. Lo sabrá antes de reanudar el trabajo.
removal-who-answers = Quién responde de ello
removal-function = Su cargo en este sitio
removal-function-hint = Jefe del sitio, sala de control
removal-reached = Cómo se le contactó
removal-reached-hint = En persona, por teléfono a qué hora
removal-begin = Iniciar una retirada forzada
removal-found-absent = Cómo se vio que { $owner } no está en el sitio
removal-found-absent-hint = Lista de la entrada, radio del sitio, a quién se preguntó.
removal-is-absent = { $owner } no está en el sitio
removal-tried = Cómo se intentó contactar
removal-tried-hint = Número al que se llamó, a qué hora.
removal-outcome = Qué resultado tuvo
removal-outcome-hint = Sin respuesta, mensaje dejado.
removal-save-attempt = Guardar este intento
# life-critical
removal-ends-proof = Quitar el candado acaba la verificación: tratar todo como si estuviera en tensión. Comprobar en persona que { $owner } y sus herramientas están fuera de la zona.
removal-give-phone = Dar el teléfono a { $authority }, que firma abajo.
removal-signs = { $authority } firma por la retirada
removal-take-off = Quitar el candado; responde { $authority }
