# A draft that no licensed electrician has checked.

### What is asked about locks and keys.

ask-lock-secured-instead = Diese Stelle ist nicht abschließbar. Angeben, wie sie stattdessen gesichert ist.
ask-lock-label = Angeben, was auf dem Schloss steht.
ask-lock-where = Wählen, wo das Schloss hängt: an einer Freischaltstelle oder an einem Schließkasten.
ask-lock-key = Wählen, wo der Schlüssel dieses Schlosses ist.
ask-lock-key-with-owner = Der Schlüssel eines persönlichen Schlosses am Schließkasten bleibt beim Inhaber. Wählen: beim Inhaber.
ask-lock-means = Wählen, wie abgeschlossen ist: Schloss durch das Gerät oder Schloss am Schließbügel.
ask-lock-means-other = Angeben, welches andere Mittel die Stelle sichert.
ask-lock-padlock-mark = Angeben, woran die beiden Schlösser zu unterscheiden sind, z. B.: blaues Band.
ask-lock-offer-to = Wählen, wer Schloss und Schlüssel übernimmt.
ask-lock-offer-first = Dieses Schloss ist nicht zur Übernahme angeboten. Zuerst bietet es der Inhaber an.
ask-lock-cut-why = Angeben, warum kein Schlüssel da war.
ask-lock-authority = Wählen, wer das Abnehmen dieses Schlosses verantwortet.
ask-lock-authority-first = Zuerst benennen, wer das Abnehmen dieses Schlosses verantwortet.
ask-lock-authority-is = Angeben, welche Funktion die befugte Person an diesem Standort hat.
ask-lock-authority-reached = Angeben, wie die befugte Person erreicht wurde.
ask-lock-cannot-wait = Angeben, warum es nicht auf den Inhaber warten kann.
ask-lock-not-on-site = Angeben, wie festgestellt wurde, dass der Inhaber nicht am Standort ist.
ask-lock-sought-how = Angeben, wie versucht wurde, den Inhaber zu erreichen.
ask-lock-sought-outcome = Angeben, was der Versuch ergab.
ask-lock-told-how = Angeben, wie der Inhaber informiert wurde.
ask-lock-telephone = Zum Inhaber ist keine Telefonnummer gespeichert. Vor Ort erfragen.
