# A draft that no licensed electrician has checked.

### The screens of the plan.

# Nobody may take "not asked" for "not there".
# life-critical
sources-caution = Hingehen und nachsehen. Eine Quelle, die niemand gesucht hat, gilt als unter Spannung stehend.
sources-looked-for = Gesucht und NICHT gefunden: jede antippen
sources-stored = Gespeicherte Energie
where-looked = Wo nachgesehen
where-looked-hint = Räume, Verteiler, Beschriftungen, gefragte Personen
sources-save-none = Speichern: nicht gefunden
sources-found = Eine gefunden
sources-kind = Art der Quelle
sources-what = Was gefunden wurde
as-labelled = Wie beschriftet
sources-at = Wo sie einspeist
sources-at-hint = Verteiler, Klemme oder Kabel
sources-save = Diese Quelle speichern
counts-second-feeder = Umschalter, Kuppelschalter, Einspeisung aus anderem Verteiler oder anderem Transformator.
counts-generator = Netzersatzaggregate und Einspeisungen für mobile Aggregate.
counts-ups = Zentrale und kleine in Schränken und unter Tischen, und ihre Bypässe.
counts-pv = Module und Wechselrichter. Module geben Spannung, solange Licht da ist.
counts-battery = Batteriespeicher und Ladestationen, die zurückspeisen.
counts-control = Steuerspannung, Heizungen, Beleuchtung oder Messung, die aus einem anderen Verteiler kommen.

duty-in-charge = Verantwortlich für die Freischaltung
duty-working = Arbeitet mit
duty-learning = Unter Aufsicht

site = Standort
equipment = Betriebsmittel
scope = Arbeitsumfang
conductors-and-rules = Leiter und Regeln

cover-off-last = Diese Abdeckung ist ab, keine weitere
cover-off-more = Diese Abdeckung ist ab

still-to-do = Noch zu tun
and-more = und { $count } weitere

# Readings of nothing say nothing while the earth is not shown to be earth.
# life-critical
earth-first = Bei unterbrochener Erde gibt ein Verteiler unter Spannung womöglich an jedem Paar keine Anzeige. Zuerst die Erde nachweisen.
