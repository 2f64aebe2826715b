# A draft that no licensed electrician has checked.

### What is asked while a point is opened and secured, about its photos and its tags too.

ask-isolate-apart = Angeben, woran die beiden hier vor Ort zu unterscheiden sind.
ask-isolate-off-load = Wählen, ob lastfrei geöffnet wurde.
ask-isolate-found = Angeben, wie vorgefunden: ein oder schon aus.
ask-isolate-seen = Angeben, was beim Öffnen der Stelle sichtbar ausging.
ask-isolate-photo-why = Angeben, warum dieses Foto bleibt, obwohl es das Codeschild einer anderen Stelle zeigt.
ask-isolate-tag-moved-why = Angeben, warum das Codeschild jetzt hier hängt.
