# A draft that no licensed electrician has checked.
### What is asked while the supply comes back.

ask-restore-warned-who = Escribir a quién se avisó.
ask-restore-warned-how = Escribir cómo se le avisó.
ask-restore-beside = Escribir por qué van las dos alimentaciones a la vez.
ask-restore-back-to = Escribir quién recibe la instalación.
ask-restore-reading = Introducir al menos una lectura y después guardarla.
ask-restore-rotation = Elegir en qué sentido gira.
ask-restore-rotation-guard = No se leyó antes: desacoplar lo que gira u observar un arranque breve. Elegir qué se hizo.
ask-restore-rotation-how = Escribir cómo se sabe el sentido de giro, o por qué no hace falta.
ask-restore-odd = Marcar de qué lecturas se trata.
ask-restore-answer = Elegir qué se hace con ello.
ask-restore-answer-who = Escribir quién lo acepta, qué se deja apagado, o qué estaba mal.
ask-restore-answer-how = Escribir cómo se le informó, cómo se mantiene apagado, o qué se reparó.
