# A draft that no licensed electrician has checked.

### Rules of a company. A place in the file stands before what is wrong with it, as "case-placed" says.

company-too-large = größer als { $most } Bytes, mehr wird nicht gelesen; weglassen, was ein Auftrag nicht braucht.
company-empty = die Datei ist leer; mindestens schreiben: {"{"}"company":"Your company","version":"1"{"}"}.
# $field is a name of the format.
company-missing = das Feld "{ $field }" fehlt; ergänzen.
company-text = hierher gehört ein Text von 1 bis { $most } Zeichen, der etwas sagt, ohne Zeilenumbruch, Leerzeichen am Rand oder unsichtbare Zeichen.
company-too-many = höchstens { $most } werden hier angenommen; kürzen.
# $code stands in quotation marks; $known are codes.
company-no-question = { $code } ist keine Frage dieser Version; in jedem Auftrag fragbar sind { $known }.
company-of-its-own = { $code } wird zu einer Freischaltstelle, einer Quelle, einem System oder vor einer Handlung gefragt und besagt sonst nichts; in jedem Auftrag fragbar sind { $known }.
company-twice = { $what } steht zweimal da; eines behalten.
# $limit is limit-too-high.
company-limit = { $limit }; Firmenregeln machen ihn nur enger.
company-limit-unruled = die Regel nennen, die den Grenzwert setzt, wie die Firma sie nennt.
company-minutes = hierher gehören ganze Minuten von 1 bis { $most }: eine Firma setzt weniger, als die App erlaubt, nicht mehr.
company-code = ein Code hat kleine Buchstaben, Ziffern und einzelne Bindestriche, z. B. keys-counted, und höchstens 40 Zeichen.
company-number = eine Telefonnummer hat mindestens drei Ziffern und daneben nur + ( ) / - * # und Leerzeichen.
# $version stands in quotation marks.
company-version-taken = die Version { $version } besagt schon etwas anderes; dem Geänderten eine eigene Version geben.
company-held = Diese Regeln gelten an diesem Standort schon. Nichts wurde geändert.

company-version = { $company }, Version { $version } ({ $short })
company-ppe = { $company }: { $text }
# On a button; $who is whom the company wants called.
company-ring = Anrufen: { $who }

company-label = Regeln von
company-sha256 = SHA-256
company-always = In jedem Auftrag gefragt
company-limit-label = Grenzwert für Spannungsfreiheit
company-between = Zwischen zwei Funktionsprüfungen
company-holds = Ein Nachweis gilt
company-at-most = höchstens { $minutes } min
company-before-opening = PSA vor dem Öffnen einer Stelle
company-before-dead-test = PSA bis zur Feststellung der Spannungsfreiheit
company-before-work = PSA vor der Arbeit
company-before-restoring = PSA vor dem Wiedereinschalten
company-point-isolate = Eigener Punkt, vor dem Freischalten
company-point-work = Eigener Punkt, vor der Arbeit
company-point-restore = Eigener Punkt, vor dem Wiedereinschalten
company-point = { $text }{ $skip ->
    [yes] {" "}(darf mit Begründung übersprungen werden)
   *[no] {""}
}
company-call = Anrufen
company-called = { $who }: { $number }
