# A draft that no licensed electrician has checked.
### What is asked while a point is opened and secured, about its photos and its tags too.

ask-isolate-apart = Escribir qué distingue a los dos, visto aquí en el lugar.
ask-isolate-off-load = Elegir si se abrió sin carga.
ask-isolate-found = Decir cómo se halló: cerrado, o ya abierto.
ask-isolate-seen = Escribir qué se vio apagarse al abrir el punto.
ask-isolate-photo-why = Escribir por qué se conserva esta foto aunque muestra la etiqueta de otro punto.
ask-isolate-tag-moved-why = Escribir por qué la etiqueta está ahora aquí.
