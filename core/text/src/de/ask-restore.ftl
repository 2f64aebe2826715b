# A draft that no licensed electrician has checked.

### What is asked while the supply comes back.

ask-restore-warned-who = Angeben, wer gewarnt wurde.
ask-restore-warned-how = Angeben, wie gewarnt wurde.
ask-restore-beside = Angeben, warum beide Versorgungen zusammen eingeschaltet werden.
ask-restore-back-to = Angeben, wer die Anlage zurücknimmt.
ask-restore-reading = Mindestens einen Messwert eingeben, dann speichern.
ask-restore-rotation = Drehrichtung wählen.
ask-restore-rotation-guard = Vorher nicht gemessen: abkuppeln, was sich dreht, oder kurz antippen und beobachten. Wählen, was davon.
ask-restore-rotation-how = Angeben, woher das Drehfeld bekannt ist, oder warum nicht nötig.
ask-restore-odd = Ankreuzen, um welche Messwerte es geht.
ask-restore-answer = Wählen, was damit geschieht.
ask-restore-answer-who = Angeben, wer es hinnimmt, was ausgeschaltet bleibt oder was falsch war.
ask-restore-answer-how = Angeben, wie informiert wurde, wie es ausgeschaltet bleibt oder was behoben wurde.
