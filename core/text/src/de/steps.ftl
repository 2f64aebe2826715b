# A draft that no licensed electrician has checked.

### The parts of a job and its steps, as their titles say them.

stage-plan = Planen
stage-isolate = Freischalten
stage-prove = Spannungsfreiheit feststellen
stage-work = Arbeiten
stage-restore = Wieder einschalten
# In the place of a stage, once nothing is left to do.
stage-over = Zurückgegeben

step-permit = Nummer des Erlaubnisscheins
step-people = Personen am Auftrag
step-told = Betroffene informieren
step-barriers = Absperrungen und Warnschilder
step-sources = Andere Quellen suchen
step-stored = Gespeicherte Energie suchen
step-points = Freischaltstellen
step-instruments = Spannungsprüfer und Prüfquelle
step-rotation-found = Drehfeld vor dem Freischalten
step-circuits = Vorab abzuschaltende Lasten
step-shed = Lasten abschalten
step-isolate = Freischalten: { $point }
step-isolate-unknown = Eine Stelle freischalten
step-open-up = Abdeckungen ab: gilt als unter Spannung stehend
step-prove-before = Spannungsprüfer auf Funktion prüfen
step-prove-reference = Erde nachweisen
step-discharge = Gespeicherte Energie und Gleichspannung
step-dead-test = Jedes Paar prüfen
step-prove-after = Spannungsprüfer erneut auf Funktion prüfen
step-work = Arbeiten
step-covers-back = Abdeckungen anbringen
step-warn = Vor dem Einschalten warnen
step-unlock = Schlösser und Schilder ab
step-close = Freischaltstellen wieder einschalten
# $turns: whether the supply has more than one line.
step-presence = { $turns ->
    [yes] Versorgung wieder da: Spannung und Drehfeld
   *[no] Versorgung wieder da: Spannung prüfen
}
step-circuits-on = Stromkreise einschalten, der Reihe nach
step-hand-back = Zurückgeben
