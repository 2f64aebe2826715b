# A draft that no licensed electrician has checked.

### A site's supply network: what is drawn of it, its parts, and a job beside it.

supply-of = Versorgung von { $site }
supply-unknown-site = ein Standort, der nicht auf diesem Telefon ist
supply-nothing-drawn = Noch ist nichts gezeichnet. Mit der Quelle beginnen, dann jeden Verteiler mit dem, was ihn speist.
supply-add-link = Schalter oder Kabel hinzufügen
supply-nodes = Quellen, Verteiler und Verbraucher
supply-stops = Steht still: { $what }
supply-not-traced = Nicht nachverfolgt: { $what }
supply-links = Schalter und Kabel
# $kind is what the link is.
supply-link = { $from } nach { $to }, { $kind }
supply-add-node = Quelle, Verteiler oder Verbraucher hinzufügen

# What a part is.
supply-part-source-unsaid = Eine Quelle, niemand sagte, welche
supply-part-source = Quelle: { $sort }
supply-part-source-other = Andere Quelle
supply-part-board = Verteiler
supply-part-load = Verbraucher
supply-part-junction = Muffe oder Klemmen
# life-critical
supply-part-unknown = Niemand weiß, was es ist: es kann eine Quelle sein
supply-part-takes-lock = abschließbar
supply-part-takes-no-lock = nicht abschließbar
supply-part-normally-open = normal offen
supply-part-normally-closed = normal geschlossen
supply-part-link-switch = Schalter, Leistungsschalter oder Sicherungen
supply-part-link-cable = Kabel
supply-part-link-changeover = Zweig eines Umschalters
supply-part-link-tie = Kuppelschalter zwischen zwei Versorgungen
supply-part-link-inverter = Wechselrichter, der von selbst speisen kann
supply-part-link-inlet = Einspeisung für mobiles Aggregat
supply-part-link-transformer = Transformator
supply-part-link-unknown = Nicht nachverfolgt

# The form for a part.
supply-part-new-node = Quelle, Verteiler oder Verbraucher
supply-part-fed-by = Was es speist, falls bekannt
supply-part-from = Von
supply-part-to = Nach
supply-part-save = Diesen Teil speichern
supply-part-new-link = Schalter oder Kabel
supply-part-joins = Es verbindet zwei Teile. Vorher die erste Quelle, den ersten Verteiler oder Verbraucher hinzufügen.
# $what is what the part is.
supply-part-title = { $part }, { $what }
supply-part-noted = Notiert
supply-part-save-correction = Berichtigung speichern
supply-part-last = Zuletzt
supply-part-seen-open = Ich sehe: offen
supply-part-seen-closed = Ich sehe: geschlossen
supply-part-changed = Dieser Teil wurde inzwischen berichtigt oder gestrichen
supply-part-not-there = Es ist nicht da
supply-part-gone = Woher bekannt
supply-part-gone-hint = Bis zum Ende verfolgt und ausgebaut
supply-part-cross-out = Streichen
supply-part-name = Name, wie beschriftet
supply-part-name-hint = Kurz und eindeutig, z. B.: UV4
supply-part-what = Was es ist
supply-part-written = Was sonst darauf steht
supply-part-where = Wo es ist
supply-part-where-hint = Raum und Verteiler
supply-part-what-stops = Was ohne Versorgung stillsteht
supply-part-what-stops-hint = Z. B.: Beleuchtung der Endmontage
supply-part-tell = Wer zuerst zu informieren ist, einer pro Zeile
supply-part-untraced = Noch etwas hier, das niemand nachverfolgt hat
# life-critical
supply-part-untraced-hint = Z. B.: ein Kabel in die Wand dahinter. Solange es hier steht, ist nichts als getrennt nachgewiesen.
supply-part-link-name = Name des Schalters oder Kabels
supply-part-link-name-hint = Wie beschriftet, z. B.: Q4
supply-part-link-kind = Art der Verbindung
supply-part-link-written = Was sonst auf dem Schalter steht
supply-part-link-where = Wo der Schalter ist
supply-part-lockable = In offener Stellung abschließbar?
supply-part-lockable-yes = Abschließbar
supply-part-lockable-no = Nicht abschließbar
supply-part-closed = Geschlossen
supply-part-open = Offen
supply-part-normally = Im Normalbetrieb
supply-part-conductors = Leiter, die hier getrennt werden müssen
supply-part-poles = Leiter, die es trennt
# $seen is seen-open or seen-closed.
supply-part-seen = Gespeichert: { $link } { $seen }.

# A job beside the network.
supply-cut-not-drawn = Für diesen Standort nicht gezeichnet.
supply-cut-say-zone = Gezeichnet. Angeben, woran gearbeitet wird.
# $zone is a list of parts of the network.
# life-critical
supply-cut-all = Jeder Weg zu { $zone } ist getrennt oder von jemandem verantwortet, soweit gezeichnet.
# life-critical
supply-cut-some =
    { $count ->
        [one] 1 Weg zu { $zone } ist durch die Freischaltstellen dieses Auftrags nicht getrennt.
       *[other] { $count } Wege zu { $zone } sind durch die Freischaltstellen dieses Auftrags nicht getrennt.
    }
supply-cut-title = Versorgungsnetz
supply-cut-no-site = Dieser Auftrag hat keinen Standort, deshalb gehört kein Netz dazu.
supply-cut-nothing-drawn = Von der Versorgung dieses Standorts ist nichts gezeichnet. Eine Zeichnung zeigt, welche Wege zur Arbeit führen und welche Stellen sie trennen.
supply-cut-draw = Netz zeichnen
supply-cut-whole = Das ganze Netz
# life-critical
supply-cut-zone-gone = { $zone }: nicht mehr im Versorgungsnetz. Neu angeben, woran gearbeitet wird.
supply-cut-now = Mit den Schlössern, die jetzt hängen
supply-cut-planned = Mit Schlössern an allen Stellen dieses Auftrags
# $check is what a look at the network found.
# life-critical
supply-cut-now-says = Mit den Schlössern, die jetzt hängen: { $check }
# life-critical
supply-cut-planned-says = Mit Schlössern an allen Stellen dieses Auftrags: { $check }
# life-critical
supply-cut-now-answered = Mit den Schlössern, die jetzt hängen: { $check } Für jeden dieser Wege hat eine Person die Verantwortung übernommen.
# life-critical
supply-cut-planned-answered = Mit Schlössern an allen Stellen dieses Auftrags: { $check } Für jeden dieser Wege hat eine Person die Verantwortung übernommen.
supply-cut-more = Und { $count } weitere.
supply-cut-shared = { $link } wird geteilt
supply-cut-shared-lock = Schloss { $lock } von { $owner } hängt daran, für { $job }.
supply-cut-does-not-count = Zählt nicht
supply-cut-does-not-count-why = { $why } ({ $by })
supply-cut-zone = Woran gearbeitet wird
supply-cut-link-itself = { $link } selbst
supply-cut-zone-parts = Teile des Netzes, an denen gearbeitet wird
supply-cut-save-zone = Arbeitsbereich speichern
supply-cut-points = Stellen, die ihn trennen würden
supply-cut-lock = Abschließen: { $points }
supply-cut-points-here = Das sind Freischaltstellen dieses Auftrags.
supply-cut-plan = Einplanen: { $points }
supply-cut-proposals = Das sind nur Vorschläge: selbst entscheiden. Auch andere Stellen können eingeplant werden; was sie offen lassen, steht hier.
# $worth is what speaks for a proposal.
supply-cut-worth = { $worth }.
supply-cut-nothing-lost = Kein Stromkreis fällt aus.
supply-cut-stops = Steht still: { $circuits }.
supply-cut-tell = Informieren: { $people }.
supply-cut-if-not = Wenn ein Weg nicht zählt
# life-critical
supply-cut-if-not-says = Das wird im eigenen Namen gespeichert und steht bei jedem Nachweis. Örtliche Regeln können es verbieten: die für die Freischaltung verantwortliche Person fragen.
supply-cut-which = Welcher davon
supply-cut-why = Warum er nicht zählt
supply-cut-why-hint = Z. B.: ausgebaut, Enden gesehen und isoliert
supply-cut-answer = In meinem Namen verantworten
supply-cut-zone-saved = Gespeichert. Die Wege, die dorthin führen, werden gezeigt.
supply-cut-planned-points = Eingeplant: { $points }.
supply-cut-tell-people = Informieren: { $people }.
supply-cut-poles-unknown = Niemand hat notiert, welche Leiter { $link } trennt. Nachsehen und hier ankreuzen.
