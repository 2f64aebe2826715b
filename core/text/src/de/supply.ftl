# A draft that no licensed electrician has checked.

### What the supply network answers. Ids, labels and kinds stand in it as the network has them.

other-sources = Hier ist nur bekannt, was im Netz steht. An der Arbeitsstelle nach anderen Quellen suchen und Spannungsfreiheit feststellen.
answer-cut = getrennt
answer-not-cut = nicht getrennt
answer-not-shown = nicht nachgewiesen
# $zone is a list of parts.
check-cut = Kein Weg in diesem Netz erreicht { $zone }.
check-not-shown = Nicht nachgewiesen, dass getrennt ist: { $zone }. Gilt als unter Spannung stehend.
check-not-cut =
    Nicht getrennt: { $sources ->
        [one] eine Quelle erreicht
       *[other] { $sources } Quellen erreichen
    } { $zone }. Gilt als unter Spannung stehend.

# $more is what is written on the part, or what it is.
named = { $id } ({ $more })

doubt-lock-untraced = An { $link } hängt ein Schloss, aber niemand weiß, was das ist: hingehen und nachsehen, was es trennt.
doubt-lock-parts-nothing = { $link } ({ $kind }) trennt nichts: den Schalter an dessen Ende abschließen.
doubt-takes-no-lock = { $link } ist mit Schloss angegeben, laut Netz aber nicht abschließbar.
# $left is one of the left- messages.
doubt-leaves-joined = An { $link } hängt ein Schloss, aber { $left }.
doubt-lock-on-node =
    { $id } ist mit Schloss angegeben, aber { $kind ->
        [source] eine Quelle
        [board] ein Verteiler
        [load] ein Verbraucher
        [junction] eine Verbindungsstelle
       *[unknown] ein Teil, den niemand kennt
    }, und Schlösser gehören an Verbindungen.
doubt-lock-nowhere = { $id } ist mit Schloss angegeben, aber nicht im Netz.
doubt-node-unknown = Niemand weiß, was { $node } ist: es kann eine Quelle sein.
doubt-node-undescribed = { $node } wird von einer Verbindung genannt, und niemand hat es beschrieben: es kann eine Quelle sein.
doubt-node-untraced = An { $node } wurde etwas nicht nachverfolgt: { $what }.
doubt-link-untraced = Niemand hat { $link } von { $from } nach { $to } nachverfolgt.
left-unnoted = niemand hat notiert, welche Leiter dort getrennt werden
left-named = nicht getrennt: { $names }
left-fewer = nur { $opens } von { $of } Leitern getrennt

path-in-zone = { $source } ist eine Quelle und liegt selbst im Arbeitsbereich.
path-bare = { $source } erreicht { $to }, und nichts dazwischen trennt die Leiter.
# $over is a list of links, each with where it stands.
path-through = { $source } erreicht { $to } über { $over }.
path-through-more = { $source } erreicht { $to } über { $over } und { $more } weitere.
over-untraced = { $link } (nicht nachverfolgt)
over-switch = { $link } ({ $stands }, { $lock })
over-kind = { $link } ({ $kind }, { $stands }, { $lock })
normally-open = normal offen
normally-closed = normal geschlossen
over-lock-counts-not = das Schloss daran zählt nicht
over-lock-takes-none = nicht abschließbar
over-lock-not-open = ohne Schloss in offener Stellung
over-lock-not = ohne Schloss
zone-gone = { $zone }: nicht mehr im Versorgungsnetz.

# $path is one of the path- messages.
proposals-bare = Nichts Abschließbares trennt { $zone } ab. { $path }
proposals-no-source = Keine Quelle in diesem Netz erreicht { $zone }, deshalb gibt es nichts abzuschließen. Suchen, woraus gespeist wird.
# $parts is one of the doubt- messages, or several.
proposals-not-shown = Mit keinem davon ist nachgewiesen, dass getrennt ist: { $zone }. { $parts }
proposals-not-all = Das Netz ist groß: zwischen dem ersten und dem letzten davon kann es weitere geben, und der erste braucht womöglich weniger Schlösser.
proposal-loses-none = Abschließen: { $links }; kein Stromkreis fällt aus.
proposal =
    Abschließen: { $links }; { $lost ->
        [one] 1 Stromkreis fällt aus
       *[other] { $lost } Stromkreise fallen aus
    }.
worth-best = wenigste ausfallende Stromkreise und wenigste Schlösser
worth-fewest-lost = wenigste ausfallende Stromkreise
worth-fewest-locks = wenigste Schlösser
worth-between = zwischen beiden

stays-locked = An { $link } hängt noch ein Schloss, auf das sich ein Auftrag verlässt: { $job }.
stays-fed-already = { $job } hat schon eine Versorgung, wo die Schlösser hängen. { $path }
stays-fed = { $job } hat dann eine Versorgung, wo die Schlösser hängen. { $path }
caution-joins = Beide Seiten sind versorgt, von { $first } und von { $then }: nur einschalten, wenn sie verbunden werden dürfen.
caution-no-supply = Noch ist keine Seite versorgt.
touched-cut = { $job }: nicht mehr getrennt: { $zone }. { $why } Gilt als unter Spannung stehend.
touched-not-cut = { $job }: war nicht getrennt und ist es jetzt noch weniger: { $zone }. { $why } Gilt als unter Spannung stehend.

# What is no network. These begin with a small letter: a place stands before them.
network-too-large = das Netz hat { $nodes } Knoten und { $links } Verbindungen, von jedem werden höchstens { $most } angenommen; weglassen, was weit von der Arbeit entfernt ist.
network-inlet-alone = eine Einspeisung braucht an einem Ende eine Quelle: das Aggregat, das angesteckt wird; als Knoten der Art source ergänzen.
network-no-zone = kein Arbeitsbereich genannt; den Verteiler oder Teil nennen, an dem gearbeitet werden soll.
network-not-there = { $id } ist nicht darin; Knoten oder Verbindung so nennen wie im Netz.
network-no-link = { $id } ist keine Verbindung darin; den Schalter so nennen wie im Netz.
network-not-switched = { $id } ({ $kind }) wird von niemandem geöffnet oder eingeschaltet.
# $first is a place in the file.
network-id-twice = { $id } ist auch die ID von { $first }; jedem eine eigene ID geben.
network-ends-alike = { $id } ist auch das andere Ende; eine Verbindung führt zu zwei verschiedenen Knoten.
list-too-long = diese Liste hat { $count } Einträge, höchstens { $most } werden angenommen; kürzen.
network-tell-empty = ein Name darin ist leer; angeben, wer zu informieren ist, oder weglassen.
network-sort-of-none = nur eine Quelle hat eine Sorte, und dies ist von der Art { $kind }; eines berichtigen.
network-not-lockable = { $kind }: trennt Leiter nicht so, dass in offener Stellung abgeschlossen werden könnte; den Schalter am Ende als eigene Verbindung zeichnen.
network-id-empty = eine ID braucht mindestens ein Zeichen.
network-id-comma = { $id } hat ein Komma, das in Listen IDs trennt; ohne schreiben.
network-unseen = ein Text braucht sichtbare Zeichen, ohne Leerzeichen davor oder danach.
network-too-long = das hat { $count } Zeichen, höchstens { $most } werden angenommen; kürzen.
network-conductor-count = hierher gehören 1 bis { $most } Leiter, nicht { $count }.
network-conductor-twice = { $name } ist leer oder steht zweimal da; jeden Leiter einmal nennen.
