# A draft that no licensed electrician has checked.

### What the plan of a dead test demands and a case does not show: a sentence each.

unmet-indicator-before = Nicht nachgewiesen, dass der Spannungsprüfer vor den Prüfungen funktionierte.
unmet-indicator-after = Nicht nachgewiesen, dass der Spannungsprüfer nach den Prüfungen funktionierte.
# $current is AC or DC, $lowest where the indicator begins, $by where it has to.
unmet-lights-never = Der Spannungsprüfer zeigt kein { $current } an; hier muss er ab { $by } V anzeigen. Dass er nichts zeigte, beweist nichts: einen nehmen, der früher anzeigt, oder in Zahlen messen.
unmet-lights-late = Der Spannungsprüfer zeigt erst ab { $lowest } V { $current } an; hier muss er ab { $by } V anzeigen. Dass er nichts zeigte, beweist nichts: einen nehmen, der früher anzeigt, oder in Zahlen messen.
unmet-lights-unsaid = Ab wo der Spannungsprüfer { $current } anzeigt, ist nicht angegeben und wird mit { $lowest } V angenommen; hier muss er ab { $by } V anzeigen. Dass er nichts zeigte, beweist nichts: einen nehmen, der früher anzeigt, oder in Zahlen messen.
unmet-limit-too-high =
    Ein Grenzwert für Spannungsfreiheit muss hier unter { $bound } V { $current } liegen: unter { $current ->
        [DC] 120
       *[AC] 50
    } V (EN 61243-3) und unter der Hälfte der niedrigsten Spannung, die eine Quelle auf einen Außenleiter oder Pol gibt.
unmet-no-earth = Unter den Leitern ist kein Schutzleiter: nichts wurde gegen Erde gemessen.
unmet-earth-not-proved = Der Bezugsleiter ist nicht als Erde nachgewiesen: ist er unterbrochen, können Leiter unter Spannung an jedem Paar null zeigen.
# $it: whether the supply is known not to be earthed.
unmet-known-line =
    Ein bekannter Außenleiter unter Spannung weist hier keine Erde nach: { $it ->
        [yes] in IT zeigt ein Außenleiter unter Spannung gegen Erde womöglich nichts
       *[no] die Erdverbindung ist nicht bekannt, und in IT zeigt ein Außenleiter unter Spannung gegen Erde womöglich nichts
    }. Zur Haupterdungsschiene oder zu einer zweiten Erde messen.
unmet-line-closed = { $line } wird von keiner Freischaltstelle getrennt: jeden Außenleiter und Pol trennen und abschließen.
unmet-neutral-closed = { $neutral } ist nicht getrennt und muss es sein ({ $earthing }): kann Spannung gegen Erde haben. Auch trennen.
unmet-neutral-closed-unknown = { $neutral } ist nicht getrennt und muss es sein (Erdverbindung nicht bekannt): kann Spannung gegen Erde haben. Auch trennen.
# $pairs is a list of pairs; $more counts those that are not named.
unmet-not-read = Noch nicht gemessen: { $pairs }.
unmet-not-read-more = Noch nicht gemessen: { $pairs } und { $more } weitere.
unmet-pair-dc = { $pair } (DC)
unmet-not-waited = { $what }: Aufschrift { $label } s, gewartet wurden { $waited } s.
unmet-wait-unsaid = { $what }: Aufschrift { $label } s; wie lange gewartet wurde, ist nicht angegeben.
unmet-charge-not-read = Keine DC-Messung von { $pair }, an: { $what }. Zeit allein beweist nichts.
unmet-charge-not-read-own = Keine DC-Messung an den Klemmen, an: { $what }. Zeit allein beweist nichts.

# What holds a charge, where nobody named it.
holder-drive = Umrichter
holder-ups = USV
holder-inverter = Wechselrichter
