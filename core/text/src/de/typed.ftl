# A draft that no licensed electrician has checked.
### What is wrong with something that was typed: inside a sentence, without a full stop. $typed has its quotation marks.

typed-not-volts = { $typed } ist keine Spannung: Volt in Ziffern schreiben, etwa 0,4 oder 231
typed-not-amps = { $typed } ist kein Strom: Ampere in Ziffern schreiben, etwa 0,4 oder 12
# A mark before exactly three digits is the decimal mark in one country, and parts thousands in another.
# life-critical
typed-one-or-thousand = { $typed }: { $one } { $unit } oder { $thousand } { $unit }? { $write } oder { $thousand } schreiben
typed-either-way = { $typed }: { $value } schreiben, ohne drei Ziffern nach dem Zeichen
typed-grouped = { $typed }: ein Zeichen vor den Dezimalen und nichts zwischen Tausendern, etwa 1000,5
typed-too-high = { $typed } ist mehr als { $most } { $unit }, das Höchste, was gespeichert werden kann: berichtigen
typed-no-tag = das ist kein Stillbar-Code: ein Code hat { $length } Zeichen und beginnt mit { $mark }
typed-tag-check = das Prüfzeichen passt nicht: Code noch einmal lesen oder eintippen
