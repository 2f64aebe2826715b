# A draft that no licensed electrician has checked.
### What the supply network answers. Ids, labels and kinds stand in it as the network has them.

other-sources = Aquí solo se sabe lo que está en la red dibujada. Buscar otras fuentes en el lugar de trabajo y verificar la ausencia de tensión.
answer-cut = cortado
answer-not-cut = no cortado
answer-not-shown = no demostrado
# $zone is a list of parts.
check-cut = Ningún camino de esta red llega a { $zone }.
check-not-shown = No se demuestra que esté cortado { $zone }: tratar como si estuviera en tensión.
check-not-cut =
    No cortado: { $sources ->
        [one] una fuente llega
       *[other] { $sources } fuentes llegan
    } a { $zone }. Tratar como si estuviera en tensión.

# $more is what is written on the part, or what it is.
named = { $id } ({ $more })

doubt-lock-untraced = { $link } está bloqueado, pero nadie sabe qué es: ir y mirar qué separa.
doubt-lock-parts-nothing = { $link } es { $kind } y no separa nada: bloquear el interruptor de su extremo.
doubt-takes-no-lock = { $link } se da por bloqueado, pero la red dice que no admite candado.
# $left is one of the left- messages.
doubt-leaves-joined = { $link } está bloqueado, pero { $left }.
doubt-lock-on-node =
    { $id } se da por bloqueado, pero es { $kind ->
        [source] una fuente
        [board] un tablero
        [load] una carga
        [junction] un empalme
       *[unknown] una parte que nadie conoce
    }, y los candados van en las uniones.
doubt-lock-nowhere = { $id } se da por bloqueado, pero no está en la red.
doubt-node-unknown = Nadie sabe qué es { $node }: puede ser una fuente.
doubt-node-undescribed = Una unión nombra { $node } y nadie lo describió: puede ser una fuente.
doubt-node-untraced = En { $node } quedó algo sin rastrear: { $what }.
doubt-link-untraced = Nadie rastreó { $link } de { $from } a { $to }.
left-unnoted = nadie anotó qué conductores abre
left-named = no abre { $names }
left-fewer = abre { $opens } de { $of } conductores

path-in-zone = { $source } es una fuente y está en la propia zona de trabajo.
path-bare = { $source } llega a { $to } sin nada en medio que separe los conductores.
# $over is a list of links, each with where it stands.
path-through = { $source } llega a { $to } a través de { $over }.
path-through-more = { $source } llega a { $to } a través de { $over } y { $more } más.
over-untraced = { $link } (sin rastrear)
over-switch = { $link } ({ $stands }, { $lock })
over-kind = { $link } ({ $kind }, { $stands }, { $lock })
normally-open = normalmente abierto
normally-closed = normalmente cerrado
over-lock-counts-not = su candado no cuenta
over-lock-takes-none = no admite candado
over-lock-not-open = no bloqueado abierto
over-lock-not = sin bloquear
zone-gone = { $zone } ya no está en la red de alimentación.

# $path is one of the path- messages.
proposals-bare = Nada que admita candado corta { $zone }. { $path }
proposals-no-source = Ninguna fuente de esta red llega a { $zone }, así que no hay nada que bloquear. Buscar qué lo alimenta.
# $parts is one of the doubt- messages, or several.
proposals-not-shown = Con ninguna de estas se demuestra que esté cortado { $zone }: { $parts }
proposals-not-all = La red es grande: entre la primera y la última de estas puede haber otras, y la primera puede necesitar menos candados.
proposal-loses-none = Bloquear { $links }: no se pierde ningún circuito.
proposal =
    Bloquear { $links }: { $lost ->
        [one] se pierde 1 circuito
       *[other] se pierden { $lost } circuitos
    }.
worth-best = menos circuitos perdidos y menos candados
worth-fewest-lost = menos circuitos perdidos
worth-fewest-locks = menos candados
worth-between = entre las dos

stays-locked = { $link } tiene todavía un candado con el que cuenta { $job }.
stays-fed-already = { $job } ya tiene alimentación donde están puestos sus candados. { $path }
stays-fed = { $job } tendría entonces alimentación donde están puestos sus candados. { $path }
caution-joins = Los dos lados tienen alimentación, de { $first } y de { $then }: cerrarlo solo si se pueden unir.
caution-no-supply = Ninguno de los dos lados tiene alimentación todavía.
touched-cut = { $job }: ya no está cortado { $zone }. { $why } Tratar como si estuviera en tensión.
touched-not-cut = { $job }: no estaba cortado { $zone }, y ahora menos. { $why } Tratar como si estuviera en tensión.

# What is no network. These begin with a small letter: a place stands before them.
network-too-large = tiene { $nodes } nodos y { $links } uniones, y de cada clase se toman como mucho { $most }; dejar fuera lo que está lejos del trabajo.
network-inlet-alone = una toma necesita una fuente en un extremo: el grupo que se conecta; añadirlo como nodo de la clase source.
network-no-zone = no se nombró ninguna zona de trabajo; nombrar el tablero o la parte en que se va a trabajar.
network-not-there = { $id } no está en ella; nombrar un nodo o una unión como hace la red.
network-no-link = { $id } no es ninguna unión de ella; nombrar un interruptor como hace la red.
network-not-switched = { $id } es { $kind }, que nadie abre ni cierra.
# $first is a place in the file.
network-id-twice = { $id } es también el id de { $first }; dar a cada uno su propio id.
network-ends-alike = { $id } es también el otro extremo; una unión enlaza dos nodos distintos.
list-too-long = esta lista tiene { $count } elementos y se toman como mucho { $most }; acortarla.
network-tell-empty = hay en ella un nombre vacío; decir a quién hay que avisar, o dejarlo fuera.
network-sort-of-none = solo una fuente tiene "sort", y esto es de la clase { $kind }; corregir uno.
network-not-lockable = { $kind } no separa conductores de modo que se pueda bloquear abierto; dibujar el interruptor de su extremo como una unión propia.
network-id-empty = un id necesita al menos un carácter.
network-id-comma = { $id } tiene una coma, que en las listas separa los id; escribirlo sin ella.
network-unseen = un texto necesita caracteres visibles, y ningún espacio delante ni detrás.
network-too-long = esto tiene { $count } caracteres y se toman como mucho { $most }; acortarlo.
network-conductor-count = aquí van de 1 a { $most } conductores, no { $count }.
network-conductor-twice = { $name } está vacío o dos veces; nombrar cada conductor una vez.
