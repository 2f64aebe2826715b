# A draft that no licensed electrician has checked.
### What the supply network has to say against something. Where a message takes $says, that is one or more sentences of the network's own.

not-of-site = Esto no trata de un sitio.
link-named = { $id } ya es el nombre de una unión. Dar otro nombre.
node-named = { $id } ya es el nombre de un tablero, una fuente o una carga. Dar otro nombre.
network-too-many = La red de un sitio admite como mucho { $most } partes de cada clase. Dejar fuera lo que está lejos del trabajo.
part-not-there = { $id } no está en esta red.
part-gone-unsaid = Escribir cómo se sabe que no está ahí.
part-locked = Hay un candado de { $owner } en { $part }, { $job }: mientras esté puesto no se puede tachar.
rules-too-wide = Un sitio fija menos, no más: de 1 a { $between } min entre dos pruebas, de 1 a { $holds } min para una verificación.
not-in-network = { $id } no está en la red de alimentación.
network-not-drawn = Todavía no hay ninguna red de alimentación dibujada para este sitio.
point-already = { $link } ya es un punto de esta intervención.
network-way = La red de alimentación muestra un camino que ningún candado corta. { $says } Bloquearlo, o decir en Red de alimentación por qué no cuenta.
point-held = { $at } queda abierto: tiene puesto el candado { $lock } de { $owner }, para { $job }.
point-not-yet = { $at } queda abierto. { $says }
