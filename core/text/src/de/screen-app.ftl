# A draft that no licensed electrician has checked.

### Notices of the app itself: what an act came to, clocks, scanning, photos, being put in the background, the device's key.

app-moved-on = Der Bildschirm hat sich vor diesem Antippen geändert. Nichts wurde getan: neu nachsehen.
# After an act that has nothing else to say.
app-saved = Gespeichert.
# In the place of a job's title and of a place.
app-job-elsewhere = Ein Auftrag, der nicht auf diesem Telefon ist
app-place-elsewhere = hier nicht bekannte Stelle
# $here and $there are what two clocks show.
# life-critical
app-clock-office = Die Uhr dieses Telefons zeigt { $here }, die des Büros { $there }. Uhr des Telefons stellen, dann mit dem Büro abgleichen.
# $long is by how much, $when what the other phone's clock showed.
# life-critical
app-clock-behind = Alter des Nachweises unbekannt: die Uhr dieses Telefons ging gegenüber der eines anderen Telefons { $long } nach ({ $when }). Beide mit einer dritten Uhr vergleichen. Diese stellen oder unter „Alle Aufträge“ bestätigen.
# life-critical
app-clock-ahead = Alter des Nachweises unbekannt: die Uhr dieses Telefons ging gegenüber der eines anderen Telefons { $long } vor ({ $when }). Beide mit einer dritten Uhr vergleichen. Diese stellen oder unter „Alle Aufträge“ bestätigen.
# What was saved touches the points or the network of other jobs; $touched says which.
# life-critical
app-touches-other-work = Das betrifft andere Arbeiten. { $touched }

app-scan-type-instead = { $why } Eingeben, was neben dem Code aufgedruckt ist.
app-scan-size = Das Bild der Kamera hat eine Größe, die nicht lesbar ist.
app-scan-none = Kein Codeschild in diesem Bild gefunden. Näher heran, oder eingeben, was daneben aufgedruckt ist.
app-scan-foreign = Dieser Code ist kein Codeschild von Stillbar. Nichts wurde geöffnet. Inhalt: { $text }
app-scan-several = Mehrere Codeschilder im Bild. Näher an eines heran.
app-scan-hint = Das Codeschild in die Bildmitte halten.
# $doubt is one of the photo- messages.
app-photo-waits = { $doubt } Neu aufnehmen, oder unten angeben, warum es bleibt.
app-photo-saved = Das Foto ist gespeichert.
app-photo-hint = Schloss, Beschriftung, Codeschild und Schaltstellung in einem Bild.
app-was-aside = Stillbar war im Hintergrund, das Journal ist geschlossen. Nichts wurde getan, die Eingaben sind noch da: neu nachsehen.
app-other-journal = Das Journal in { $folder } ist nicht das, das vorher offen war. Nichts wurde geändert: jenes zurücklegen und neu versuchen, oder Stillbar schließen und neu starten.

# The device's key, with which everything is signed: device.key is its file.
app-key-no-chance = Das System gab keine Zufallsbytes her, deshalb konnte kein Geräteschlüssel erzeugt werden.
app-key-unusable = Der Geräteschlüssel (device.key) ist nicht verwendbar: { $why }
app-key-wrong = Der Geräteschlüssel (device.key), der dieses Journal signiert hat, fehlt oder ist ein anderer. Nichts wurde geändert: Schlüssel aus der Kopie zurücklegen, oder einen neuen Datenordner beginnen und diesen behalten.

# Making a record at the command line. $listed is a line for each job.
app-record-no-key = Der Geräteschlüssel (device.key) fehlt, deshalb kann nichts signiert werden. Aus der Kopie zurücklegen.
app-record-no-job = In diesem Ordner ist kein Auftrag.
app-record-not-called = Kein Auftrag hier heißt „{ $named }“. Einen davon mit seinen Ziffern nennen:{ $listed }
app-record-several = Mehrere Aufträge heißen „{ $named }“. Einen davon mit seinen Ziffern nennen:{ $listed }

# A screen as text, for a message to another person.
# life-critical
app-as-known = Wie diesem Telefon bekannt, Stand { $now }. Das sind Worte, nicht das signierte Protokoll: wer sich darauf verlassen will, fragt vor Ort nach.
app-cut-short = Mehr passt nicht in eine Nachricht: das Protokoll enthält alles.

# The way up from a screen, at its head.
app-up-jobs = Alle Aufträge
app-up-job = Der Auftrag
app-up-back = Zurück
# A line on top of every screen of a job: $name is who is signed on.
app-context = { $name }: { $job }, { $place }
app-nobody = niemand angemeldet
# In the place of a screen whose job is gone.
app-no-job = Dieser Auftrag ist nicht auf diesem Telefon

# The banner in a line: $word is one of the state- messages, $says one of the standing- messages.
# life-critical
app-standing = { $word }. { $says }
# Both are times.
# life-critical
app-clock-back = Die Uhr dieses Telefons zeigt { $now }, sein letzter Eintrag ist aber von { $wrote }. Die Reihenfolge stimmt, die Zeiten sind zweifelhaft. Uhr stellen.

app-back-to-jobs = Zurück zu den Aufträgen
app-share = Als Nachricht weitergeben

# The state of a row, in a word.
# A voltage was met.
# life-critical
app-word-stop = Stopp
