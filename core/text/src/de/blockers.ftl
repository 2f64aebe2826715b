# A draft that no licensed electrician has checked.

### What a step still lacks, and where an isolation does not hold: a sentence each.

lacks-permit = Die Nummer des Erlaubnisscheins, oder warum es keinen gibt.
lacks-in-charge = Niemand ist als Verantwortlicher für die Freischaltung benannt.
lacks-told = Niemand ist über das Abschalten informiert.
lacks-barrier = Keine Absperrung und kein Warnschild eingetragen.
lacks-rotation-before = Das Drehfeld jetzt, oder warum es nicht gemessen wurde.
lacks-circuits = Die vorab abzuschaltenden Lasten, oder dass es keine gibt.
lacks-instrument = Kein Spannungsprüfer ist als einsatzfähig befunden.
lacks-second-instrument = Nur ein Prüfgerät ist als einsatzfähig befunden: nötig sind der Spannungsprüfer und das, woran er auf Funktion geprüft wird; oder angeben, dass eine bekannte Quelle unter Spannung dazu dient.
lacks-circuit-off = { $label } ist noch nicht abgeschaltet.
lacks-securing = { $at } ist nicht gegen Wiedereinschalten gesichert.
lacks-own-lock = { $person } hat kein eigenes Schloss an { $at }.
lacks-sign = An { $at } hängt kein Schaltverbotsschild.
lacks-photo = Kein Foto zeigt Schloss und Beschriftung an { $at }.
lacks-photo-of-tag = Kein Foto zeigt das Codeschild von { $at }: Schloss, Beschriftung und Codeschild in einem Bild, oder das Codeschild in einem zweiten.
lacks-covers = Welche Abdeckungen abgenommen wurden, oder dass keine abzunehmen ist.
lacks-signature = Unter Aufsicht geprüft: jemand am Auftrag, der nicht unter Aufsicht arbeitet, unterschreibt.
# $why is one or two sentences: why the proof is void.
lacks-proof = Der letzte Nachweis ist ungültig. { $why } Spannungsprüfer auf Funktion prüfen und neu prüfen.
lacks-indicator = Der Spannungsprüfer ist nicht auf Funktion geprüft.
lacks-reference = Nicht nachgewiesen, dass der Schutzleiter hier Erde ist.
# $at is a pair or a place, $reading what was read.
lacks-no-voltage = { $at }: { $reading }. Gilt als unter Spannung stehend.
lacks-test = { $direct ->
    [yes] { $first } – { $then }: nicht auf Gleichspannung geprüft.
   *[no] { $first } – { $then }: nicht geprüft.
}
lacks-any-test = Kein Paar ist seit einer Funktionsprüfung geprüft, die noch gilt.
lacks-proof-after = Der Spannungsprüfer ist nach den Prüfungen nicht erneut auf Funktion geprüft.
lacks-end-of-work = Die Arbeit ist nicht beendet.
lacks-work = Die Arbeit hat nicht unter einem gültigen Nachweis begonnen.
lacks-earth-off = Erdungsvorrichtung { $label } ist noch angebracht: { $at }.
lacks-cover-back = Noch nicht wieder angebracht: { $what }.
lacks-warning = Niemand ist vor dem Wiedereinschalten gewarnt.
lacks-lock-off = Das Schloss von { $owner } hängt noch an: { $place }.
lacks-sign-down = Das Schild hängt noch an { $at }.
lacks-closing = { $at } ist noch offen.
lacks-closing-beside = { $at } ist noch offen. Schaltet zu: { $own } neben { $others }. Begründen oder offen lassen.
# $finding is a sentence.
lacks-reading-again = { $finding } Als behoben gemeldet: neu messen.
lacks-mending = { $finding } Beheben oder ausschalten, was davon gespeist wird.
lacks-answer = { $finding } Angeben, was damit geschieht.
lacks-presence = { $first } – { $then }: nicht gemessen.
lacks-rotation = Das Drehfeld ist nicht gemessen.
lacks-rotation-guard = Das Drehfeld wurde vorher nicht gemessen: abkuppeln, was sich dreht, oder kurz antippen und beobachten, dann messen.
lacks-circuit-on = { $label } ist noch aus.
lacks-hand-back = Die Anlage ist nicht zurückgegeben.

way-no-point = Es gibt keine Freischaltstelle.
# $kind is a kind of source.
way-source-unanswered = { $kind }: nicht beantwortet.
way-stored-unanswered = Gespeicherte Energie: nicht beantwortet.
way-source-beside = { $what }, an diesem Standort bekannt ({ $by }): angeben, ob sie bis zu dieser Arbeit reicht.
way-line = { $line } der Normaleinspeisung wird von keiner Freischaltstelle getrennt.
way-opens-protective = { $at } trennt { $conductor }; dieser Leiter muss verbunden bleiben.
way-no-normal-point = Noch trennt keine Freischaltstelle die Normaleinspeisung.
way-neutral = { $neutral } der Normaleinspeisung wird von keiner Freischaltstelle getrennt; Erdverbindung { $earthing }: er muss getrennt werden.
way-source-uncut = { $what }: gefunden, und noch von keiner Freischaltstelle getrennt.
way-source-conductor = { $what }: { $conductor } wird von keiner Freischaltstelle getrennt.
# In the place of what a source is, where nobody noted it.
way-source-unnamed = Unbenannte Quelle
way-direct-unread = { $what }: keine Messung der Gleichspannung. Wartezeit { $wait }, dann messen.
way-direct-shows = { $what }: { $reading }. Gilt als unter Spannung stehend; warten und neu messen.
way-direct-early = { $what }: gemessen vor Ablauf der Wartezeit der Aufschrift ({ $wait }). Neu messen.
way-not-open = { $at } ist nicht offen.
way-closed-beside = { $at } wurde für einen anderen Auftrag eingeschaltet: { $job }. Nachsehen, ob offen, und das angeben.
way-no-lock = An { $at } hängt kein Schloss.
way-not-all-locked = Jemand am Auftrag hat kein eigenes Schloss an { $at }.
# How many questions: kinds of source that nobody looked for, and sources that are known at the site.
lacks-sources = { $count ->
    [one] 1 Frage nach Quellen ist nicht beantwortet
   *[other] { $count } Fragen nach Quellen sind nicht beantwortet
}
