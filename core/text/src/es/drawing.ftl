# A draft that no licensed electrician has checked.
### The single-line diagram. What begins with label- stands in the drawing itself and has to be short.

label-part = { $drawn } de { $all } partes, las más cercanas al trabajo
label-locked-open = bloqueado abierto
label-lock-no-use = candado no sirve
label-closed = cerrado
label-open = abierto
# $state is one of the four before.
label-kind =
    { $kind ->
        [changeover] conmutador
        [tie] acoplamiento
        [inlet] toma
       *[inverter] inversor
    }, { $state }
# What a part of the network is, where nothing more is known of it.
label-node =
    { $kind ->
        [source] fuente
        [board] tablero
        [load] carga
        [junction] empalme
       *[unknown] desconocido
    }
label-transformer = transformador
label-takes-no-lock = no admite candado
label-uncovered = sin cubrir
label-work-zone = zona de trabajo
label-reaches-zone = llega a la zona
label-not-traced = sin rastrear
label-not-drawn =
    { $links ->
        [one] 1 unión
       *[other] { $links } uniones
    } sin dibujar

drawing = Esquema unifilar.
drawing-in-part = Se dibujan { $drawn } de { $all } partes.
drawing-more = Hay { $more } partes más dibujadas y aquí no nombradas.
# $about is a list: what the part is, what is written on it, where it is, what is to say of it.
drawn-part = { $id }: { $about }.
# $ways is drawn-by or drawn-over, or several.
drawn-part-ways = { $id }: { $about }; { $ways }.
drawn-source = fuente, { $sort }
drawn-by = a { $to } por { $id } ({ $about })
drawn-over = a { $to } a través de { $id } ({ $about })
drawn-lock-counts-not = bloqueado, y el candado no cuenta
drawn-uncovered = en un camino sin cubrir
