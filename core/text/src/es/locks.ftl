# A draft that no licensed electrician has checked.
### Locks and keys: what is refused, and what keeps a lock on.

no-such-lock = Esta intervención no tiene ese candado.
lock-off-already = Este candado ya está quitado.
lock-not-theirs = Solo { $owner } puede quitar este candado. Si no se puede contactar, una autoridad nombrada puede iniciar una retirada forzada.
# $owners is a list of people.
lock-boxed = La llave de este candado está en la caja de bloqueo, y la caja tiene todavía el candado de { $owners }.
lock-owed = El candado de { $owner } en { $place } se quitó en su ausencia. Hay que decírselo, y anotarlo, antes de que reanude el trabajo.
lock-cut-by-owner = Solo { $owner } corta su propio candado.
lock-given-by-owner = Solo { $owner } puede entregar este candado.
key-in-box = La llave está en una caja de bloqueo. Solo quien tenga candado propio en esa caja puede recibir este candado.
key-theirs-already = Ya es de esa persona.
key-not-on-job = Primero añadir a la persona a la intervención.
has-to-confirm = { $person } tiene que confirmarlo.
offer-gone = Este ofrecimiento ya no está en pie.
shift-not-theirs = Solo la persona que responde de la desconexión puede entregar el turno.
shift-to-nobody = Elegir otra persona de la intervención.
shift-gap = Quedaría un hueco: { $person } todavía no tiene candado propio en { $at }.
authority-unsaid = Escribir qué es la autoridad en este sitio y cómo se contactó.
authority-learns = Quien trabaja bajo supervisión no responde de una retirada forzada.
authority-owns = La autoridad tiene que ser otra persona que el titular.
authority-first = Nombrar primero a la autoridad.
forced-own-lock = Este candado es el suyo: quitarlo en persona, o decir que lo cortó.
forced-why-unsaid = Decir por qué no se puede esperar al titular.
forced-no-authority = Todavía no hay ninguna autoridad nombrada.
forced-not-on-site = No está anotado cómo se vio que el titular no está en el sitio.
forced-not-sought = No hay anotado ningún intento de contactar al titular.
not-forced = Este candado no se quitó en ausencia de su titular.
box-held = La llave de este candado está en { $place }, que tiene puesto el candado de { $owner }: ese se quita primero.
padlock-gone = Ese candado ya no está puesto en ningún otro lugar.
padlock-other = Ese no es el candado de este rótulo y titular.
padlock-on = { $label } de { $owner } ya está puesto: { $place }, { $job }. Decir si se trasladó, si pasa por los dos o si es otro.
owner-not-on-job = { $owner } no está en esta intervención: añadir primero.
lock-no-label = Escribir lo que pone en el candado: su número o nombre lo distingue de cualquier otro.
key-in-no-box = Elegir una caja de bloqueo de esta intervención para la llave.
box-key-not-kept = La llave de un candado personal en una caja se queda con su titular.
box-takes-locks = Una caja de bloqueo admite un candado y nada más.
no-such-box = Esta intervención no tiene esa caja de bloqueo.
lock-on-closed = { $at } no está abierto: un candado en un punto cerrado no impide nada.
point-takes-lock = Este punto admite candado: poner uno. Cualquier otra cosa es para puntos que no se pueden bloquear, y dice cómo.
point-takes-no-lock = Este punto no admite candado. Decir con qué otro medio se impide su cierre.
one-lock-only = Ya hay un candado puesto. Solo una pinza de bloqueo o una caja admite varios.
lock-not-on-hasp = El candado puesto pasa directamente por el aparato. Su titular tiene que pasarlo primero a la pinza de bloqueo: quitarlo y volver a ponerlo.
