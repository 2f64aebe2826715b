# A draft that no licensed electrician has checked.

### Questions of the procedure. Of each: the question, what stands before an answer in a list, its answers as buttons, and what has to be said
### with an answer. $of is the point or source that it is asked of, as people wrote it.

# Where an answer is told: $asked is what the question is about, $answer a button's text, $words what was said with it, which may be empty.
asked-told = { $words ->
    [none] { $asked }: { $answer }
   *[other] { $asked }: { $answer }. { $words }
}
asked-lacks = Beantworten: { $asked }
# An answer that nothing goes on under. Life-critical.
asked-stopped = { $asked }: { $answer }. Gilt als unter Spannung stehend; in Ordnung bringen und neu antworten.
asked-first = Zuerst beantworten: { $asked }
asked-unknown = Diese Frage gehört nicht zu diesem Auftrag oder hat keine solche Antwort. Zurückgehen und beantworten, was hier gefragt ist.
# On a button; $answer is one of the answers.
asked-save = Speichern: { $answer }
asked-not-so = Nach dem, was eingetragen ist, stimmt das noch nicht. Zuerst tun und eintragen, oder eine andere Antwort geben.
asked-words = Angeben, wie, was oder wo: ein, zwei Worte.
# What was read with an instrument for an answer, and what was said with it.
asked-answer-with = { $answer }: { $with }
asked-read-said = { $read }. { $words }
asked-as-shown = Wie angezeigt, nichts gerundet
asked-save-reading = Diesen Messwert speichern
asked-save-nothing = Speichern: keine Anzeige
# $read is a figure with its unit; $answer is the answer that stops. Life-critical.
asked-over = { $read } wird gespeichert als: { $answer }. Gilt als unter Spannung stehend; Ursache suchen.
asked-unread-current = Strom eingeben, den die Stromzange zeigt, in Ampere.
asked-unread-voltage = Gemessene Spannung eingeben, oder speichern, dass keine Anzeige da war.

asked-told-each-other = Haben Betreiber und Auftragnehmer einander gesagt, wie sie abschließen und wer über die Freischaltstellen bestimmt?
asked-told-each-other-short = Betreiber und Auftragnehmer
asked-told-each-other-told = Einander gesagt
asked-told-each-other-told-words = Wer wem
asked-told-each-other-one-employer = Nur ein Arbeitgeber

asked-instrument-fit = Sind Spannungsprüfer und Leitungen zweipolig, mit Messkategorie und Spannung für diesen Ort?
asked-instrument-fit-short = Prüfgeräte für diesen Ort
asked-instrument-fit-fits = Ja, auf Gerät und Leitungen abgelesen
asked-instrument-fit-does-not-fit = Nein

asked-right-board = Ist { $of } der richtige Schalter? Nachsehen, was er unter Spannung speist, ohne etwas zu öffnen.
asked-right-board-short = Richtiger Schalter, { $of }
asked-right-board-seen-live = Unter Spannung gesehen
asked-right-board-seen-live-words = Was unter Spannung zu sehen war: Lampe, Verbraucher, Messgerät
asked-right-board-traced = Nachverfolgt
asked-right-board-traced-words = Wie nachverfolgt
asked-right-board-not-shown = War nicht zu zeigen
asked-right-board-not-shown-words = Warum nicht

asked-labels = Sind die Beschriftungen von { $of } und vom Betriebsmittel auf den Fotos lesbar, und stimmen sie überein?
asked-labels-short = Beide Beschriftungen, { $of }
asked-labels-in-photo = Beide lesbar, stimmen überein
asked-labels-not-shown = War nicht zu zeigen
asked-labels-not-shown-words = Welche Beschriftung, und warum nicht
asked-labels-do-not-match = Stimmen nicht überein

asked-starts-itself = Kann { $of } von selbst oder aus der Ferne anlaufen oder wiederkommen?
asked-starts-itself-short = Anlauf von selbst, { $of }
asked-starts-itself-blocked = An der Steuerung blockiert
asked-starts-itself-blocked-words = Wie blockiert
asked-starts-itself-cannot = Kann es nicht
asked-starts-itself-cannot-words = Woher das bekannt ist
asked-starts-itself-not-blocked = Ja, und nicht blockiert

asked-tried-to-start = Normale Bedienung betätigen, alle in der Nähe informiert. Läuft etwas an? Danach wieder auf Aus stellen.
asked-tried-to-start-short = Anlaufversuch
asked-tried-to-start-nothing-moved = Nichts lief an
asked-tried-to-start-not-tried = Nicht versucht
asked-tried-to-start-not-tried-words = Warum nicht
asked-tried-to-start-it-started = Es lief an

asked-neutral-current = Neutralleiter vor dem Auftrennen mit der Stromzange messen, alles andere unter Spannung. Führt er Strom?
asked-neutral-current-short = Strom im Neutralleiter
asked-neutral-current-none = Kein Strom
asked-neutral-current-none-read = Ampere an der Stromzange
asked-neutral-current-none-words = Welcher Neutralleiter, mit welcher Stromzange
asked-neutral-current-current = Er führt Strom

asked-live-beside = Steht in Reichweite der Arbeit noch etwas unter Spannung?
asked-live-beside-short = Benachbarte Teile unter Spannung
asked-live-beside-none = Nichts in Reichweite
asked-live-beside-screened = Abgedeckt oder abgeschrankt
asked-live-beside-screened-words = Was unter Spannung steht, und wie es abgedeckt ist
asked-live-beside-not-screened = Unter Spannung und nicht abgedeckt

asked-left-inside = Werkzeuge, Brücken, Kurzschließer und Erdungen zählen. Ist noch etwas darin?
asked-left-inside-short = Liegen geblieben
asked-left-inside-nothing = Nichts: alles gezählt und draußen
asked-left-inside-something = Etwas ist noch darin

asked-rcd = Wurden die RCDs (FI) geprüft, mit wieder eingeschalteter Versorgung?
asked-rcd-short = RCDs (FI)
asked-rcd-measured = Mit Messgerät
asked-rcd-measured-words = Auslösezeit und -strom, womit
asked-rcd-button = Nur mit Prüftaste
asked-rcd-none-fitted = Keine vorhanden
asked-rcd-not-tested = Nicht geprüft
asked-rcd-not-tested-words = Warum nicht

asked-controls-back = Steht die Steuerung von { $of } wieder auf Automatik?
asked-controls-back-short = Steuerung von { $of }
asked-controls-back-automatic = Wieder auf Automatik
asked-controls-back-automatic-words = Wer informiert wurde
asked-controls-back-left-blocked = Bleibt blockiert
asked-controls-back-left-blocked-words = Warum, und wer davon weiß

asked-high-line = Welcher Außenleiter liegt höher gegen N? Jeden Außenleiter gegen N messen, bevor etwas geöffnet wird.
asked-high-line-short = Der hohe Außenleiter
asked-high-line-l1 = L1
asked-high-line-l1-words = Was gemessen wurde, L1, L2 und L3 gegen N
asked-high-line-l2 = L2
asked-high-line-l2-words = Was gemessen wurde, L1, L2 und L3 gegen N
asked-high-line-l3 = L3
asked-high-line-l3-words = Was gemessen wurde, L1, L2 und L3 gegen N
asked-high-line-not-known = Nicht bekannt
asked-high-line-not-known-words = Warum es nicht zu messen war

asked-grounded-line = Welcher Außenleiter liegt an Erde? Jeden Außenleiter gegen PE messen, bevor etwas geöffnet wird.
asked-grounded-line-short = Der Außenleiter an Erde
asked-grounded-line-l1 = L1
asked-grounded-line-l1-words = Was gemessen wurde, L1, L2 und L3 gegen PE
asked-grounded-line-l2 = L2
asked-grounded-line-l2-words = Was gemessen wurde, L1, L2 und L3 gegen PE
asked-grounded-line-l3 = L3
asked-grounded-line-l3-words = Was gemessen wurde, L1, L2 und L3 gegen PE
asked-grounded-line-not-known = Nicht bekannt
asked-grounded-line-not-known-words = Warum es nicht zu messen war

asked-earthed-pole = Liegt ein Pol an Erde? Jeden gegen PE messen, bevor etwas geöffnet wird.
asked-earthed-pole-short = Der Pol an Erde
asked-earthed-pole-plus = L+
asked-earthed-pole-plus-words = Was gemessen wurde, L+ und L- gegen PE
asked-earthed-pole-minus = L-
asked-earthed-pole-minus-words = Was gemessen wurde, L+ und L- gegen PE
asked-earthed-pole-none = Keiner
asked-earthed-pole-none-words = Woher das bekannt ist
asked-earthed-pole-not-known = Nicht bekannt
asked-earthed-pole-not-known-words = Warum es nicht zu messen war

asked-temporary-earths = Wird hier Erden und Kurzschließen verlangt? Zuerst Spannungsfreiheit feststellen, dann anbringen und unten eintragen.
asked-temporary-earths-short = Erdungsvorrichtungen
asked-temporary-earths-fitted = Angebracht, wie aufgelistet
asked-temporary-earths-not-asked = Nicht verlangt
asked-temporary-earths-not-asked-words = Nach wessen Regel

asked-charge-returned = Restladung nach der Wartezeit an der Arbeitsstelle noch einmal messen. Kommt etwas zurück?
asked-charge-returned-short = Rückkehrende Ladung
asked-charge-returned-gone = Keine Ladung kam zurück
asked-charge-returned-gone-read = Volt DC an der Arbeitsstelle
asked-charge-returned-gone-words = Wo gemessen, womit
asked-charge-returned-shorted = Ein Kurzschließer bleibt dran
asked-charge-returned-shorted-words = Wo, und womit gekennzeichnet
asked-charge-returned-returned = Ladung kam zurück

asked-coupled = Den Leiter mit der Spannung belasten: niederohmiger Prüfer, Taste gehalten. Bleibt die Spannung?
asked-coupled-short = Die Spannung unter Last
asked-coupled-other-cause = Andere Ursache, eingetragen
asked-coupled-other-cause-words = Was diese Ursache zeigte
asked-coupled-gone-under-load = Unter Last verschwunden: eingekoppelt
asked-coupled-gone-under-load-read = Volt, die unter Last bleiben
asked-coupled-gone-under-load-words = Welcher Leiter, womit
asked-coupled-stays-under-load = Bleibt unter Last: eine Quelle

asked-current-transformers = Sind Stromwandler darin? Sekundärkreis nie unter Strom öffnen: zuerst kurzschließen.
asked-current-transformers-short = Stromwandler
asked-current-transformers-none = Keine darin
asked-current-transformers-left-closed = Ja; nichts davon wird geöffnet
asked-current-transformers-shorted = Vor dem Öffnen kurzgeschlossen
asked-current-transformers-shorted-words = Wo, wie viele Kurzschließer
asked-current-transformers-open = Ein Sekundärkreis ist offen

asked-shorts-off = Sind die Kurzschließer der Stromwandler ab, und ist deren Strom wieder zu sehen?
asked-shorts-off-short = Kurzschließer der Stromwandler
asked-shorts-off-off = Ab, und Strom wieder gesehen
asked-shorts-off-off-words = Wo der Strom zu sehen war
asked-shorts-off-left-on = Bleiben dran
asked-shorts-off-left-on-words = Warum, und wer davon weiß

asked-interlocks = Zwei Versorgungen können hier zusammenkommen. Jede Verriegelung und jeden Verschluss ansehen. Ist etwas überbrückt oder festgehalten?
asked-interlocks-short = Verriegelungen und Verschlüsse
asked-interlocks-none-fitted = Keine vorhanden
asked-interlocks-in-order = Angesehen, keine überbrückt
asked-interlocks-in-order-words = Welche, und wie ausprobiert
asked-interlocks-bridged = Eine ist überbrückt oder festgehalten

asked-polarity-back = Sind die Pole dort, wo sie gekennzeichnet sind? L+ gegen L- mit Vorzeichen messen.
asked-polarity-back-short = Polarität
asked-polarity-back-as-marked = Wie gekennzeichnet
asked-polarity-back-as-marked-words = Was gemessen wurde, mit Vorzeichen
asked-polarity-back-reversed = Vertauscht

asked-counted-back = Sind Prüfgeräte, Schlüssel, Beschriftungen und Pläne alle wieder an ihrem Platz?
asked-counted-back-short = Zurückgezählt
asked-counted-back-all = Alles ist zurück
asked-counted-back-missing = Etwas fehlt
asked-counted-back-missing-words = Was, und wer danach sucht

asked-released-by = Wer gibt die Arbeit frei? Ist es jemand anders als wer geprüft hat, zuerst unten unterschreiben.
asked-released-by-short = Arbeit freigeben
asked-released-by-tester = Wer geprüft hat, gibt frei
asked-released-by-another = Andere Person, die unterschrieben hat

asked-line-at-earth = Liegt einer der Außenleiter an Erde? Jeden Außenleiter gegen PE messen, bevor etwas geöffnet wird.
asked-line-at-earth-short = Ein Außenleiter an Erde
asked-line-at-earth-none = Keiner: alle zeigen gleich viel
asked-line-at-earth-none-words = Was gemessen wurde, L1, L2 und L3 gegen PE
asked-line-at-earth-not-known = Nicht bekannt
asked-line-at-earth-not-known-words = Warum es nicht zu messen war
asked-line-at-earth-one-is = Einer: die Leiter berichtigen
asked-line-at-earth-corrected = Einer, und die Leiter sind berichtigt
# A point of a company's own checklist: $of is what the company wrote, a sentence or a few words.
asked-company = { $of }
asked-company-short = { $of }
asked-company-done = Erledigt
asked-company-does-not-apply = Trifft nicht zu
asked-company-does-not-apply-words = Warum es nicht zutrifft
asked-company-not-as-it-should-be = Nicht, wie es sein soll

# What is seen live as a rule, offered in a tap where nobody has said anything like it before; it stands in the record as said.
usual-lamp = Lampe leuchtet
usual-load = Verbraucher läuft
usual-tester = Steckdosenprüfer leuchtet
