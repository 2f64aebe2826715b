# A draft that no licensed electrician has checked.

### What is asked while it is proved dead.

ask-prove-cover = Angeben, welche Abdeckung abgenommen wird.
ask-prove-no-covers = Angeben, warum keine Abdeckung abzunehmen ist.
ask-prove-indicator = Spannungsprüfer wählen.
ask-prove-on = Wählen, woran der Spannungsprüfer auf Funktion geprüft wurde.
ask-prove-source = Quelle unter Spannung nennen, an der er auf Funktion geprüft wurde, z. B.: Steckdose Feld 2.
ask-prove-indicator-first = Zuerst den Spannungsprüfer auf Funktion prüfen.
ask-prove-reading = Noch kein Messwert eingegeben. Für jedes Paar eingeben, was der Spannungsprüfer zeigte.
ask-prove-seen = Das Paar wählen, das eine Anzeige gab.
ask-prove-level = Die Stufe wählen, die leuchtete.
ask-prove-direct = Gemessene Gleichspannung angeben, z. B. 0.
ask-prove-reference = Angeben, wie der Bezugsleiter geprüft wurde.
ask-prove-cause = Angeben, was die Ursache war und was dagegen getan wurde.
ask-prove-cause-sought = Angeben, wo die Ursache gesucht und was getan wurde.
