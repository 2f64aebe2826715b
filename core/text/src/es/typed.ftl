# A draft that no licensed electrician has checked.
### What is wrong with something that was typed: inside a sentence, without a full stop. $typed has its quotation marks.

typed-not-volts = { $typed } no es una tensión: escribir los voltios en cifras, como 0,4 o 231
typed-not-amps = { $typed } no es una corriente: escribir los amperios en cifras, como 0,4 o 12
# A mark before exactly three digits is the decimal mark in one country, and parts thousands in another.
# life-critical
typed-one-or-thousand = { $typed }: ¿{ $one } { $unit } o { $thousand } { $unit }? Escribir { $write } o { $thousand }
typed-either-way = { $typed }: escribir { $value }, sin tres cifras después del signo
typed-grouped = { $typed }: un solo signo para los decimales y nada entre los millares, como 1000,5
typed-too-high = { $typed } es más de { $most } { $unit }, lo máximo que se puede guardar: corregirlo
typed-no-tag = esto no es una etiqueta Stillbar: una etiqueta tiene { $length } caracteres y empieza por { $mark }
typed-tag-check = el carácter de control no cuadra: leer o escribir la etiqueta otra vez
