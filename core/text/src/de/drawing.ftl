# A draft that no licensed electrician has checked.

### The single-line diagram. What begins with label- stands in the drawing itself and has to be short.

label-part = { $drawn } von { $all } Teilen, die nächsten zur Arbeit
label-locked-open = offen, Schloss
label-lock-no-use = Schloss nutzlos
label-closed = geschlossen
label-open = offen
# $state is one of the four before.
label-kind =
    { $kind ->
        [changeover] Umschalter
        [tie] Kuppelschalter
        [inlet] Einspeisung
       *[inverter] Wechselrichter
    }, { $state }
# What a part of the network is, where nothing more is known of it.
label-node =
    { $kind ->
        [source] Quelle
        [board] Verteiler
        [load] Verbraucher
        [junction] Klemmstelle
       *[unknown] unbekannt
    }
label-transformer = Transformator
label-takes-no-lock = nicht abschließbar
label-uncovered = ungetrennt
label-work-zone = Arbeitsbereich
label-reaches-zone = reicht bis Arbeitsbereich
label-not-traced = nicht verfolgt
label-not-drawn =
    { $links ->
        [one] 1 Verbindung
       *[other] { $links } Verbindungen
    } nicht gezeichnet

drawing = Einpoliges Schaltbild.
drawing-in-part = { $drawn } von { $all } Teilen sind gezeichnet.
drawing-more = { $more } weitere Teile sind gezeichnet und hier nicht genannt.
# $about is a list: what the part is, what is written on it, where it is, what is to say of it.
drawn-part = { $id }: { $about }.
# $ways is drawn-by or drawn-over, or several.
drawn-part-ways = { $id }: { $about }; { $ways }.
drawn-source = Quelle, { $sort }
drawn-by = nach { $to } mit { $id } ({ $about })
drawn-over = nach { $to } über { $id } ({ $about })
drawn-lock-counts-not = mit Schloss, das nicht zählt
drawn-uncovered = auf einem ungetrennten Weg
