# A draft that no licensed electrician has checked.

### What is asked before an act can be done, with what was given in it, and what kept an act from being done.

ask-shorter = Das ist zu lang: höchstens { $most } Zeichen. { $ask }
ask-listed = „{ $name }“ steht hier schon. Etwas ergänzen, was die beiden unterscheidet.
ask-minutes = Ganze Minuten angeben, 1 bis { $most }.
ask-signs = Zuerst im Feld unterschreiben: { $name }.
ask-signs-as-themselves = { $typed } ist nicht der Name, der hier unterschreibt: { $name }. { $name } gibt den eigenen Namen ein oder zeichnet.
ask-not-marked = Nicht angekreuzt: { $parts }. Auch das ansehen und ankreuzen. Wenn etwas nicht in Ordnung ist, unten angeben, was, und das speichern.
ask-part-named = { $id } ist schon im Netz. Anderen Namen angeben oder jenen Teil berichtigen.
# Why is what is wrong with a figure or a tag that was typed: it begins small and has no full stop.
ask-volts = { $why }.
ask-volts-of = { $first } – { $then }: { $why }
ask-volts-back = { $first } – { $then }: { $why }.
ask-tag-text = { $why }.
# $why is what is wrong with the file, with its place.
ask-company = Die Datei wurde nicht übernommen. { $why }
ask-pin-wait = { $seconds } s warten, dann neu versuchen.
ask-pin-of = Das ist nicht die PIN von { $name }. { $seconds } s warten, dann neu versuchen.
ask-pin-digits = Eine PIN hat { $from } bis { $to } Ziffern und sonst nichts.
pin-unkept = Die PIN konnte nicht gespeichert werden ({ $why }). Ohne PIN weiter.
photo-unwritten = Das Foto konnte nicht gespeichert werden: { $why }. Speicherplatz freigeben und neu aufnehmen.
record-unwritten = Das Protokoll konnte nicht gespeichert werden: { $why }. Speicherplatz freigeben und neu versuchen.
padlock-stays-beside = Dasselbe Schloss hängt auch hier: { $place }, Auftrag: { $job }. { $why }
