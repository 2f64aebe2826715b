# A draft that no licensed electrician has checked.

### The record of a job: what it is, and the way to hand it on.

record-title = Protokoll dieses Auftrags
record-what = Eine PDF mit allem, was eingetragen wurde: Zusammenfassung, Freischaltstellen, Schlösser, Fotos, Nachweise, Messwerte und Verlauf.
record-signed = Das signierte Journal des Auftrags ist darin: jeder kann prüfen, dass jede Seite daraus folgt.
# life-critical
record-not-now = Es sagt, was getan und gemessen wurde, nicht, wie etwas jetzt ist. Vor dem Ende des Auftrags erstellt, enthält es nicht, was danach kommt.
record-photos = Fotos
record-handed-back = Zurückgegeben
record-not-yet = noch nicht
record-private = Kein Standort des Telefons und keine Telefonnummern sind darin. Fotos und Notizen vor dem Weitergeben ansehen.
record-made = Das Protokoll ist erstellt und kann geprüft werden. Was später kommt, ist nicht darin.
record-share = Protokoll weitergeben
record-share-withheld = Ohne Namen und Unterschriften weitergeben
# In whatever language the app speaks.
record-in-english = Das Protokoll und seine Seiten sind auf Englisch.
