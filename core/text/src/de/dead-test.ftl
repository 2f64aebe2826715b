# A draft that no licensed electrician has checked.

### The plan of a dead test: what is expected of a pair, why its probes go so, and what else has to be shown.

# Begin small: they stand behind "Expected:".
if-dead-perhaps-joined = keine Anzeige; Durchgang, wenn beide an der Quelle oder am Speisepunkt verbunden sind
if-dead-line-to-earth = keine Anzeige; Durchgang deutet auf Erdschluss, Filter oder Überspannungsableiter
if-dead-other-to-earth = keine Anzeige; Durchgang deutet auf Erdschluss, Filter oder einen geerdeten Pol
if-dead-to-line = keine Anzeige; Durchgang, wenn eine Last oder Wicklung sie verbindet
if-dead-to-other = keine Anzeige; Durchgang, wenn eine Last, eine Wicklung oder ein Umrichter sie verbindet
if-dead-bond-at-source = keine Anzeige, höchstens wenige Volt; niederohmig über die N-PE-Brücke an der Quelle, hochohmig deutet auf unterbrochenen N oder PE
if-dead-bond-at-origin = keine Anzeige, höchstens wenige Volt; sehr niederohmig über die N-PE-Brücke am Speisepunkt: Durchgang ist normal
if-dead-open-in-tn = keine Anzeige, oder eine eingekoppelte; kein Durchgang: Durchgang deutet auf mitbenutzten Neutralleiter oder zweite N-PE-Brücke
if-dead-unsaid-in-tn = keine Anzeige, höchstens wenige Volt; Durchgang, wo N nicht getrennt ist, kein Durchgang, wo er es ist: klären, was zutrifft
if-dead-closed-in-tt = einige Volt können anstehen; einige zehn bis hundert Ohm über die Erder. In TT muss N getrennt sein: er ist es nicht
if-dead-open-in-tt = keine Anzeige, oder eine eingekoppelte; kein Durchgang
if-dead-unsaid-in-tt = keine Anzeige, oder eine eingekoppelte, wo N getrennt ist; in TT muss N getrennt sein: klären, ob er es ist
if-dead-in-it = keine Anzeige, oder eine eingekoppelte; hochohmig. Ein erster Fehler kann verborgen sein

if-live-middles = von wenigen Volt (gemeinsamer oder mitbenutzter Weg, der Strom führt) bis { $most } V, wo einer der beiden unterbrochen ist
if-live-middles-line = von wenigen Volt (gemeinsamer oder mitbenutzter Weg, der Strom führt) bis zur Spannung eines Außenleiters, wo einer der beiden unterbrochen ist
if-live-about = etwa { $volts } V; alles darunter, wenn einer der beiden abgetrennt ist und frei schwebt
if-live-up-to = alles bis { $volts } V; womöglich keine Anzeige, obwohl beide unter Spannung stehen
if-live-either = etwa { $phases } V zwischen zwei Phasen, { $middle } V mit Mittelleiter; alles darunter, wenn einer abgetrennt ist und frei schwebt
if-live-unsaid = die Spannung der Versorgung; ihre Nennspannung ist nicht angegeben

why-less-dangerous = { $first } ist der weniger gefährliche der beiden, falls noch einer unter Spannung steht: diese Prüfspitze zuerst anlegen und zuletzt abnehmen.
why-then-stays = Keiner ist weniger gefährlich: die Prüfspitze an { $then } bleibt, die andere geht an { $first }.
why-then-stays-next = Keiner ist weniger gefährlich: { $first } zuerst abnehmen, damit { $then } für die nächste Prüfung bleibt.
why-first-held = Keiner ist weniger gefährlich: an { $first } bleiben, die Prüfspitze von { $then } zuerst abnehmen.

reference-why = Alle Paare auf null zeigen nur, dass die Leiter auf einem Potential liegen, nicht dass es Erde ist: ist { $conductor } unterbrochen, zeigt ein Verteiler unter Spannung nichts.
reference-why-none = In der Liste ist kein Schutz- oder PEN-Leiter: womöglich gibt jedes Paar keine Anzeige, während alle Leiter gegen Erde unter Spannung stehen.
earth-list = Den Schutzleiter oder eine bekannte Erde in die Liste aufnehmen und den Plan neu erstellen.
earth-known-line = Von { $conductor } zu einem Außenleiter messen, der bekanntermaßen unter Spannung steht und nicht zu dieser Freischaltung gehört: die volle Spannung gegen Erde muss erscheinen.
earth-main-terminal = Mit langer Leitung niederohmigen Durchgang von { $conductor } zur Haupterdungsschiene messen.
earth-bonded = Niederohmigen Durchgang von { $conductor } zu Metallteilen messen, deren Potentialausgleich anderswo angeschlossen ist.

discharge-wait = Ab dem Abschalten mindestens { $seconds } s warten, wie aufgeschrieben an: { $what }.
discharge-find-time = Entladezeit auf der Aufschrift oder in der Anleitung suchen und ab dem Abschalten so lange warten: { $what }.
discharge-read = Gleichspannung messen an: { $what }; { $plus } gegen { $minus } und jeden davon gegen PE. Zeit allein beweist nichts.
discharge-still = Zeigt sich dabei etwas: gilt als unter Spannung stehend; weiter warten und neu messen oder nach Herstellerangabe entladen.
pole-plus = Plus
pole-minus = Minus

dc-drive = Ein Umrichter hält eine Ladung und kann Gleichspannung auf Zuleitung und Motor geben.
dc-ups = Hinter einer USV steht eine Batterie.
dc-pv = PV-Module stehen unter Spannung, solange Licht da ist.
dc-stored = Gespeicherte Energie ist Gleichspannung.
dc-conductors = Es gibt DC-Leiter.

warn-no-reference = In der Liste ist kein Schutz- oder PEN-Leiter: nichts zeigt hier eine Spannung gegen Erde.
# $lines, $neutrals, $conductors: one or more, with commas.
warn-lines-closed = Vom Schalter nicht getrennt: { $lines }. Gilt als unter Spannung stehend, bis eine andere Freischaltstelle trennt.
warn-neutrals-closed =
    Nicht getrennt: { $neutrals }; { $earthing ->
        [TT] in TT können einige Volt anstehen
        [IT] in IT ist das ein aktiver Leiter
       *[other] wo die Erdverbindung nicht bekannt ist, kann Spannung anstehen
    }: auch trennen.
warn-charged = Kein Schalter trennt: { $conductors }. Gilt als unter Spannung stehend, bis entladen und DC gemessen ist.
warn-it = IT: ein erster Fehler bleibt verborgen, und ein Außenleiter unter Spannung zeigt gegen Erde womöglich nichts.
warn-supplies = { $count } Versorgungen in einem Gehäuse ({ $supplies }): jede braucht eine eigene Freischaltstelle.
warn-control = Steuerstromkreise werden oft von anderswo gespeist: suchen, woher.
warn-pv = PV-Module lassen sich nicht abschalten: bis zu der Stelle, die sie trennt, bleibt ihre Seite bei Licht unter Spannung.
warn-ups = Eine USV speist ihren Abgang auch ohne Netz: Ausgang und Bypass auch freischalten.
warn-generator = Ein Generator kann von selbst anlaufen: als eigene Quelle freischalten und mit Schloss sichern.
warn-lights-late = Der Spannungsprüfer zeigt unter { $lowest } V nichts an: einen nehmen, dessen erste Stufe bei { $bound } V oder darunter liegt.

note-prove-indicator = Spannungsprüfer vor der ersten und nach der letzten Prüfung auf Funktion prüfen: bis dahin zählt kein Messwert.
note-common-practice = Gefahr nach Rolle und Reihenfolge der Paare sind übliche Praxis ohne Quelle: die Regel des Standorts geht vor.
note-neutral-inferred = Was N gegen PE zeigen soll, ist technisch hergeleitet: von jemandem prüfen lassen, der BS 7671 oder IEC 60364 kennt.
note-earthing-unsaid = Die Erdverbindung ist nicht angegeben: die Erwartungen gegen Erde sind die allgemeinen, und ein bekannter Außenleiter unter Spannung weist keine Erde nach.
note-poles-unsaid = Was der Schalter trennt, ist nicht angegeben: ob jeder Außenleiter getrennt ist, lässt sich hier nicht sagen.
note-more-moves =
    Diese eigene Reihenfolge setzt eine Prüfspitze { $count ->
        [1] einmal
       *[other] { $count }-mal
    } öfter an als die beste Reihenfolge.

# The drawing of the terminals, in words. $terminals and $stops are lists.
terminals-hold = BLEIBT
terminals-none = Klemmen, ohne Prüfspitze.
terminals = Klemmen { $terminals }. Erste Prüfspitze an { $held }, bleibt dort. Die andere Prüfspitze: { $stops }. Die andere jedes Mal zuerst abnehmen; { $held } zuletzt.
terminals-stop = { $number } an { $conductor }
