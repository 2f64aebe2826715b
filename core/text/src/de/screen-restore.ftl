# A draft that no licensed electrician has checked.

### Restoring: covers back, people warned, locks and signs off, points closed, the supply read, circuits on, handed back.

# The state of a row, in a word.
restore-done = erledigt
restore-now = jetzt
restore-to-do = zu tun
restore-later = später
restore-stays-open = bleibt offen

# Covers.
# life-critical
restore-look-inside = Vor dem Schließen jeder Abdeckung hineinsehen: kein Werkzeug, keine lose Litze, keine Erdungsvorrichtung mehr darin.
restore-no-cover = Keine abgenommene Abdeckung eingetragen.
restore-cover-back-by = Angebracht { $by }.
restore-off-since = Ab seit { $when }.
restore-cover-back = { $cover } ist wieder angebracht

# Warning people.
# life-critical
restore-warn-everybody = Alle warnen, die die Anlage oder das, was sie antreibt, berühren könnten. Warten, bis alle aus dem Gefahrenbereich sind.
restore-warned = Gewarnt { $by }
restore-warned-how = { $who }: { $how }
restore-warn-somebody = Jemand wurde gewarnt
restore-warned-who = Wer gewarnt wurde
restore-warned-who-hint = Ein Name, oder alle an einem genannten Ort.
restore-how-warned = Wie gewarnt wurde
restore-how-warned-hint = Persönlich, telefonisch, über Betriebsfunk.
restore-save-warning = Diese Warnung speichern

# Locks and signs off.
# life-critical
restore-own-lock = Jeder nimmt das eigene Schloss mit eigener Hand ab. Ab dem ersten abgenommenen Schloss: gilt als unter Spannung stehend.
# life-critical
restore-not-finished = Die Arbeit ist nicht beendet: Schlösser dran lassen. Das erste abgenommene Schloss beendet den Nachweis.
restore-take-off = Mein Schloss ist ab: { $place }, als { $owner }
# Where the owner has several locks at one place.
restore-take-off-this = Mein Schloss ist ab: { $place }: { $lock }, als { $owner }
restore-since = Seit { $when }.
restore-sign-stays = Schaltverbotsschild an { $point } hängen lassen, solange ein Schloss hängt.
restore-sign-off = Schaltverbotsschild abgenommen, von { $point }
restore-locks-of-others = Schlösser anderer hängen noch. Telefon an den Inhaber des nächsten geben.
# The button leads to where people sign on.
restore-next-owner = Nächsten Inhaber anmelden

# Closing the points.
# life-critical
restore-closing = Einschalten bringt die Spannung zurück. Stromkreise aus, alle aus dem Gefahrenbereich. Seitlich vom Schalter stehen.
restore-site-order = Nach der Schaltreihenfolge des Standorts vorgehen.
restore-only-found-on = Nur was ein vorgefunden wurde, wird wieder eingeschaltet.
restore-closed = Eingeschaltet { $by }.
restore-never-opened = Wurde nie geöffnet.
restore-normally-open = Bleibt offen, wie im Normalbetrieb.
restore-found-off = Aus vorgefunden: bleibt aus.
# $points is a list of points.
restore-after = Einschalten nach { $points }: folgt nur der Versorgung.
restore-look-at-aside = Den zurückgestellten Eintrag ansehen
# $caution is what to look out for at this point.
restore-caution = { $point }: { $caution }
# $supply is what comes back, $at where the point is.
restore-brings-back = Ein vorgefunden. Bringt zurück: { $supply }. { $at }
restore-is-closed = { $point } ist eingeschaltet
restore-is-closed-because = { $point } ist eingeschaltet, aus diesem Grund
restore-leave-open = { $point } offen lassen, mit Begründung
# $own and $others are supplies.
restore-brings-beside = Ein vorgefunden. Schaltet zu: { $own } neben { $others }. { $at }
# life-critical
restore-do-not-close = { $point } nicht einschalten: { $own } und { $others } an einem Verteiler können töten und zerstören. Nur wenn beide vorher zusammen ein waren.
restore-why-both = Warum beide zusammen eingeschaltet werden
restore-why-both-hint = Was die beiden trennt oder synchron hält
restore-close-beside = { $point } einschalten neben { $others }
# life-critical
restore-held-aside = Bleibt offen: Schloss { $lock } von { $owner } hängt daran, laut zurückgestelltem Eintrag. Die Stelle ansehen.
# life-critical
restore-held = Bleibt offen: Schloss { $lock } von { $owner } hängt daran, für { $job }.
# $why is what is wrong with the network as it is drawn.
restore-no-order = Das Versorgungsnetz gibt keine Reihenfolge: { $why }
restore-still-open = Noch offen.

# The supply is back.
# life-critical
restore-supply-on = Versorgung ist ein: gilt als unter Spannung stehend. PSA nach den Regeln des Standorts. Abdeckungen bleiben dran: an Steckdose oder Messpunkten messen.
restore-nothing-to-read = Hier wird keine Versorgung wieder eingeschaltet: nichts zu messen.
restore-read-pair = Messen: { $first } – { $then }
restore-pair = { $first } – { $then }
restore-probes = Eine Prüfspitze an { $first }, die andere an { $then }.
restore-present = Spannung vorhanden
restore-no-indication = Keine Anzeige
restore-lit = Leuchtet
restore-read-again = Neu messen und speichern
restore-save-readings = Messwerte speichern
# What does not look as it should, and what became of it.
restore-answered = { $finding } { $answer }
restore-answered-how = { $who }. { $how } ({ $by })
restore-what-is-done = Was dagegen getan wird
restore-which-readings = Welche Messwerte
restore-answer = Antwort
restore-answer-who = Wer es hinnimmt, was ausgeschaltet bleibt oder was falsch war
restore-answer-who-hint = Name dessen, der es hinnimmt; oder was ausgeschaltet bleibt; oder was falsch war
restore-answer-how = Wie
restore-answer-how-hint = Wie informiert und warum; wie es ausgeschaltet bleibt; oder was repariert wurde
restore-save-answer = Diese Antwort speichern
restore-mended = Gespeichert. Jetzt neu messen: nur ein neuer Messwert zeigt es.
restore-rotation = Drehfeld
restore-rotation-before = Vor dem Freischalten
# $way is which way the lines turned before, $how and $by how and by whom it was read.
restore-rotation-right = { $way }: das ist richtig. { $how } ({ $by })
# What turns the wrong way can hurt people.
# life-critical
restore-rotation-unread = Das Drehfeld wurde vorher nicht gemessen. Zuerst abkuppeln, was sich dreht, oder kurz antippen und beobachten.
# life-critical
restore-rotation-unread-why = Das Drehfeld wurde vorher nicht gemessen ({ $why }). Zuerst abkuppeln, was sich dreht, oder kurz antippen und beobachten.
restore-rotation-read = Gemessen { $by }
restore-rotation-read-how = { $way }. { $how }
restore-rotation-way = Drehrichtung
restore-rotation-guard = Wie Motoren vor Schaden bewahrt werden
restore-rotation-how = Woher es bekannt ist
restore-rotation-how-hint = Messgerät und wo gemessen, oder warum nicht nötig.
restore-save-rotation = Drehfeld speichern

# Circuits on.
restore-one-at-a-time = Ein Stromkreis nach dem anderen, in dieser Reihenfolge. Vor dem nächsten beobachten, was jeder anlaufen lässt.
restore-no-circuit = Für diesen Auftrag ist kein Stromkreis aufgelistet.
restore-circuit = { $circuit }: { $serves }
restore-circuit-on-by = Ein { $by }.
restore-circuit-not-off = Wurde nicht abgeschaltet.
restore-circuit-on = { $circuit } ist ein

# Handed back.
restore-handed-back = Zurückgegeben
restore-taken-back-by = Zurückgenommen von
restore-note = Notiz
restore-signature = Unterschrift
restore-signature-none = keine
restore-signature-drawn = gezeichnet, mit diesem Eintrag gespeichert
restore-record = Protokoll dieses Auftrags
restore-steps = Schritte dieses Auftrags
# life-critical
restore-tell-owner = { $owner } informieren: das Schloss { $lock } wurde abgenommen, und { $owner } weiß es noch nicht.
restore-to = Wer die Anlage zurücknimmt
restore-to-hint = Name und wofür verantwortlich.
restore-note-to-them = Notiz dazu
restore-note-hint = Was getan wurde, was sich geändert hat, worauf zu achten ist. Darf leer bleiben.
restore-give-phone = Telefon an die Person geben, die die Anlage zurücknimmt. Unterschrift unten.
restore-signature-of = Unterschrift der Person, die zurücknimmt
restore-hand-back = Zurückgeben
