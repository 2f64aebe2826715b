# A draft that no licensed electrician has checked.

### Why a proof is void: one or two sentences each.

ended-lock-off = Ein Schloss wurde abgenommen: { $place }.
ended-stored-found = Gespeicherte Energie wurde gefunden: { $what }.
ended-source-found = Eine weitere Quelle wurde gefunden: { $what }.
ended-point-added = Eine Freischaltstelle ist hinzugekommen: { $label }.
ended-point-opened = { $label } wurde geöffnet.
ended-closed-between = { $label } wurde zwischendurch für einen anderen Auftrag eingeschaltet.
ended-point-closed = { $label } wurde eingeschaltet.
ended-some-point-closed = Eine Freischaltstelle wurde eingeschaltet.
ended-opened-and-closed = { $label } wurde auf einem Gerät als geöffnet eingetragen und auf einem anderen, das davon nicht wusste, als eingeschaltet.
ended-scope = Der Arbeitsumfang hat sich geändert.
ended-zone = Der Arbeitsbereich im Versorgungsnetz hat sich geändert.
ended-shift = Die Schicht hat gewechselt.
ended-way-answered = Für einen Weg, den das Versorgungsnetz zeigt, hat jemand die Verantwortung übernommen.
ended-work-left = Die Arbeit wurde verlassen.
ended-work-finished = Die Arbeit ist beendet.
ended-work-stopped = Die Arbeit wurde eingestellt.
ended-given-up = Die Freischaltung wurde abgebrochen.
ended-cover-off = Eine Abdeckung wurde abgenommen: { $what }.
ended-limit = Der Grenzwert für Spannungsfreiheit wurde geändert.
ended-company-limit = Von Firmenregeln wurde gehört. Sie setzen eine niedrigere Grenze für spannungsfrei.
ended-neutral-parted = Ein Neutralleiter wurde aufgetrennt: { $what }.
ended-withdrawn = Ein Eintrag dieses Auftrags wurde zurückgezogen.
ended-system-corrected = Leiter, Erdung oder Spannung waren falsch notiert.
ended-earth-off = Erdungsvorrichtung { $label } wurde entfernt.
ended-stays-live = Etwas bleibt unter Spannung: { $what }.
# $says is an answer with what it is about.
ended-answered = { $says }.

# $at is a pair or a place, $reading what was read.
trouble-voltage = Anzeige: { $at } { $reading }.
trouble-not-earth = Der Bezugsleiter ist nicht Erde: Messungen gegen ihn besagen nichts. Zuerst die Unterbrechung suchen.
trouble-indicator-failed = Der Spannungsprüfer hat die zweite Funktionsprüfung nicht bestanden: jede Prüfung seit der ersten ist ungültig.

# $trouble is one of the trouble- messages.
void-trouble-unknown = { $trouble } Wer diese Prüfung begann, wusste davon oder von der Ursache nichts.
void-indicator-unfit = Der Spannungsprüfer dieser Prüfung wurde als nicht einsatzfähig befunden.
void-prover-unfit = Woran der Spannungsprüfer auf Funktion geprüft wurde, wurde als nicht einsatzfähig befunden.
void-test-twice = Die Ursache wurde nicht gefunden: noch einmal prüfen, mit anderem Spannungsprüfer oder durch andere Person.
void-alone = Dies gilt ohne das, was außerhalb dieses Auftrags bekannt ist.
void-newer = Eine neuere Version dieser App hat hier etwas geschrieben, was diese nicht lesen kann. Gilt als unter Spannung stehend; App aktualisieren.
void-forgotten = Dieses Telefon hat vergessen, was es geschrieben hat. Spannungsfreiheit neu feststellen.
void-source-known = An diesem Standort ist eine weitere Quelle bekannt: { $what } ({ $by }).
void-source-found = An diesem Standort wurde eine weitere Quelle gefunden: { $what }.
void-network = Das Versorgungsnetz zeigt einen Weg, den kein Schloss trennt. { $says }
void-zone-unsaid = Die Versorgung des Standorts ist gezeichnet, und innerhalb einer Stunde hat niemand angegeben, woran darin gearbeitet wird.
# $says is what the entry says, without a full stop.
void-aside = Ein Eintrag zu diesem Auftrag ist zurückgestellt: { $says }. Vor Ort nachsehen, dann Spannungsfreiheit neu feststellen.
void-lights-late = Der Spannungsprüfer zeigt für die Spannungen dieses Auftrags zu spät an: hier zeigt er nichts.
void-prover-unknown = Woran der Spannungsprüfer auf Funktion geprüft wurde, ist auf diesem Gerät nicht bekannt.
void-not-this-shift = Der Spannungsprüfer wurde in dieser Schicht nicht kontrolliert.
void-clock-doubt = Eine Uhr kann nicht stimmen: niemand weiß, wie alt der Nachweis ist. Spannungsfreiheit neu feststellen.
void-too-old = Der Nachweis ist zu alt. Spannungsfreiheit neu feststellen.
