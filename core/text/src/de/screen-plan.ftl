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
may-stay-empty = Darf leer bleiben
and-more = und { $count } weitere

# Readings of nothing say nothing while the earth is not shown to be earth.
# life-critical
earth-first = Bei unterbrochener Erde gibt ein Verteiler unter Spannung womöglich an jedem Paar keine Anzeige. Zuerst die Erde nachweisen.

# Permit.
permit = Erlaubnisschein
permit-none = Kein Erlaubnisschein
permit-says = Hier wird nur die Nummer gespeichert. Diese App stellt keinen Erlaubnisschein aus und ersetzt keinen.
permit-reference = Nummer
permit-reference-hint = Wie auf dem Erlaubnisschein
permit-save = Nummer speichern
permit-why-none = Oder warum es keinen Erlaubnisschein gibt
permit-why-none-hint = Z. B.: der Standort verlangt unter 63 A keinen
permit-save-none = Kein Erlaubnisschein: Grund speichern

# People on the job. $duty is one of the duty- messages, $card what stands on the person's card.
worker = { $duty }, seit { $when }.
worker-card = { $duty }, seit { $when }. { $card }.
worker-leaves = { $name } verlässt den Auftrag
# life-critical
people-locks = Jede Person bringt ein eigenes Schloss an: an jeder Stelle, oder am Schließkasten mit dem Schlüssel der Stelle.
person = Person
person-here = { $name } (schon am Auftrag)
duty = Aufgabe
person-save = Person und Aufgabe speichern
person-new = Jemanden hinzufügen, der nicht in der Liste steht

# life-critical
told-says = Alle informieren, deren Versorgung ausfällt, und alle, die sie wieder einschalten könnten.
told-who = Wer informiert wurde
told-who-hint = Name, oder die Gruppe von Personen
told-how = Wie
told-how-hint = Persönlich, telefonisch, durch Aushang an der Tür
told-save = Speichern, wer informiert wurde
# Buttons that save; below what the record has of them.
told-in-person = Persönlich gesagt
told-by-telephone = Telefonisch gesagt
in-person = Persönlich
by-telephone = Telefonisch

# life-critical
barriers-say = Benachbarte Teile bleiben unter Spannung. Abdecken oder abschranken und Schilder anbringen, wie es die örtlichen Regeln verlangen.
barrier = Absperrung oder Schild
barrier-hint = Z. B.: Absperrkette; Warnschild
barrier-at = Wo es steht oder hängt
barrier-save = Diese Absperrung oder dieses Schild speichern
# The same, and goes on.
barrier-only = Nur diese Absperrung oder dieses Schild speichern

# Loads to switch off before the point is opened.
# A row of the list.
circuit-number = { $number }. { $label }
circuits-none = Nichts vorab abzuschalten
# life-critical
circuits-order = In der Reihenfolge auflisten, in der abgeschaltet wird, damit die Stelle lastfrei geöffnet wird.
circuit = Stromkreis, wie beschriftet
circuit-hint = Z. B.: L3 Beleuchtung, oder mehrere: F1 bis F6
circuit-serves = Was er versorgt
circuit-serves-hint = Was sichtbar ausgehen muss
circuit-save = Diesen Stromkreis auflisten
# The same, and goes on.
circuit-only = Diesen auflisten, sonst keinen
circuits-why-none = Oder warum nichts vorab abzuschalten ist
circuits-why-none-hint = Z. B.: nur ein Motor, vorher abgestellt

# Instruments, looked over before use.
check-sound = Leitungen, Spitzen und Gehäuse in Ordnung, Prüffrist gültig. ({ $by })
check-sound-note = Leitungen, Spitzen und Gehäuse in Ordnung, Prüffrist gültig. { $note } ({ $by })
# $faults is a list of fault- messages.
# life-critical
check-faults = { $name }: { $faults }. Nicht benutzen. ({ $by })
# life-critical
check-faults-note = { $name }: { $faults }. { $note } Nicht benutzen. ({ $by })
check-heading = Vor der Benutzung kontrollieren
instrument = Prüfgerät
# $kind is one of the instrument-kind- messages.
instrument-of-kind = { $kind }: { $name }
instrument-checked = { $kind }: { $name } (kontrolliert)
# life-critical
instrument-not-fit = { $kind }: { $name } (nicht einsatzfähig)
check-mark = Ankreuzen, was angesehen und in Ordnung befunden ist
check-leads = Leitungen sind in Ordnung
check-tips = Spitzen sind in Ordnung
check-case = Gehäuse ist in Ordnung
check-date = Prüffrist ist gültig
# life-critical
check-tips-say = Spitzen: höchstens 4 mm blankes Metall, besser 2 mm, und Fingerschutz (GS38, Leitlinie). Örtliche Regeln gehen vor.
check-note = Was nicht in Ordnung ist, oder sonst etwas dazu
check-note-hint = Leer, wenn alles in Ordnung ist
check-save = Diese Kontrolle speichern
# life-critical
check-not-sound = Gespeichert. An { $name } ist nicht alles in Ordnung: weglegen und nicht benutzen.
instrument-kind-indicator = Zweipoliger Spannungsprüfer
instrument-kind-proving-unit = Prüfquelle
instrument-kind-rotation-indicator = Drehfeldanzeiger
instrument-new = Ein Prüfgerät, das nicht in der Liste steht
instrument-for = Wofür es ist
instrument-name = Hersteller und Typ
instrument-serial = Seriennummer
instrument-printed = Wie aufgedruckt
# life-critical
lights-say = Bei einem Spannungsprüfer: die niedrigste Spannung, bei der er leuchtet oder eine Zahl zeigt, laut Hersteller.
lights-volts = { $volts } V
lights-ac = Niedrigste Anzeige, AC
lights-dc = Niedrigste Anzeige, DC
lights-dc-none = Zeigt keine Gleichspannung an
instrument-add = Dieses Prüfgerät hinzufügen
instrument-added = Aufgelistet. Jetzt vor der Benutzung kontrollieren.

# Points of isolation. $words is point-in-words, $job the title of another job.
point-same = { $words } Das ist die bekannte Stelle aus: { $job }.
# $poles is a list of conductors, $cuts a supply or source.
# life-critical
point-in-words =
    { $kind }, { $place }. Trennt Leiter { $poles }. Trennt Versorgung: { $cuts }. { $lockable ->
        [yes] Abschließbar.
       *[no] Nicht abschließbar.
    }{ $stays_open ->
        [yes] {" "}Im Normalbetrieb offen: bleibt offen.
       *[no] {""}
    }
# life-critical
points-say = Stopptaster, Verriegelungen und Schütze sind keine Freischaltstellen. Ein Gerät nehmen, das die Leiter trennt.
point = Freischaltstelle, wie beschriftet
point-hint = Z. B.: Q1 Hauptschalter
point-at = Wo die Freischaltstelle ist
point-at-hint = Raum und Verteiler
point-kind = Was es ist
point-lockable = In offener Stellung abschließbar?
point-lock-yes = Abschließbar
point-lock-none = Nicht abschließbar
point-poles = Leiter, die sie trennt
# life-critical
point-poles-say = Ankreuzen, was sie wirklich trennt. Ob auch der Neutralleiter zu trennen ist, sagen die örtlichen Regeln.
point-cuts = Welche Versorgung sie trennt
point-cuts-supply = Die Normaleinspeisung
# $kind is a kind of source.
point-cuts-source = { $kind }: { $what }, Ort: { $place }
point-switch = Welcher Schalter im Versorgungsnetz es ist
point-not-drawn = Ist dort nicht gezeichnet
point-add = Diese Freischaltstelle hinzufügen
# The same, and goes on.
point-only = Diese Freischaltstelle, sonst keine
points-known = An diesem Standort bekannt
point-known = { $point }, { $place }
point-known-from = Bekannt aus: { $job }. Antippen, um sie hier zu verwenden.
points-more = Eine weitere Freischaltstelle
# life-critical
point-typed = Das ist eine bekannte Stelle, aus: { $job }: { $point }, { $place }. Jedes Schloss daran zählt auch hier.
point-another = Es ist eine andere Stelle
point-added-known = Gespeichert. Das ist eine bekannte Stelle, aus: { $job }: { $point }, { $place }. Sind es zwei, das im Schritt dieser Stelle angeben.
# life-critical
point-filled-in = Bekannt aus: { $job }. Jede Zeile am Schalter prüfen, dann die Stelle hinzufügen.
lock-box-use = Schließkasten verwenden
lock-box-says = Für mehrere Personen: die Schlüssel der Schlösser an den Stellen kommen in den Kasten, und jede Person hängt ein Schloss an den Kasten.
lock-box = Schließkasten { $name }
lock-box-label = Nummer oder Name des Schließkastens
lock-box-at = Wo der Schließkasten hängt
lock-box-add = Diesen Schließkasten hinzufügen

# Rotation before anything is isolated.
# life-critical
rotation-says = Nur messen, wo dafür keine Abdeckung abzunehmen ist: Steckdose, Messpunkte, ein laufender Motor.
rotation = Drehrichtung jetzt
rotation-where = Wo gemessen
rotation-where-hint = Messgerät und Steckdose, oder welcher Motor
rotation-why-not = Oder warum nicht gemessen wurde
rotation-why-not-hint = Keine Steckdose an dieser Versorgung
rotation-not-read = Vorher nicht gemessen

# Sources: what was answered, and what is known at the site beside this job.
sources-answers = Bisherige Antworten
source-of-site = Eine Quelle dieses Standorts
source-placed = { $what }, Ort: { $at }
# life-critical
source-elsewhere = { $what } reicht nicht bis zu dieser Arbeit
# life-critical
source-none = { $kind }: keine gefunden
looked-by = Nachgesehen: { $place } ({ $by })
source = { $kind }: { $what }
source-comes-in = Speist ein: { $at } ({ $by })
# life-critical
source-needs-point = { $what } braucht eine eigene Freischaltstelle. Unter „Freischaltstellen“ hinzufügen.
known-source = An diesem Standort bekannt: { $what }
known-stored = An diesem Standort bekannt: { $what } (gespeicherte Energie)
# $who is a job, or told-by-network.
# life-critical
known-says = { $what }, bekannt aus: { $who }. Reicht das bis zu dieser Arbeit? Hingehen und nachsehen.
known-source-here = Ist auch hier eine Quelle
known-stored-here = Speichert auch hier Energie
known-elsewhere = Oder warum das nicht bis zu dieser Arbeit reicht
known-elsewhere-hint = Was gesehen wurde, und wo
known-elsewhere-save = Reicht nicht bis zu dieser Arbeit
control-terminals = Klemmen der Steuerspannung an der Arbeitsstelle, mit Kommas
control-terminals-hint = Nur bei Steuerspannung, aus dem Plan: X3:1, X3:2. Auch sie werden geprüft.
control-volts = Steuerspannung in Volt
control-volts-hint = Nur bei Steuerspannung, z. B. 24

# Stored energy.
# life-critical
stored-says = Umrichter und Kondensatoren bleiben nach dem Abschalten geladen. Warten, wie es die Aufschrift oder diese Liste sagt. Danach zählt nur eine Messung der Gleichspannung.
# $wait is one of the wait- messages.
# life-critical
stored-wait = Ort: { $at }. Wartezeit { $wait } ({ $by })
stored-none = Keine gefunden
stored-looked-hint = Umrichter, Kondensatorbatterien, Aufschriften, gefragte Personen
stored-save-none = Keine gespeicherte Energie gefunden
stored-what = Oder was gefunden wurde
stored-what-hint = Z. B.: Umrichter von Pumpe 3
stored-at = Wo dessen Klemmen sind
stored-at-hint = Wo die Gleichspannung gemessen wird
stored-kind-field = Was es ist, und Wartezeit ohne Aufschrift
stored-minutes = Wartezeit laut Aufschrift, in Minuten
# life-critical
stored-minutes-hint = Von der Aufschrift, nie aus dem Gedächtnis. Leer, wenn keine da ist.
stored-longer = Oder eine längere Wartezeit, in Minuten
stored-save = Gespeicherte Energie gefunden
