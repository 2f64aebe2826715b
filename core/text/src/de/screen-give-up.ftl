# A draft that no licensed electrician has checked.

### Giving up an isolation before the work is done, from wherever it stands.

give-up-title = Diese Freischaltung abbrechen
give-up-given-up = Abgebrochen
give-up-given-up-why = { $why } ({ $by })
give-up-finished = Die Arbeit ist beendet: Versorgung Schritt für Schritt wieder einschalten.
# life-critical
give-up-at-work = Die Arbeit läuft. Zuerst Arbeit einstellen, alle aus dem Gefahrenbereich.
give-up-stop-work = Zuerst Arbeit einstellen
give-up-nothing-open = Noch ist nichts geöffnet: es gibt nichts abzubrechen.
# life-critical
give-up-live = Gilt als unter Spannung stehend. Ab jetzt ist nichts festgestellt, und niemand arbeitet hier.
give-up-then = Danach: Abdeckungen anbringen, Personen warnen, Schlösser durch ihre Inhaber ab. Nur einschalten, was ein vorgefunden wurde.
give-up-why = Warum abgebrochen wird
give-up-why-hint = Ursache nicht gefunden, keine Zeit mehr
give-up-clear = Woran zu sehen war, dass alle aus dem Gefahrenbereich sind
give-up-clear-hint = Personen und Werkzeuge gezählt, in den Schrank gesehen
# life-critical
give-up-done = Die Freischaltung ist abgebrochen. Gilt als unter Spannung stehend. Abdeckungen anbringen, Schlösser ab, dann einschalten, was ein war.
