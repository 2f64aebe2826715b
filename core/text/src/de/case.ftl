# A draft that no licensed electrician has checked.

### What is wrong with a case in a file, and what to write instead. The command line puts the place before it.

case-at = Zeile { $line }, Spalte { $column }
case-placed = { $place }: { $says }
case-too-large = größer als { $most } Bytes, mehr wird nicht gelesen; auf mehrere Fälle verteilen.
case-empty = die Datei ist leer; mindestens schreiben: {"{"}"conductors":[{"{"}"name":"L"{"}"},{"{"}"name":"N"{"}"},{"{"}"name":"PE"{"}"}]{"}"}.
# $field stands in quotation marks.
case-twice = das Feld { $field } steht zweimal da; das richtige behalten.
case-too-deep = Listen sind zu tief in Listen geschachtelt; beim Format bleiben.
case-crowded = das ist kein JSON (ein Objekt hat mehr als { $most } Felder); hier berichtigen.
# $why is in the words of the library that reads JSON.
case-not-json = das ist kein JSON ({ $why }); hier berichtigen.
# $is is one of the kind- messages.
case-wants-object = Hierher gehört ein Objekt in geschweiften Klammern, nicht { $is }.
case-wants-list = Hierher gehört eine Liste in eckigen Klammern, nicht { $is }.
case-wants-text = Hierher gehört ein Text in Anführungszeichen, nicht { $is }.
case-wants-one-of = Hierher gehört eines von { $choices }, nicht { $is }.
case-wants-volts = Hierher gehört eine Zahl in Volt ohne Einheit, z. B. 230, nicht { $is }.
case-wants-flag = Hierher gehört true oder false, nicht { $is }; weglassen, wenn nicht bekannt.
kind-null = null
kind-flag = true oder false
kind-number = eine Zahl
kind-text = ein Text
kind-list = eine Liste
kind-object = ein Objekt in geschweiften Klammern
case-unknown-field = das Feld { $field } ist hier nicht bekannt; bekannt sind { $known }.
case-needs-conductors = das Feld "conductors" fehlt; die Leiter auflisten, z. B. [{"{"}"name":"L1","role":"line"{"}"},{"{"}"name":"PE"{"}"}].
case-needs-name = das Feld "name" fehlt; die Bezeichnung des Leiters angeben, z. B. L1.
case-needs-what = das Feld "what" fehlt; angeben, was geladen sein kann, z. B. "Umrichter U1".
case-needs-pair = das Feld "pair" fehlt; die beiden Leiter nennen, z. B. ["L1","N"].
case-too-many = diese Liste hat { $count } Einträge, höchstens { $most } werden angenommen; kürzen.
case-not-seen = ein Name braucht sichtbare Zeichen, ohne Leerzeichen davor oder danach.
case-too-long = das hat { $count } Zeichen, höchstens { $most } werden angenommen; kürzen.
case-not-one-of = { $word } ist keines von { $choices }.
case-negative = { $volts } V ist unter null; den Betrag ohne Vorzeichen schreiben.
case-too-high = das ist mehr als { $most } V, mehr kann nicht gespeichert werden; berichtigen.
case-not-seconds = hierher gehört eine ganze Zahl Sekunden von { $least } bis { $most }.
case-not-minutes = hierher gehört eine ganze Zahl Minuten von { $least } bis { $most }; Regeln setzen nur weniger, nie mehr.
case-not-hertz = hierher gehört eine ganze Zahl Hertz von { $least } bis { $most }.
case-two-orders = "own_order" ist auch angegeben, nur eines davon kann zählen; eines weglassen.
case-few-conductors = eine Prüfung auf Spannungsfreiheit braucht mindestens zwei Leiter; alle an der Arbeitsstelle auflisten.
case-name-twice = { $name } ist auch der Name von conductors[{ $at }]; jedem einen eigenen geben.
# $usual and $role are roles as files have them.
case-role-of-name = { $name } bezeichnet einen Leiter der Rolle { $usual } (IEC 60445), nicht { $role }; Rolle oder Name berichtigen.
case-role-unsaid = die Rolle von { $name } folgt nicht aus dem Namen; "role" angeben: eines von { $roles }.
case-neutral-in-tn-c = TN-C hat neben dem PEN-Leiter keinen Neutralleiter, und { $neutral } ist einer; TN-C-S schreiben oder die Rolle berichtigen.
case-pen-elsewhere = { $earthing } hat keinen PEN-Leiter, und { $pen } ist einer; TN-C oder TN-C-S schreiben oder die Rolle berichtigen.
case-nominal-too-low = eine Nennspannung unter 1 V ist keine; weglassen, wenn nicht bekannt.
case-not-low-voltage = über 1000 V AC oder 1500 V DC zwischen Leitern ist keine Niederspannung; dieses Verfahren und seine Spannungsprüfer taugen dafür nicht.
case-nominals-apart = { $line_line } V zwischen Außenleitern gehört nicht zu { $line_neutral } V Außenleiter gegen N (es ist das 1,73-Fache, mit Mittelleiter das Doppelte); eines berichtigen.
case-not-listed = { $name } steht nicht in "conductors"; dort ergänzen oder berichtigen.
case-not-a-pair = ein Paar sind zwei Namen, z. B. ["L1","N"].
case-pair-of-one = beide sind { $name }; ein Paar sind zwei verschiedene Leiter.
case-pole-twice = { $name } steht zweimal da; jeden Pol einmal nennen.
case-pole-protective = { $name } ist ein Schutz- oder PEN-Leiter, den keine Freischaltstelle trennt; herausnehmen und noch einmal nachsehen, was der Schalter trennt.
case-pair-twice = { $first } und { $then } stehen zweimal da; jedes Paar einmal nennen.
case-pair-missing = { $first } und { $then } fehlen; eine eigene Reihenfolge nennt jedes Paar einmal.
case-levels-unordered = die Stufen eines Spannungsprüfers steigen, und die erste liegt über null; in Reihenfolge bringen.
case-no-levels = ein Spannungsprüfer hat mindestens eine Stufe; für die üblichen das Feld weglassen.
# $limit is limit-too-high.
case-limit = { $limit }; 0 schreiben oder den Grenzwert der Firmenregel.
case-read-elsewhere = "read_at" sagt, zwischen welchen Leitern; was dort gemessen wurde, unter "readings" eintragen.
case-equipment-twice = das steht zweimal da; jede Art einmal nennen.
case-nothing-read = der Messwert fehlt; "volts": 230.0 oder "level": "none" angeben.
case-read-twice = "volts" ist auch angegeben; behalten, was gemessen wurde.
# $steps is a list of voltages.
case-no-such-step = der Spannungsprüfer hat diese Stufe nicht (er hat { $steps } V); eine davon schreiben, seine eigenen in indicator.levels_volts auflisten oder "volts" angeben.
