# A draft that no licensed electrician has checked.
### What a step still lacks, and where an isolation does not hold: a sentence each.

lacks-permit = La referencia del permiso, o por qué no lo hay.
lacks-in-charge = No se ha nombrado a nadie que responda de la desconexión.
lacks-told = No se ha avisado a nadie de que se corta la alimentación.
lacks-barrier = No hay anotada ninguna barrera ni cartel de peligro.
lacks-rotation-before = El sentido de giro actual, o por qué no se leyó.
lacks-circuits = Las cargas que hay que apagar, o que no hay ninguna.
lacks-instrument = Ningún detector de tensión se halló apto para el uso.
lacks-second-instrument = Solo un instrumento se halló apto para el uso: hacen falta el detector y aquello con lo que se prueba, o decir que se prueba con una fuente que se sabe en tensión.
lacks-circuit-off = { $label } todavía no está apagado.
lacks-securing = { $at }: el cierre todavía no está impedido.
lacks-own-lock = { $person } no tiene candado propio en { $at }.
lacks-sign = No hay cartel de aviso en { $at }.
lacks-photo = Ninguna foto muestra el candado y el rótulo en { $at }.
lacks-photo-of-tag = Ninguna foto muestra la etiqueta de { $at }: candado, rótulo y etiqueta en una foto, o la etiqueta en una segunda.
lacks-covers = Qué tapas se quitaron, o que no hace falta quitar ninguna.
lacks-signature = Comprobado bajo supervisión: lo firma alguien de la intervención que no esté bajo supervisión.
# $why is one or two sentences: why the proof is void.
lacks-proof = La última verificación está anulada. { $why } Probar el detector y ensayar otra vez.
lacks-indicator = El detector no está probado.
lacks-reference = No se ha demostrado que el conductor de protección sea aquí tierra.
# $at is a pair or a place, $reading what was read.
lacks-no-voltage = { $at }: { $reading }. Tratar como si estuviera en tensión.
lacks-test = { $direct ->
    [yes] { $first } – { $then }: sin comprobar en tensión continua.
   *[no] { $first } – { $then }: sin comprobar.
}
lacks-any-test = Ningún par está comprobado con una verificación vigente.
lacks-proof-after = El detector no se ha probado otra vez después de las comprobaciones.
lacks-end-of-work = El trabajo no ha terminado.
lacks-work = El trabajo no ha empezado con una verificación vigente.
lacks-earth-off = La tierra temporal { $label } sigue puesta: { $at }.
lacks-cover-back = Tapa todavía sin poner: { $what }.
lacks-warning = No se ha avisado a nadie de que vuelve la alimentación.
lacks-lock-off = El candado de { $owner } sigue en { $place }.
lacks-sign-down = El cartel sigue en { $at }.
lacks-closing = { $at } sigue abierto.
lacks-closing-beside = { $at } sigue abierto. Pone { $own } junto a { $others }: decir por qué, o dejarlo abierto.
# $finding is a sentence.
lacks-reading-again = { $finding } Se dijo que está reparado: leer otra vez.
lacks-mending = { $finding } Repararlo, o dejar apagado lo que alimenta.
lacks-answer = { $finding } Decir qué se hace con ello.
lacks-presence = { $first } – { $then }: sin leer.
lacks-rotation = El sentido de giro no está leído.
lacks-rotation-guard = El sentido de giro no se leyó antes: desacoplar lo que gira u observar un arranque breve, y después leer.
lacks-circuit-on = { $label } sigue apagado.
lacks-hand-back = La instalación no está devuelta.

way-no-point = No hay ningún punto de corte.
# $kind is a kind of source.
way-source-unanswered = { $kind }: sin responder.
way-stored-unanswered = Energía acumulada: sin responder.
way-source-beside = { $what }, conocida en este sitio ({ $by }): decir si llega a este trabajo.
way-line = Ningún punto abre { $line } de la alimentación normal.
way-opens-protective = { $at } abre { $conductor }, que tiene que seguir unido.
way-no-normal-point = Ningún punto corta todavía la alimentación normal.
way-neutral = Ningún punto abre { $neutral } de la alimentación normal; esquema de tierra { $earthing }: hay que abrirlo.
way-source-uncut = { $what }: hallada, y ningún punto la corta todavía.
way-source-conductor = { $what }: ningún punto abre { $conductor }.
# In the place of what a source is, where nobody noted it.
way-source-unnamed = Una fuente
way-direct-unread = { $what }: sin lectura de tensión continua. Esperar { $wait } y después leer.
way-direct-shows = { $what }: { $reading }. Tratar como si estuviera en tensión, esperar y leer otra vez.
way-direct-early = { $what }: leído antes de cumplirse la espera de su rótulo ({ $wait }). Leer otra vez.
way-not-open = { $at } no está abierto.
way-closed-beside = { $at } se cerró para otra intervención: { $job }. Ver que esté abierto, y decirlo.
way-no-lock = No hay candado en { $at }.
way-not-all-locked = Alguien de la intervención no tiene candado propio en { $at }.
# How many questions: kinds of source that nobody looked for, and sources that are known at the site.
lacks-sources = { $count ->
    [one] 1 pregunta sobre fuentes está sin responder
   *[other] { $count } preguntas sobre fuentes están sin responder
}
