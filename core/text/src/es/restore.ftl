# A draft that no licensed electrician has checked.
### Restoring: what stays open, and what is asked about readings with the supply back.

close-not-open = { $at } no está abierto en esta intervención: no hay nada que cerrar.
close-found-off = { $at } se halló abierto: se queda abierto.
# $first is a list of points.
close-after = { $at } se cierra después de la alimentación: primero { $first }.
# $own is a supply, $others one or more.
close-beside = { $at } pone { $own } junto a { $others }. Escribir por qué van las dos a la vez, o dejarlo abierto.
rotation-before-late = Ya se abrió un punto: el sentido de giro anterior queda como se anotó, y ahora no se puede leer.
rotation-unguarded = El sentido de giro no se leyó antes: desacoplar lo que gira u observar un arranque breve, y decir qué se hizo.
answer-of-nothing = Elegir de qué lectura fuera de lo normal se trata.
answer-was-wrong = Escribir qué estaba mal.
answer-mended = Escribir qué se reparó.
answer-left-off = Escribir qué se deja apagado.
answer-kept-off = Escribir cómo se mantiene apagado.
answer-accepts = Escribir quién fue informado y lo acepta.
answer-accepts-why = Escribir cómo se le informó y por qué lo acepta.
missing-accepted = Nadie acepta que falte una fase o el neutro: hacerlo reparar, o dejar apagado lo que alimenta.
rotation-turned = Sentido de giro ahora: { $now }; antes: { $before }. Los motores giran al revés. Desconectar otra vez y después permutar dos fases.

supply-normal = la alimentación normal
supply-unlisted = una fuente que ya no está en la lista
supply-unnamed = una fuente
