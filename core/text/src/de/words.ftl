# A draft that no licensed electrician has checked.

### Words and pieces that stand inside other messages.

place-unknown = Stelle, die dieses Gerät nicht kennt
# What stands proved: in a list, and as the large words of the banner. These are few words, for a screen that is looked at in passing.
# life-critical
state-proved = Spannungsfrei festgestellt
# In a list that is heard of from afar, which cannot say how old the proof is.
# life-critical
state-proved-heard = Zuletzt gemeldet: spannungsfrei festgestellt
# A voltage was met.
# life-critical
state-stop = Stopp, gilt als unter Spannung stehend
# life-critical
state-live = Gilt als unter Spannung stehend
state-handed-back = Zurückgegeben
place-of-other-job = Stelle eines anderen Auftrags
job-unknown = anderer Auftrag
instrument-named = { $name }, Seriennr. { $serial }
instrument-without-serial = { $name }, ohne Angabe der Seriennr.
# $id is the beginning of what the instrument is known by.
instrument-unknown = Prüfgerät { $id }
told-by-network = Versorgungsnetz
direct-voltage = Gleichspannung
pair = { $first } – { $then }
wait-by-label = laut Aufschrift
wait-minutes = { $minutes } min
wait-seconds = { $seconds } s
# Two things of a list; of a longer one, all but the last and the last.
list-comma = { $first }, { $then }
list-and = { $first } und { $then }
# The same where what is listed has commas of its own.
list-semicolon = { $first }; { $then }
# Two sentences, one after the other.
sentences = { $first } { $then }

quoted = „{ $text }“
quoted-in-part = „{ $text }…“
seen-open = offen gesehen
seen-closed = geschlossen gesehen
# $way is one of the shown-earth- messages.
shown-earth-how = { $way }: { $how }
shown-earth-live-line = PE gegen einen bekannten Außenleiter unter Spannung zeigt dessen volle Spannung
shown-earth-main-terminal = Durchgang von PE zur Haupterdungsschiene
shown-earth-bonded = Durchgang von PE zu Metallteilen mit Potentialausgleich
limit-set = { $ac } V AC und { $dc } V DC zählen als keine Anzeige, nach { $rule }
# One of a list or another.
list-or = { $first } oder { $then }

as-ruled = Wie im Regelwerk
order-least-dangerous-first = Das am wenigsten Gefährliche zuerst (Außenleiter gegeneinander zuletzt)
order-line-line-first = Außenleiter gegeneinander zuerst
order-earth-first = Erde zuerst (alle gegen den Schutzleiter, dann die anderen)

point-switch-disconnector = Lasttrennschalter
point-circuit-breaker = Leistungs- oder LS-Schalter mit Trennfunktion
point-fuse-switch = Sicherungslasttrennschalter
point-fuse-links = Sicherungseinsätze herausgenommen
point-plug = Steckvorrichtung
point-control-device = Stopptaster, Verriegelung oder Schütz

system-one-phase = Einphasig: L, N, PE
system-three-phase-neutral = Drehstrom mit N: L1, L2, L3, N, PE
system-three-wire = Drehstrom ohne N: L1, L2, L3, PE
system-pen = Drehstrom mit PEN (TN-C): L1, L2, L3, PEN
system-two-lines = Zwei Außenleiter ohne N: L1, L2, PE
system-site-transformer = Baustellentransformator 55-0-55: L1, L2, PE
system-site-transformer-three = Baustellentransformator, drei Außenleiter: L1, L2, L3, PE
system-split-phase = Einphasig mit Mittelanzapfung: L1, L2, N, PE
system-high-leg = Dreieck mit hohem Außenleiter: L1, L2, L3, N, PE
system-corner-grounded = Dreieck, ein Außenleiter geerdet: L1, L2, L3, PE
system-dc-two-wire = DC, zwei Pole: L+, L-, PE
system-dc-three-wire = DC mit Mittelleiter: L+, M, L-, PE
system-own = Eigene Leiterliste
named-by-neutral = Außenleiter gegen N, z. B. 230, 120 oder 277
named-by-pen = Außenleiter gegen PEN, z. B. 230
named-by-lines = Außenleiter gegen Außenleiter, z. B. 400, 230 oder 480
named-by-poles = Pol gegen Pol, z. B. 110 oder 48
named-by-highest = Die höchste zwischen irgend zwei Leitern

# In the drawing of a system, between two terminals: at most seven letters a line.
drawn-volts = { $volts } V
# The line above drawn-volts: anything up to it, or one of two.
drawn-from-nothing = 0 bis
drawn-either = { $lower } /
# Above these drawings.
drawings-of-systems = Die Zeichnungen zeigen übliche Spannungen. Ein Fragezeichen steht für das, was von Ort zu Ort verschieden ist.

earthing-unknown = Nicht bekannt

reading-none = keine Anzeige
reading-continuity = Durchgang
reading-lit = leuchtet
reading-lit-to = leuchtet bis { $volts } V
reading-volts = { $volts } V
reading-amps = { $amps } A

tolerance-iec = IEC 60038: ±10 %
tolerance-uk = Vereinigtes Königreich: +10 %, -6 %
tolerance-ansi = ANSI C84.1 Bereich A: ±5 %

rotation-clockwise = rechts
rotation-anticlockwise = links
rotation-not-needed = nicht nötig
rotation-choice-clockwise = Rechts: L1, L2, L3
rotation-choice-anticlockwise = Links: L1, L3, L2
rotation-choice-not-needed = Nicht nötig: nichts dreht sich
rotation-guard-uncoupled = Was sich dreht, ist abgekuppelt
rotation-guard-bumped = Kurz angetippt und beobachtet

supply-answer-mended = Behoben, wird neu gemessen
supply-answer-left-off = Bleibt ausgeschaltet
supply-answer-accepted = Hingenommen von jemandem, der informiert wurde

source-generator = Generator
source-ups = USV
source-pv = PV
source-battery = Batterie
source-second-feeder = Zweite Einspeisung oder Umschaltung
source-control = Steuer- oder Hilfsspannung

photo-blurred = Dieses Bild wirkt unscharf: Beschriftung darin ansehen; wenn sie nicht lesbar ist, neu aufnehmen.
photo-dark = Dieses Bild ist sehr dunkel: wenn möglich mit mehr Licht neu aufnehmen.
photo-bright = Dieses Bild ist sehr hell: wenn möglich vom Licht abgewandt neu aufnehmen.
# $here is what the picture was taken for.
photo-tag-of-namesake = Das Codeschild in diesem Bild gehört zu einer anderen Stelle, die auch { $here } heißt.
photo-other-tag = Das Codeschild in diesem Bild gehört zu { $belongs }, nicht zu { $here }.
photo-unknown-tag = Das Codeschild in diesem Bild, { $tag }, gehört zu nichts, was dieses Gerät kennt, und nicht zu { $here }.
photo-no-tag = In diesem Bild ist kein Codeschild lesbar, { $here } hat aber eines.

sort-grid = Netz
sort-second-feeder = zweite Einspeisung
sort-generator = Generator
sort-ups = USV
sort-pv = PV
sort-battery = Batterie
sort-control = Steuerspannung
sort-unsaid = Quelle

link-switch = Schalter
link-cable = Kabel
link-changeover = Umschalter
link-tie = Kuppelschalter
link-inverter = Wechselrichter mit Inselbetrieb
link-inlet = Einspeisung für mobiles Aggregat
link-transformer = Transformator
link-unknown = nicht nachverfolgte Verbindung

# What keeps energy after the supply is cut, each with its least wait where no label says one, and where that comes from. On a button.
stored-kind = { $kind }: Wartezeit { $wait } ({ $source })
stored-drive = Umrichter, Zwischenkreis
stored-power-factor = Kondensatoren der Blindstromkompensation
stored-capacitors = Andere Kondensatoren
stored-ups = USV
stored-pv-inverter = PV-Wechselrichter
stored-battery-converter = Batterie- oder Fahrzeugumrichter
stored-not-known = Nicht bekannt
stored-wait-practice = übliche Praxis
stored-wait-iec-60831 = IEC 60831-1
stored-wait-longest = die längste
