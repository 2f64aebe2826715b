# A draft that no licensed electrician has checked.
### What is asked while it is proved dead.

ask-prove-cover = Decir qué tapa se quita.
ask-prove-no-covers = Decir por qué no hace falta quitar ninguna tapa.
ask-prove-indicator = Elegir el detector de tensión.
ask-prove-on = Elegir con qué se probó el detector.
ask-prove-source = Nombrar la fuente en tensión con la que se probó, por ejemplo: toma de corriente de la celda 2.
ask-prove-indicator-first = Probar primero el detector.
ask-prove-reading = Todavía no hay ninguna lectura. Introducir lo que mostró el detector en cada par.
ask-prove-seen = Elegir el par que dio indicación.
ask-prove-level = Elegir el nivel que se encendió.
ask-prove-direct = Escribir la tensión continua que se leyó, por ejemplo 0.
ask-prove-reference = Decir cómo se comprobó la referencia.
ask-prove-cause = Escribir cuál fue la causa y qué se hizo.
ask-prove-cause-sought = Escribir dónde se buscó la causa y qué se hizo.
