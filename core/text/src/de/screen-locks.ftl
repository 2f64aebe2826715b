# A draft that no licensed electrician has checked.

### Locks and keys of a job: the list, one lock, fitting one, handing one over, and taking off the lock of somebody absent.

locks-title = Schlösser und Schlüssel
# A button on top of the list.
locks-tell = { $owner } informieren, Schloss { $lock }
locks-on = Angebrachte Schlösser
locks-off = Abgenommene Schlösser
locks-none-on = Kein Schloss dieses Auftrags ist angebracht.
# $caution is locks-no-clearance.
# life-critical
locks-none-on-here = Kein Schloss dieses Auftrags ist angebracht. { $caution }
# Wherever locks are listed: a list that is empty, or short, is taken for a clearance.
# life-critical
locks-no-clearance = Kein Schloss gelistet heißt NICHT freigegeben. Am Schalter nachsehen.
locks-key = Schlüssel: { $place }.
# $by is when and by whom. $means is one of the messages locks-by-.
locks-fitted = Angebracht { $by }. { $means }.
# The lock changed hands.
locks-with-since = Bei { $owner } seit { $when }.
locks-offered = Zur Übernahme angeboten: { $to }, noch nicht übernommen.
locks-removal-begun = Entfernung in Abwesenheit hat begonnen.
# A row that opens the lock.
locks-row = { $owner }, an: { $place }: { $lock }
locks-row-off = Ab: { $place }: { $owner }, { $lock }
# A row whose title is there already.
locks-again = { $title } ({ $count })
locks-no-point = Noch keine Freischaltstelle: nichts abzuschließen.
locks-add-point = Freischaltstelle hinzufügen
locks-steps = Schritte dieses Auftrags
locks-take-off = Schlösser und Schilder ab
locks-beside = Schlösser anderer Aufträge an denselben Stellen
locks-pin-of = PIN von { $name }
locks-pin-hint = Leer lassen, um ohne PIN zu unterschreiben. Im Protokoll steht dann „ohne PIN“.

# How a point is secured.
locks-by-padlock = Schloss durch das Gerät
locks-by-hasp = Schloss am Schließbügel
locks-by-other = Kein Schloss: { $how }
# $places is a list of points.
locks-by-bar = Schloss an Seil oder Stange, auch durch: { $places }
locks-a-box = Schließkasten
locks-in-box = im Schließkasten: { $lockbox }
# $by is when and by whom.
locks-cut = Vom Inhaber ohne Schlüssel aufgeschnitten: { $by }.
locks-taken-off = Vom Inhaber abgenommen: { $by }.
locks-forced-off = In Abwesenheit des Inhabers abgenommen: { $when }. Verantwortet von { $authority }.
locks-forced-off-unknown = Ohne Inhaber abgenommen: { $by }.
locks-still-on = Noch angebracht.

# Locks of other jobs at the same point.
held-since = seit { $when }
held-for = Für: { $job }
held-telephone = Telefon { $number }
# $why is the reason why an entry of another phone is not believed.
# life-critical
held-aside = Aus zurückgestelltem Eintrag: { $why }. Gilt als angebracht, bis jemand nachgesehen hat.
held-row = { $owner }, Schloss { $lock }, an: { $place }
held-row-off = { $owner }, Schloss { $lock }, war an: { $place }
held-says = { $job }: Schloss { $lock } von { $owner }
# A place of another job.
held-place = { $place }, für { $job }
# $places is a list of places of other jobs.
held-off-too = Gespeichert. Das Schloss ging durch beide: es ist auch ab von: { $places }.

# One lock.
lock-unknown = Dieses Telefon kennt dieses Schloss nicht
lock-unknown-look = In der Liste der Schlösser dieses Auftrags suchen.
lock-all = Alle Schlösser dieses Auftrags
lock-title = Schloss von { $owner }
lock-label = Schloss
lock-place = An
lock-secured = Gesichert durch
lock-key-holder = Schlüssel
lock-fitted = Angebracht
lock-theirs-since = Beim Inhaber seit
lock-telephone = Telefon
lock-telephone-none = nicht angegeben
lock-off = Ab
lock-ring = Anrufen: { $owner }
lock-ringing = Anruf: { $owner }.
lock-take-it-off = Abnehmen
# life-critical
lock-through-both = Dieses Schloss geht auch durch { $place }, für { $job }. Es ist dann von beiden ab, und der Nachweis beider endet.
lock-finished = Die Arbeit ist beendet. Eigenes Schloss mit eigener Hand abnehmen, dann hier speichern.
lock-take-mine-off = Mein Schloss ist ab: { $place }, als { $owner }
# life-critical
lock-not-finished = Die Arbeit ist nicht beendet. Zuerst alle aus dem Gefahrenbereich. Das Abnehmen dieses Schlosses beendet den Nachweis: alles gilt als unter Spannung stehend.
lock-key-lost = Wenn der Schlüssel verloren ist
lock-cut-why = Warum das eigene Schloss aufgeschnitten wird
lock-cut-hint = Z. B.: Schlüssel in den Schacht gefallen. Das Schloss gilt als ab; der Nachweis endet.
lock-cut-mine = Mein Schloss ist aufgeschnitten, an: { $place }, als { $owner }
lock-hand-over-offered = Übergabe
lock-hand-over = Schloss und Schlüssel übergeben
lock-give-phone = Telefon an { $to } geben, zum Unterschreiben unten. Bis dahin behält { $owner } Schloss und Schlüssel.
lock-signs = { $to } unterschreibt für Schloss und Schlüssel
lock-takes = { $to } übernimmt Schloss und Schlüssel
lock-nobody-else = Niemand sonst ist an diesem Auftrag. Zuerst die Person aufnehmen, dann übergeben.
lock-offer-to = An wen
lock-offer-to-other = Oder anbieten an
lock-offer = Schloss und Schlüssel zur Übernahme anbieten
lock-offer-other = Stattdessen dieser Person anbieten
lock-taken = Gespeichert. { $to } hat Schloss, Schlüssel und dieses Telefon.

# The form for a lock.
fit-not-on-job = Wer nicht an diesem Auftrag ist, hängt kein eigenes Schloss daran.
fit-yours = Eigenes Schloss anbringen
fit-of-other = Schloss eintragen, das { $name } angebracht hat
fit-of-other-only = Nur wenn { $name } hier ist und es angebracht hat. Der Schlüssel bleibt bei { $name }.
# life-critical
fit-takes-no-lock = Diese Stelle ist nicht abschließbar. Wie sie gesichert ist, steht bei jedem Nachweis.
fit-secured = Wie die Stelle ohne Schloss gesichert ist
fit-secured-hint = Was heraus- oder hineinkam, und wo es ist: Sicherungseinsätze im Werkzeugkoffer von Mara Lind
fit-label = Was auf dem Schloss steht
fit-label-hint = Name oder Nummer
fit-save-secured = Speichern, wie gesichert ist, als { $name }
fit-save = Schloss speichern, angebracht von { $name }
fit-back-to-mine = Zurück zum eigenen Schloss: { $name }
fit-where = Wo das Schloss hängt
fit-on-box = Am Schließkasten { $lockbox }
fit-on-point = Direkt an { $point }
fit-locks-on-box = Ein Schlüssel dieser Stelle ist im Schließkasten. Persönliche Schlösser an den Kasten hängen.
fit-key = Wo der Schlüssel ist
fit-key-owner = Beim Inhaber
fit-key-box = Im Schließkasten { $lockbox }
fit-means = Wie abgeschlossen ist
fit-means-padlock = Schloss durch Gerät oder Kasten
fit-means-hasp = Schloss am Schließbügel
fit-means-other = Kein Schloss: anders gesichert
fit-means-which = Auf welche andere Art
fit-means-which-hint = Nur ohne Schloss, z. B. Sicherungseinsätze bei sich behalten.
# $places is a list of places of other jobs. A lock is known by its owner and label.
fit-on-already = { $lock } von { $owner } hängt schon: { $places }. Angeben, welches es ist.
fit-on-already-below = { $lock } von { $owner } hängt schon: { $places }. Unten angeben, welches es ist.
fit-moved-ends = Hierher umgehängt: dann ist es dort ab, und der Nachweis jenes Auftrags endet.
fit-moved-by-owner = Hierher umgehängt? Das kann nur { $owner } angeben. Telefon übergeben.
fit-moved = Hierher umgehängt: dort habe ich es abgenommen
fit-through = Ein Seil oder eine Stange durch beide
fit-another = Ein anderes Schloss mit demselben Namen
fit-on-elsewhere = Dieses Schloss hängt anderswo
fit-mark = Woran die beiden zu unterscheiden sind
fit-mark-hint = Nur bei einem anderen Schloss: blaues Band, eine Kerbe
fit-was-moved = Gespeichert. { $lock } ist ab von: { $place }, und hier angebracht.

# Taking off the lock of somebody who is absent.
removal-title = Entfernung in Abwesenheit des Inhabers
removal-authority = Befugte Person
# $reached is how they were reached, $by when and by whom it was begun.
removal-authority-is = { $authority }, { $function }, erreicht: { $reached }. Begonnen { $by }.
removal-cannot-wait = Warum es nicht warten kann
removal-not-on-site = Nicht am Standort, { $by }
removal-sought = Versucht zu erreichen, { $by }
# What was tried, and what came of it.
removal-sought-how = { $how }: { $outcome }
removal-told = Informiert, { $by }
removal-told-how = Wie { $owner } informiert wurde
removal-told-how-hint = Persönlich, telefonisch.
removal-has-been-told = { $owner } ist informiert
removal-done = Gespeichert. Das Schloss ist ab, der Nachweis ist beendet. { $owner } vor dem Weiterarbeiten informieren. { $authority } hat dieses Telefon.
# life-critical
removal-must-tell = { $owner } vor dem Weiterarbeiten informieren: geht noch davon aus, dass Schloss { $lock } hängt. { $authority } hat das Abnehmen verantwortet.
removal-if-absent = Wenn { $owner } abwesend ist
# life-critical
removal-only-owner = Nur { $owner } nimmt dieses Schloss ab. Jemand anders nur, wo das Verfahren des Standorts es erlaubt.
# life-critical
removal-conditions = Zuerst: eine benannte befugte Person verantwortet es; { $owner } ist nicht am Standort; alles versucht, um { $owner } zu erreichen. { $owner } erfährt es vor dem Weiterarbeiten.
removal-who-answers = Wer es verantwortet
removal-function = Funktion an diesem Standort
removal-function-hint = Betriebsleitung, Leitwarte
removal-reached = Wie die Person erreicht wurde
removal-reached-hint = Persönlich, telefonisch um wie viel Uhr
removal-begin = Entfernung in Abwesenheit beginnen
removal-found-absent = Wie festgestellt wurde, dass { $owner } nicht am Standort ist
removal-found-absent-hint = Liste am Tor, Betriebsfunk, wen gefragt.
removal-is-absent = { $owner } ist nicht am Standort
removal-tried = Wie versucht wurde zu erreichen
removal-tried-hint = Angerufene Nummer, um wie viel Uhr.
removal-outcome = Was es ergab
removal-outcome-hint = Keine Antwort, Nachricht hinterlassen.
removal-save-attempt = Diesen Versuch speichern
# life-critical
removal-ends-proof = Das Abnehmen des Schlosses beendet den Nachweis: alles gilt als unter Spannung stehend. Selbst prüfen, dass { $owner } und Werkzeug aus dem Gefahrenbereich sind.
removal-give-phone = Telefon an { $authority } geben, zum Unterschreiben unten.
removal-signs = { $authority } unterschreibt für das Abnehmen
removal-take-off = Schloss abnehmen, verantwortet von { $authority }
