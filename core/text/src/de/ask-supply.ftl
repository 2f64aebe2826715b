# A draft that no licensed electrician has checked.

### What is asked about a site's supply network.

ask-supply-zone = Ankreuzen, woran gearbeitet wird.
ask-supply-ways = Ankreuzen, für welchen Weg die Verantwortung übernommen wird.
ask-supply-ways-why = Angeben, warum er nicht zählt.
ask-supply-fed-from = Wählen, woraus gespeist wird, oder den Namen des Schalters leer lassen.
ask-supply-from = Wählen, wo es beginnt.
ask-supply-to = Wählen, wo es endet.
ask-supply-kind = Wählen, was es ist.
ask-supply-link-kind = Wählen, welche Art von Verbindung es ist.
ask-supply-lockable = Wählen, ob es abschließbar ist.
ask-supply-normally = Wählen, ob es im Normalbetrieb offen oder geschlossen ist.
ask-supply-name = Namen angeben, wie beschriftet.
