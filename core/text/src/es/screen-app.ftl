# A draft that no licensed electrician has checked.
### Notices of the app itself: what an act came to, clocks, scanning, photos, being put in the background, the device's key.

app-moved-on = La pantalla cambió antes de ese toque. No se hizo nada: mirar otra vez.
# After an act that has nothing else to say.
app-saved = Guardado.
# In the place of a job's title and of a place.
app-job-elsewhere = Una intervención que no está en este teléfono
app-place-elsewhere = un punto que aquí no se conoce
# $here and $there are what two clocks show.
# life-critical
app-clock-office = El reloj de este teléfono marca { $here }, el de la oficina { $there }. Poner en hora el teléfono y después sincronizar con la oficina.
# $long is by how much, $when what the other phone's clock showed.
# life-critical
app-clock-behind = Edad de la verificación desconocida: el reloj de este teléfono iba { $long } atrasado respecto al de otro teléfono ({ $when }). Comparar los dos con un tercer reloj. Poner este en hora, o confirmarlo en Todas las intervenciones.
# life-critical
app-clock-ahead = Edad de la verificación desconocida: el reloj de este teléfono iba { $long } adelantado respecto al de otro teléfono ({ $when }). Comparar los dos con un tercer reloj. Poner este en hora, o confirmarlo en Todas las intervenciones.
# What was saved touches the points or the network of other jobs; $touched says which.
# life-critical
app-touches-other-work = Esto afecta a otras intervenciones. { $touched }

app-scan-type-instead = { $why } Escribir lo impreso junto a la etiqueta.
app-scan-size = La imagen de la cámara tiene un tamaño que no se puede leer.
app-scan-none = No se halló ninguna etiqueta en esta imagen. Acercarse, o escribir lo impreso junto a ella.
app-scan-foreign = Este código no es una etiqueta de Stillbar. No se abrió nada. Dice: { $text }
app-scan-several = Hay varias etiquetas en la imagen. Acercarse a una de ellas.
app-scan-hint = Mantener la etiqueta en el centro de la imagen.
# $doubt is one of the photo- messages.
app-photo-waits = { $doubt } Hacerla otra vez, o escribir abajo por qué se conserva.
app-photo-saved = La foto está guardada.
app-photo-hint = Candado, rótulo, etiqueta y posición del interruptor en una foto.
app-was-aside = Stillbar estaba en segundo plano y su diario está cerrado. No se hizo nada, y lo escrito sigue aquí: mirar otra vez.
app-other-journal = El diario en { $folder } no es el que estaba abierto antes. No se cambió nada: volver a poner aquel y probar otra vez, o cerrar Stillbar y abrirlo de nuevo.

# The device's key, with which everything is signed: device.key is its file.
app-key-no-chance = El sistema no dio bytes aleatorios y no se pudo crear la clave del dispositivo.
app-key-unusable = La clave del dispositivo (device.key) no se puede usar: { $why }
app-key-wrong = La clave del dispositivo (device.key) que firmó este diario falta o es otra. No se cambió nada: volver a poner la clave desde la copia, o empezar una carpeta de datos nueva y conservar esta.

# Making a record at the command line. $listed is a line for each job.
app-record-no-key = Falta la clave del dispositivo (device.key), así que no se puede firmar nada. Volver a ponerla desde la copia.
app-record-no-job = No hay ninguna intervención en esta carpeta.
app-record-not-called = Aquí ninguna intervención se llama «{ $named }». Nombrar una de estas por sus cifras:{ $listed }
app-record-several = Varias intervenciones se llaman «{ $named }». Nombrar una de estas por sus cifras:{ $listed }

# A screen as text, for a message to another person.
# life-critical
app-as-known = Según lo que sabe este teléfono ({ $now }). Son palabras, no el acta firmada: quien se base en ellas pregunta en el sitio.
app-cut-short = En un mensaje no cabe más: el acta lo tiene todo.

# The way up from a screen, at its head.
app-up-jobs = Todas las intervenciones
app-up-job = La intervención
app-up-back = Atrás
# A line on top of every screen of a job: $name is who is signed on.
app-context = { $name }: { $job }, { $place }
app-nobody = nadie identificado
# In the place of a screen whose job is gone.
app-no-job = Esta intervención no está en este teléfono

# The banner in a line: $word is one of the state- messages, $says one of the standing- messages.
# life-critical
app-standing = { $word }. { $says }
# Both are times.
# life-critical
app-clock-back = El reloj de este teléfono marca { $now }, pero su última anotación es de { $wrote }. El orden vale, las horas son dudosas. Poner el reloj en hora.

app-back-to-jobs = Volver a las intervenciones
app-share = Compartir esto como mensaje

# The state of a row, in a word.
# A voltage was met.
# life-critical
app-word-stop = parar
