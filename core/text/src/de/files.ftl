# A draft that no licensed electrician has checked.

### What is wrong with a file of a network, and what to write instead.

# $place is one of the place- messages or a path, $why any message of this file.
file-error = { $place }: { $why }
place-line = Zeile { $line }
place-field = Zeile { $line }, { $field }
place-column = Zeile { $line }, Spalte { $column }
place-row = { $table }, Reihe { $row }
remark-kind = { $place }.kind: { $word } ist hier keine bekannte Art ({ $known }) und gilt deshalb als unbekannt: wo sie erreichbar ist, ist nichts als getrennt nachgewiesen.

file-too-large = größer als { $most } Bytes, mehr wird nicht gelesen; weglassen, was weit von der Arbeit entfernt ist.
file-empty-json = die Datei ist leer; mindestens schreiben: { $least }.
file-empty-csv = die Datei ist leer; ihre erste Zeile nennt die Felder: { $known }.
# $why is what the reader of the format says, in English.
file-no-csv = das ist kein CSV ({ $why }); als Werte mit Kommas getrennt in UTF-8 speichern.
file-quote-open = ein Anführungszeichen darin ist nicht geschlossen; für eines im Text zwei schreiben.
file-cells = Zellen: { $count }, in der ersten Zeile: { $first }; gleich viele schreiben.
file-field-unknown = das Feld { $field } ist hier nicht bekannt; bekannt sind { $known }.
file-field-twice = das Feld { $field } steht zweimal da; das richtige behalten.
# $fix is one of the fix- messages.
file-field-missing = das Feld "{ $field }" fehlt; { $fix }.
fix-id = den Namen angeben, wie am Gerät
fix-node-kind = source, board, load oder junction angeben
fix-link-kind = switch, cable oder eine andere Art angeben
fix-from = den Knoten am einen Ende nennen
fix-to = den Knoten am anderen Ende nennen
file-list-missing = die Felder "nodes" und "links" müssen beide da sein; [] schreiben, wo es noch keine gibt.
file-no-network = Hierher gehört ein Objekt in geschweiften Klammern, mit "nodes" und "links".
file-no-object = Hierher gehört ein Objekt in geschweiften Klammern.
file-no-list = Hierher gehört eine Liste in eckigen Klammern.
file-too-many = höchstens { $most } werden angenommen; weglassen, was weit von der Arbeit entfernt ist.
file-too-many-lines = höchstens { $most } Zeilen werden angenommen; weglassen, was weit von der Arbeit entfernt ist.
file-too-many-parts = höchstens { $most } Teile werden angenommen; weglassen, was weit von der Arbeit entfernt ist.
file-text-empty = ein Text braucht mindestens ein Zeichen; weglassen, wenn nicht bekannt.
file-not-one-of = { $word } ist keines von { $known }.
file-conductor-count = hierher gehört eine ganze Zahl von 1 bis { $most }, oder die Namen der Leiter.
# $given is one of the kind- messages.
wants-text = Hierher gehört ein Text in Anführungszeichen, nicht { $given }.
wants-flag = Hierher gehört true oder false, nicht { $given }.
wants-list = Hierher gehört eine Liste in eckigen Klammern, nicht { $given }.
file-pandapower = nicht so, wie pandapower es schreibt; das Netz mit pandapower.to_json neu speichern.
file-pandapower-table = die Tabelle ist nicht so, wie pandapower sie schreibt; das Netz mit pandapower.to_json neu speichern.
file-pandapower-column = "{ $column }" ist nicht so, wie pandapower es schreibt; das Netz mit pandapower.to_json neu speichern.
