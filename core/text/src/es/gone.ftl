# A draft that no licensed electrician has checked.
### What an act is about, and what is not there: gone meanwhile, or never.

gone-action = Esta pantalla no conoce esa acción.
gone-place = Este lugar ya no existe.
gone-job = Esta intervención no está en este dispositivo.
gone-person = A esta persona no se la conoce en este dispositivo.
gone-lock = Este candado no está en este dispositivo.
gone-point = Este punto no está en esta intervención.
gone-point-of-step = Este punto no está en esta intervención. Volver a los pasos de la intervención.
gone-point-known = Este punto ya no se conoce en este sitio.
gone-part = Esta parte se corrigió o se tachó entretanto. Volver y mirar otra vez.
gone-proposal = La red cambió entretanto. Mirar otra vez las propuestas.
gone-source = Esta fuente ya está respondida. Mirar otra vez.
gone-photo-waiting = La foto ya no está aquí. Hacerla otra vez.
gone-photo-unasked = Esta foto ya no se pedía. Hacerla otra vez.
gone-photo-not = Se pidió una foto. Hacerla otra vez.
gone-photo-of-nothing = Aquí no hay nada que fotografiar.
gone-screen = Esto se escribió en una pantalla que ya no está, así que no se guardó. Mirar la pantalla nueva y escribirlo allí.
gone-hand = Ahora otra persona tiene este dispositivo, así que no se guardó lo escrito antes.
gone-journal = Stillbar quedó en segundo plano y su diario está cerrado.
gone-codes = Lo que dijeron los códigos no es un conjunto de anotaciones válido. No se incorporó nada.
gone-memory = Este teléfono ha olvidado lo que escribió: tratar como si estuviera en tensión. Ir a Todas las intervenciones y tocar «Seguir con una clave nueva».
