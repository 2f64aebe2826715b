# A draft that no licensed electrician has checked.

### What is asked about a job as a whole: its set-up, its entries, the work, the shift.

ask-job-title = Angeben, was gemacht wird, z. B.: Schütz K3 tauschen.
ask-job-site = Namen des Standorts angeben.
ask-job-place = Angeben, wo am Standort.
ask-job-equipment = Angeben, welches Betriebsmittel freigeschaltet wird, wie beschriftet.
ask-job-system = Wählen, welche Leiter es an der Arbeitsstelle gibt.
ask-job-rules = Wählen, nach wessen Regeln gearbeitet wird, oder dass es die des Standorts sind.
ask-job-system-why = Angeben, was an den Leitern falsch war.
ask-job-own = Leiter mit Kommas auflisten, mindestens zwei: L1, L2, N1=neutral, PE, und von einer anderen Versorgung S+=dc-plus@String A. Rollen: line, neutral, pen, protective, mid-point, dc-plus, dc-minus, control.
ask-job-earth = Nummer der Erdungsvorrichtung angeben und wo sie angebracht ist.
ask-job-stays-live = Angeben, was unter Spannung bleibt, wo, und wie es abgedeckt ist.
ask-job-earthing = Art der Erdverbindung wählen, oder dass sie nicht bekannt ist.
ask-job-order = Reihenfolge der Prüfung auf Spannungsfreiheit wählen.
ask-job-volts = Nennspannung angeben: Außenleiter gegen N, bei Drehstrom ohne N Außenleiter gegen Außenleiter.
ask-job-tolerance = Toleranz der Versorgung wählen.
ask-job-reason = Grund angeben.
ask-job-entry-wrong = Angeben, was an dem Eintrag falsch war.
ask-job-at-the-spot = Angeben, wie es vor Ort ist.
ask-job-give-up-why = Angeben, warum die Freischaltung abgebrochen wird.
ask-job-give-up-clear = Angeben, woran zu sehen war, dass alle aus dem Gefahrenbereich sind.
ask-job-prove-first = Noch ist nichts spannungsfrei festgestellt. Zuerst feststellen.
ask-job-clear = Angeben, woran zu sehen war, dass Personen, Werkzeuge und Erdungen entfernt sind.
ask-job-met-at = Angeben, wo die Spannung angetroffen wurde.
ask-job-left-why = Angeben, warum die Arbeit verlassen wird.
ask-job-source-kind = Wählen, welche Art von Quelle es ist.
ask-job-source-what = Angeben, was die Quelle ist.
ask-job-source-at = Angeben, wo die Quelle einspeist.
ask-job-scope-new = Angeben, woran jetzt gearbeitet wird.
ask-job-scope-why = Angeben, warum sich der Arbeitsumfang ändert.
ask-job-neutral-parted = Angeben, welcher Neutralleiter aufgetrennt wurde und wo.
ask-job-shift-to = Wählen, wer die Schicht übernimmt.
ask-job-shift-told = Angeben, was bei der Übergabe gesagt wurde.
ask-job-shift-offered = Die Schicht ist nicht zur Übernahme angeboten. Zuerst bietet sie die abgebende Person an.
