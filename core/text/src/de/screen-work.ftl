# A draft that no licensed electrician has checked.

### The work under a proof that stands, what ends it, the change of shift, temporary earths, who lets the work start.

work-given-up = Freischaltung abgebrochen
work-finished = Arbeit beendet
# How it was seen that everybody is clear.
work-seen-clear = Gesehen: alle aus dem Gefahrenbereich
work-begin = Arbeit beginnen
# Dead is proved, and a step before the work is not done.
# life-critical
work-not-yet = Ein Schritt davor ist nicht erledigt. Erledigen, bevor jemand arbeitet.
# life-critical
work-do-not = Nicht arbeiten. Nicht spannungsfrei festgestellt: gilt als unter Spannung stehend.
# $why is one of the void- or ended- messages.
# life-critical
work-do-not-why = Nicht arbeiten. Nicht spannungsfrei festgestellt: gilt als unter Spannung stehend. { $why }
# The proof ended while people are at work.
# life-critical
work-ended = Der Nachweis ist beendet: gilt als unter Spannung stehend. Jetzt alle aus dem Gefahrenbereich.
# life-critical
work-stop = Arbeit einstellen: alle sind aus dem Gefahrenbereich
# life-critical
work-stopped = Die Arbeit ist eingestellt. Gilt als unter Spannung stehend, bis Spannungsfreiheit neu festgestellt ist.
# life-critical
work-indication = Eine Anzeige. Stopp, gilt als unter Spannung stehend.

# What is proved, and with what.
work-indicator = Spannungsprüfer
work-proved-before = Funktionsprüfung vorher
work-proved-after = Funktionsprüfung nachher
work-pairs = Geprüfte Paare
# life-critical
work-pairs-none = { $count }, keines gab eine Anzeige
# life-critical
work-pairs-under-limit = { $count }, keines über dem Grenzwert für Spannungsfreiheit
# What was met before this proof. $what is one of the trouble- messages.
work-earlier = Früher: { $what }
work-earlier-met = Früher: { $at } { $reading }
work-cause-none = { $when }. Ursache nicht notiert
work-cause = { $when }. Ursache: { $cause }
# life-critical
work-cause-not-found = { $when }. Ursache nicht gefunden: { $cause }
# What follows is limit-set.
work-limit = Zählt als keine Anzeige
# $how is what holds the point in the place of a lock.
# life-critical
work-no-lock = { $place }: für { $owner } ohne Schloss gesichert: { $how }.
# standing-void-when stands above it.
# life-critical
work-holds = Der Nachweis gilt nur für diesen Ort und Arbeitsumfang. Oben steht, was ihn beendet. Auch das Auftrennen eines Neutralleiters beendet ihn. Der Standort kann mehr verlangen.

# At work.
work-finish-when = Wenn die Arbeit beendet ist
work-clear = Woran zu sehen war, dass Personen, Werkzeuge und Erdungen entfernt sind
work-clear-hint = Personen und Werkzeuge gezählt, in den Schrank gesehen, Erdungen ab.
work-finish = Die Arbeit ist beendet
work-leave-before = Wenn die Arbeit vorher verlassen wird
# life-critical
work-leave-ends = Verlassen beendet den Nachweis. Bei der Rückkehr: Spannungsprüfer auf Funktion prüfen und jedes Paar neu prüfen.
work-leave-why = Warum die Arbeit verlassen wird
work-leave-why-hint = Pause, Feierabend, weggerufen.
work-leave = Arbeit verlassen
# life-critical
work-left = Gespeichert. Der Nachweis ist beendet: bei der Rückkehr Spannungsfreiheit neu feststellen.

# What changed since the proof: a heading each, and what follows from it.
# life-critical
change-stop = Arbeit einstellen. Alle aus dem Gefahrenbereich. Ab der Änderung: gilt als unter Spannung stehend, bis Spannungsfreiheit neu festgestellt ist.
# life-critical
change-voided = Gespeichert. Der Nachweis ist beendet: gilt als unter Spannung stehend, bis Spannungsfreiheit neu festgestellt ist.
change-source = Eine weitere Quelle wurde gefunden
# life-critical
change-source-ends = Das beendet den Nachweis. Vor dem neuen Prüfen eine Freischaltstelle hinzufügen, die diese Quelle trennt.
change-source-kind = Art der Quelle
change-source-what = Was sie ist
change-source-what-hint = Ihr Name am Betriebsmittel oder im Plan.
change-source-save = Gefundene Quelle speichern
# life-critical
change-source-saved = Gespeichert. Der Nachweis ist beendet: gilt als unter Spannung stehend. Die Freischaltstelle hinzufügen, die diese Quelle trennt.
change-met = Eine Spannung wurde angetroffen
# life-critical
change-met-says = Alles, was eine Spannung zeigte, gleich wer es sah. Stopp, aus dem Gefahrenbereich, gilt als unter Spannung stehend.
change-met-at = Wo sie angetroffen wurde
change-met-at-hint = Leiter, Klemme oder Teil
change-met-volts = Volt, falls es eine Zahl war
# life-critical
change-met-save = Hier wurde eine Spannung angetroffen
change-scope = Der Arbeitsumfang hat sich geändert
# life-critical
change-scope-ends = Das beendet den Nachweis: er galt für einen anderen Arbeitsumfang.
change-scope-now = Woran jetzt gearbeitet wird
change-scope-why = Warum sich der Arbeitsumfang ändert
change-scope-save = Neuen Arbeitsumfang speichern
# life-critical
change-scope-saved = Gespeichert. Der Nachweis ist beendet: gilt als unter Spannung stehend. Der neue Arbeitsumfang kann andere Quellen und gespeicherte Energie haben: neu nachsehen.
# Above the question whether it carries current.
change-neutral-before = Bevor ein Neutralleiter aufgetrennt wird
change-neutral = Ein Neutralleiter wurde aufgetrennt
# life-critical
change-neutral-ends = Das beendet den Nachweis. Ein aufgetrennter Neutralleiter kann aus einem anderen Stromkreis unter Spannung stehen: jedes Paar neu prüfen.
change-neutral-which = Welcher Neutralleiter, und wo
change-neutral-save = Speichern: Neutralleiter aufgetrennt
change-point = Eine Freischaltstelle fehlt
# life-critical
change-point-ends = Das beendet den Nachweis. Vor dem neuen Prüfen die neue Stelle öffnen, abschließen und ihr Schild anbringen.
change-person = Jemand verlässt den Auftrag oder kommt dazu
# life-critical
change-person-leaves = Wer geht, nimmt zuerst das eigene Schloss ab. Das beendet den Nachweis.
# life-critical
change-person-joins = Wer dazukommt, bringt vor der Arbeit an jeder Stelle ein eigenes Schloss an. Im Zweifel zuerst Spannungsfreiheit neu feststellen.
change-not-now = Die Arbeit wird jetzt nicht gemacht
change-not-now-says = Was geöffnet wurde, kann wieder eingeschaltet werden, gleich wie weit der Auftrag ist.

# The change of shift: one person offers it, another takes it.
# life-critical
shift-no-gap = Keine Lücke lassen: erst hängen die Schlösser der übernehmenden Person an jeder Stelle, dann erst kommt ein Schloss der abgebenden Person ab.
# life-critical
shift-ends = Das Übernehmen der Schicht beendet den Nachweis. Danach nimmt die abgebende Person ihre Schlösser ab, und die übernehmende Person stellt neu Spannungsfreiheit fest.
shift-offer = Schicht zur Übernahme anbieten
shift-offer-again = Schicht neu zur Übernahme anbieten
shift-to-other = Jemand anderem anbieten
shift-nobody = Niemand sonst ist an diesem Auftrag. Zuerst die übernehmende Person aufnehmen.
shift-add-person = Person in den Auftrag aufnehmen
shift-to = Wer die Schicht übernimmt
shift-told = Was bei der Übergabe gesagt wurde
shift-told-hint = Stand der Arbeit, was abgeschlossen ist, was noch offen ist, wer informiert wurde.
shift-taking = Zur Übernahme angeboten: { $name }
shift-taking-from = Von
# What they were told.
shift-taking-told = Gesagt
shift-give-phone = Telefon an { $name } geben. { $name } unterschreibt unten.
shift-taking-signs = { $name } unterschreibt für die Schicht
shift-take = { $name } übernimmt die Schicht
# life-critical
shift-taking-no-lock = { $name } hat kein eigenes Schloss an { $point }.
shift-taking-locks = Schlösser von { $name } anbringen
# $from is who had the shift.
# life-critical
shift-taken = Gespeichert. { $name } ist für die Freischaltung verantwortlich. Jetzt nimmt { $from } die eigenen Schlösser ab und verlässt den Auftrag unter „Personen am Auftrag“. Dann Spannungsfreiheit neu feststellen.

# Where somebody else than the tester lets the work start.
release-give-phone = Telefon an die Person geben, die die Arbeit freigibt
# Where they sign.
release = { $name } gibt die Arbeit frei
release-sign = Unterschreiben als { $name }

# Temporary earths. $label is the number on one.
work-earths = Erdungsvorrichtungen
work-earth = Erdungsvorrichtung { $label }
work-earth-number = Nummer der Erdungsvorrichtung
work-earth-at = Wo sie angebracht ist
# life-critical
work-earth-at-hint = Erdseite zuerst anbringen, zuletzt abnehmen
work-earth-in = Diese Erdungsvorrichtung ist angebracht
work-earth-off = Erdungsvorrichtung { $label } ist entfernt
