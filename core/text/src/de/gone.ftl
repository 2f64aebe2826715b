# A draft that no licensed electrician has checked.

### What an act is about, and what is not there: gone meanwhile, or never.

gone-action = Dieser Bildschirm kennt diese Aktion nicht.
gone-place = Diese Stelle gibt es nicht mehr.
gone-job = Dieser Auftrag ist nicht auf diesem Gerät.
gone-person = Diese Person ist auf diesem Gerät nicht bekannt.
gone-lock = Dieses Schloss ist nicht auf diesem Gerät.
gone-point = Diese Freischaltstelle gehört nicht zu diesem Auftrag.
gone-point-of-step = Diese Freischaltstelle gehört nicht zu diesem Auftrag. Zurück zu den Schritten des Auftrags.
gone-point-known = Diese Freischaltstelle ist an diesem Standort nicht mehr bekannt.
gone-part = Dieser Teil wurde inzwischen berichtigt oder gestrichen. Zurückgehen und neu nachsehen.
gone-proposal = Das Netz hat sich inzwischen geändert. Vorschläge neu ansehen.
gone-source = Diese Quelle ist schon beantwortet. Neu nachsehen.
gone-photo-waiting = Das Foto ist nicht mehr da. Neu aufnehmen.
gone-photo-unasked = Dieses Foto wurde nicht mehr verlangt. Neu aufnehmen.
gone-photo-not = Ein Foto wurde verlangt. Neu aufnehmen.
gone-photo-of-nothing = Hier gibt es nichts zu fotografieren.
gone-screen = Die Eingabe gehört zu einem Bildschirm, den es nicht mehr gibt, und wurde nicht gespeichert. Neuen Bildschirm ansehen und dort eingeben.
gone-hand = Dieses Gerät hat jetzt jemand anders; die Eingabe davor wurde nicht gespeichert.
gone-journal = Stillbar war im Hintergrund, das Journal ist geschlossen.
gone-codes = Der Inhalt der Codes ist kein gültiger Satz von Einträgen. Nichts wurde übernommen.
gone-memory = Dieses Telefon hat vergessen, was es geschrieben hat: gilt als unter Spannung stehend. Zu „Alle Aufträge“ gehen und „Mit neuem Schlüssel weiter“ antippen.
