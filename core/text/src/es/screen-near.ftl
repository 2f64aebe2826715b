# A draft that no licensed electrician has checked.
### Two phones beside each other, with no signal: each shows codes, and the other scans them.

near-title = Pasar candados a un teléfono al lado
near-what-it-is = Dos teléfonos se muestran sus intervenciones y candados como códigos. Sin señal, sin oficina. Se comprueba todo lo que llega.
# What the facts near-first, near-second and near-third are counted by.
near-one = 1
near-two = 2
near-three = 3
near-first = Mostrar el código propio. El otro teléfono lo escanea.
near-second = El otro teléfono muestra lo que al propio le falta. Escanearlo.
near-third = Después, al revés.
near-scan = Escanear el otro teléfono
near-show = Mostrar mi código
near-shows-has = Código propio. El otro teléfono lo escanea.
# $count entries.
near-shows-entries =
    { $count ->
        [one] 1 anotación que el otro teléfono no tiene. Escanea esto.
       *[other] { $count } anotaciones que el otro teléfono no tiene. Escanea esto.
    }
near-part = Parte { $part } de { $of }. Las partes cambian solas: no mover ninguno de los dos teléfonos.
near-drawing = Código { $part } de { $of }, para que lo escanee el otro teléfono.
near-stop = Dejar de mostrar

# Notices while codes are scanned.
near-unread = Código no leído entero. No mover el otro teléfono: vuelve a empezar.
near-parts-here = Aquí hay { $here } de { $of } partes. Mantener hasta que estén todas.
near-has-all = El otro teléfono tiene todo lo que tiene este.
near-lacks =
    { $count ->
        [one] Al otro teléfono le falta 1 anotación. Escanea el código que ahora se muestra.
       *[other] Al otro teléfono le faltan { $count } anotaciones. Escanea los códigos que ahora se muestran.
    }
near-nothing-new = Todo lo que se mostró ya está aquí.
near-taken-in =
    { $count ->
        [one] Ya está aquí, comprobada: 1 anotación del otro teléfono.
       *[other] Ya están aquí, comprobadas: { $count } anotaciones del otro teléfono.
    }
near-some-aside = Algunas quedaron apartadas: ver las intervenciones de las que tratan.
