# A draft that no licensed electrician has checked.

### What is refused of instruments, tests, work and switching.

instrument-not-checked = Dieses Prüfgerät ist für diesen Auftrag nicht kontrolliert: unter „Spannungsprüfer und Prüfquelle“ kontrollieren.
# $fault is one of the fault- messages.
instrument-faulty = Nicht benutzen: { $instrument }: { $fault }.
instrument-failed = { $instrument } hat versagt. Zuerst unter „Spannungsprüfer und Prüfquelle“ neu kontrollieren oder ein anderes nehmen.
instrument-not-this-shift = { $instrument } wurde in dieser Schicht nicht kontrolliert: unter „Spannungsprüfer und Prüfquelle“ kontrollieren.
test-over = Diese Prüfung ist vorbei. Spannungsprüfer auf Funktion prüfen und neu beginnen.
other-indicator = Denselben Spannungsprüfer auf Funktion prüfen, mit dem gemessen wurde.
not-a-pair = { $first } – { $then } ist kein Paar dieser Prüfung.
live-line-shows-nothing = Ohne geerdeten Punkt, oder wo niemand einen kennt, zeigt ein Außenleiter unter Spannung gegen PE nichts. Zur Haupterdungsschiene messen.
no-such-stored = Diese gespeicherte Energie gibt es in diesem Auftrag nicht.
cause-of-nothing = Angeben, zu welcher Anzeige das die Ursache ist.
learner-signs = Jemand am Auftrag, der nicht unter Aufsicht arbeitet, unterschreibt diese Prüfung.
learner-begins = Wer unter Aufsicht arbeitet, beginnt die Arbeit nicht allein: die für die Freischaltung verantwortliche Person beginnt sie.
work-under-way = Die Arbeit läuft schon.
nothing-stands = Gilt als unter Spannung stehend: kein Nachweis gilt, die Arbeit darf nicht beginnen.
work-not-under-way = Die Arbeit läuft nicht.
work-finished-already = Die Arbeit ist schon beendet.
stop-first = Zuerst Arbeit einstellen, alle aus dem Gefahrenbereich.
work-stop-first = Die Arbeit läuft. Zuerst Arbeit einstellen, alle aus dem Gefahrenbereich.
nothing-open = Noch ist nichts geöffnet: es gibt nichts abzubrechen.
not-explained = Eine Spannung oder ein Versagen wurde angetroffen. Zuerst angeben, was die Ursache war und was dagegen getan wurde.
instrument-lights-late = { $instrument } zeigt in diesem Auftrag nichts: muss spätestens bei { $ac } V AC und { $dc } V DC anzeigen.
proved-on-itself = Ein Spannungsprüfer wird nicht an sich selbst auf Funktion geprüft: anderes Gerät oder eine bekannte Quelle unter Spannung nennen.
no-live-source = Quelle unter Spannung nennen, an der er auf Funktion geprüft wurde.

fault-leads = Leitungen sind beschädigt
fault-tips = Spitzen sind nicht einsatzfähig
fault-case = Gehäuse ist beschädigt
fault-out-of-date = Prüffrist ist abgelaufen

# $wait is one of the wait- messages.
still-charged = { $what }: ab dem Öffnen warten: { $wait }; noch { $left } min. Abdeckungen bleiben dran.
no-such-circuit = Diesen Stromkreis gibt es in diesem Auftrag nicht.
circuit-off-already = { $label } ist schon aus.
circuit-next = Der Reihe nach: { $label } ist als Nächstes dran.
circuits-on-already = Alle Stromkreise sind schon ein.
point-open-already = Diese Stelle ist schon offen.
sign-before-lock = An { $at } hängt kein Schloss: erst das Schloss, dann das Schild.
sign-under-lock = An dieser Stelle hängt noch ein Schloss: erst das Schloss ab, dann das Schild.
point-locked = An dieser Stelle hängt noch ein Schloss.
point-locked-aside = { $at } bleibt offen: Schloss { $lock } von { $owner } hängt daran, laut zurückgestelltem Eintrag. Die Stelle ansehen, dann jenen Eintrag beantworten.
cover-back-already = Diese Abdeckung ist schon wieder angebracht.
no-such-cover = Diese Abdeckung gibt es in diesem Auftrag nicht.
not-a-pair-to-read = { $first } – { $then } ist hier kein zu messendes Paar.

# Temporary earths. $label is the number on one, $at where it is.
earth-unsaid = Nummer der Erdungsvorrichtung angeben und wo sie angebracht ist.
earth-alike = Erdungsvorrichtung { $label } ist schon angebracht: { $at }. Jede anders nummerieren.
# life-critical
earth-not-proved = Gilt als unter Spannung stehend: erst Spannungsfreiheit feststellen, dann erden.
earth-not-in = Diese Erdungsvorrichtung ist nicht angebracht. In der Liste nachsehen.
# life-critical
earth-left-in = Erdungsvorrichtung { $label } ist noch angebracht: { $at }. Zuerst entfernen.
