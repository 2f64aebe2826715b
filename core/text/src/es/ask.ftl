# A draft that no licensed electrician has checked.
### What is asked before an act can be done, with what was given in it, and what kept an act from being done.

ask-shorter = Demasiado largo: como mucho { $most } caracteres. { $ask }
ask-listed = «{ $name }» ya está aquí en la lista. Añadir algo que distinga los dos.
ask-minutes = Escribir minutos enteros, de 1 a { $most }.
ask-signs = Primero firma { $name } en el recuadro.
ask-signs-as-themselves = { $typed } no es el nombre de { $name }, que firma aquí. { $name } escribe su propio nombre, o dibuja su firma.
ask-not-marked = Sin marcar: { $parts }. Mirarlo también y marcarlo. Si algo no está en buen estado, escribir abajo qué es y guardarlo.
ask-part-named = { $id } ya está en la red. Dar otro nombre, o corregir esa parte.
# Why is what is wrong with a figure or a tag that was typed: it begins small and has no full stop.
ask-volts = { $why }.
ask-volts-of = { $first } – { $then }: { $why }
ask-volts-back = { $first } – { $then }: { $why }.
ask-tag-text = { $why }.
# $why is what is wrong with the file, with its place.
ask-company = El archivo no se aceptó. { $why }
ask-pin-wait = Esperar { $seconds } s y probar otra vez.
ask-pin-of = Ese no es el PIN de { $name }. Esperar { $seconds } s y probar otra vez.
ask-pin-digits = Un PIN tiene de { $from } a { $to } cifras y nada más.
pin-unkept = No se pudo guardar el PIN ({ $why }). Seguir sin él.
photo-unwritten = No se pudo guardar la foto: { $why }. Liberar espacio y hacerla otra vez.
record-unwritten = No se pudo escribir el acta en el disco: { $why }. Liberar espacio y probar otra vez.
padlock-stays-beside = El mismo candado está en { $place }, para { $job }. { $why }
