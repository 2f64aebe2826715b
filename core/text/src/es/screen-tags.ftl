# A draft that no licensed electrician has checked.
### Tags: scanning one, what this phone knows of it, and the tags of a point.

tags-scan-title = Escanear una etiqueta
tags-scan-what = La etiqueta dice de quién es el candado puesto, quién tiene la llave y desde cuándo.
tags-look-up = Consultar
tags-scan = Escanear con la cámara
tags-typed = O la etiqueta como está impresa
tags-typed-hint = 16 caracteres, en grupos de cuatro
tags-title = Etiqueta { $tag }
# $caution is locks-no-clearance, here and below.
# life-critical
tags-unknown = Este teléfono no sabe nada de esta etiqueta. { $caution }
tags-scan-another = Escanear otra etiqueta
tags-hangs-at = Está en
tags-place = { $point }, { $place }
# life-critical
tags-given-up = Esta etiqueta se dio de baja: { $why }. No guiarse por ella: mirar el propio punto.
# life-critical
tags-no-lock = Este teléfono no sabe de ningún candado en este punto, de ninguna intervención. { $caution }
tags-jobs = Intervenciones
tags-hung = Etiqueta colocada: { $when }
tags-hung-at = Etiqueta colocada en { $point }: { $when }
# $id tells jobs of one title apart.
tags-job = { $job } ({ $id })
tags-same-point = El mismo punto, hasta donde se sabe: { $point }, { $place }
# How old what is shown is.
# life-critical
tags-as-known = Según lo que sabe este teléfono ({ $now }). Último contacto con la oficina: { $when }; otros teléfonos pueden saber de más candados.
# life-critical
tags-as-known-alone = Según lo que sabe este teléfono ({ $now }). No ha tenido contacto con una oficina; otros teléfonos pueden saber de más candados.
tags-lock-on = Candado de { $owner } en { $point }
tags-key-holder = Tiene la llave
tags-since = Desde
tags-of-job = Intervención
tags-of-job-is = { $job }, { $place }
tags-lock = Candado { $lock }
tags-about-lock = Todo sobre este candado
tags-telephone = Teléfono
tags-telephone-none = no indicado
tags-ring = Llamar a { $owner }
tags-photo = { $job }, foto de { $by }
tags-pictures = Fotos

# The tags of a point.
tags-none-yet = Sin etiqueta todavía
tags-read-by = { $tag }, leída: { $by }
tags-not-read = { $tag }, sin leer en esta intervención
tags-of-point = Etiqueta de { $point }
tags-no-point = Este punto no está en esta intervención
# life-critical
tags-known-elsewhere = La etiqueta { $tag } se conoce como la de { $known }, no de { $point }. Mirar ante qué interruptor se está.
tags-moved-why = Si de verdad está ahora aquí: por qué
tags-moved-why-hint = Por ejemplo: se cambió el interruptor
tags-hangs-here-now = La etiqueta está ahora en { $point }
tags-blank = La etiqueta { $tag } está libre: este teléfono no sabe de ningún lugar donde esté puesta.
tags-hangs-here = Está en { $point }
tags-stick = Pegar una etiqueta libre junto al interruptor, donde se quede al quitar una tapa. Después escanearla.
tags-hangs-since = está aquí desde { $by }
tags-read = Leída
tags-use-this = Usar esta etiqueta
tags-lost = Si falta una etiqueta: qué ha pasado con ella
tags-lost-hint = Perdida, dañada, quitada
tags-gone = La etiqueta { $tag } ya no está
tags-scan-here = Escanear aquí la etiqueta
tags-was-given-up = La etiqueta está dada de baja. Pegar una nueva y escanearla.
tags-this-is = Esto es { $point }, según su etiqueta.
tags-is-blank = Una etiqueta libre. Decir dónde está puesta.
tags-at-other-site = { $point } en otro sitio
# life-critical
tags-belongs = Esta etiqueta es de { $known }, no de { $point }.
