# A draft that no licensed electrician has checked.

### What is wrong with something that was typed: inside a sentence, without a full stop. $typed has its quotation marks.

typed-not-volts = { $typed } ist keine Spannung: Volt in Ziffern eingeben, z. B. 0,4 oder 231
typed-not-amps = { $typed } ist kein Strom: Ampere in Ziffern eingeben, z. B. 0,4 oder 12
# A mark before exactly three digits is the decimal mark in one country, and parts thousands in another.
# life-critical
typed-one-or-thousand = { $typed }: { $one } { $unit } oder { $thousand } { $unit }? { $write } oder { $thousand } eingeben
typed-either-way = { $typed }: { $value } eingeben, ohne drei Ziffern nach dem Zeichen
typed-grouped = { $typed }: ein Dezimalzeichen eingeben und nichts zwischen Tausendern, z. B. 1000,5
typed-too-high = { $typed } ist mehr als { $most } { $unit }, das Höchste, was gespeichert werden kann: berichtigen
typed-no-tag = das ist kein Codeschild von Stillbar: der Code darauf hat { $length } Zeichen und beginnt mit { $mark }
typed-tag-check = das Prüfzeichen passt nicht: Codeschild neu lesen oder Code neu eingeben
