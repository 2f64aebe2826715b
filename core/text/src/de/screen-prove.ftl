# A draft that no licensed electrician has checked.

### The screens of proving dead.

# life-critical
prove-covers-caution = Jeder Leiter hinter einer Abdeckung gilt als unter Spannung stehend, bis überall Spannungsfreiheit festgestellt ist. Handschuhe und Gesichtsschutz nach den örtlichen Regeln.
prove-cover-back = Abdeckung wieder angebracht
prove-cover-off = Abdeckung ab
prove-cover-by = { $cover } ({ $by })
prove-cover = Abdeckung, die abgenommen wird
prove-cover-hint = Eine nach der anderen. Jede muss vor dem Wiedereinschalten zurück an ihren Platz.
# A cover that nearly every board has, and the button that says that it alone is off.
prove-usual-cover = Frontabdeckung
prove-usual-cover-off = Frontabdeckung ist ab, sonst keine
prove-no-cover-why = Oder: warum keine Abdeckung abzunehmen ist
prove-no-cover-hint = Messpunkte sind von außen erreichbar.
prove-no-cover = Keine Abdeckung abzunehmen

prove-known-source = Eine bekannte Quelle unter Spannung
prove-on = Auf Funktion geprüft an
prove-which-source = Welche Quelle unter Spannung, falls es eine war
prove-which-source-hint = Nicht Teil dieser Freischaltung
prove-indicator = Spannungsprüfer
prove-proved = Auf Funktion geprüft
# life-critical
prove-stop-work = Der Nachweis ist beendet, während die Arbeit läuft.
prove-stop-work-first = Zuerst Arbeit einstellen
prove-ranges = Unmittelbar vor der Prüfung auf Funktion prüfen: jeden Bereich und jede Lampe oder jeden Ton, die dabei benutzt werden.
# life-critical
prove-no-indicator = Kein Spannungsprüfer ist als einsatzfähig befunden. Zuerst einen kontrollieren.
prove-check-indicator = Einen Spannungsprüfer kontrollieren
prove-voltage-indicator = Spannungsprüfer
# Two statements of whoever taps them.
prove-responds = Er spricht an, wie er soll
prove-responds-not = Er spricht nicht an, wie er soll
prove-is-proved = Der Spannungsprüfer ist auf Funktion geprüft.
# life-critical
prove-failed = Diesen Spannungsprüfer nicht benutzen. Einen anderen nehmen, kontrollieren und auf Funktion prüfen.
# life-critical
prove-indication = Eine Anzeige. Stopp, gilt als unter Spannung stehend.

prove-pair = { $first } – { $then }
# A pair of which only direct voltage is left to read.
prove-pair-dc = { $first } – { $then } DC
prove-pair-hint = Andere Prüfspitze an { $then }. Erwartet: { $expected }.
prove-set = Gruppe { $group } von { $groups }: erste Prüfspitze bleibt an { $conductor }. Die zweite zuerst abnehmen.
prove-nothing = Nichts
prove-continuity = Durchgang
prove-lit = Leuchtet
prove-save-readings = Diese Messwerte speichern
prove-seen-since = Eine seither gesehene Anzeige
# The last pair, after a slip of the thumb: what was read before stays in the record.
prove-read-again = { $pair } noch einmal lesen
# life-critical
prove-gave = Dieses Paar gab eine Anzeige
prove-not-tested = nicht geprüft
prove-then = { $first }, dann { $then }
prove-results = Messwerte dieser Prüfung
prove-column-pair = Paar
prove-column-reading = Messwert
# life-critical
prove-between-late = Die Funktionsprüfung des Spannungsprüfers ist zu lange her. Jetzt auf Funktion prüfen, dann die Paare seither neu messen.
prove-between = Spannungsprüfer innerhalb von { $minutes } min erneut auf Funktion prüfen; dann geht die Prüfung weiter.
prove-again-by = Erneut auf Funktion geprüft
# life-critical
prove-supervised = Unter Aufsicht geprüft. Wer unterschreibt, hat dabei zugesehen und verantwortet die Prüfung.
prove-signs = { $name } unterschreibt für diese Prüfung
prove-sign-as = Diese Prüfung unterschreiben als { $name }
prove-hand-on = Gerät weitergeben
# life-critical
prove-after = Derselbe Spannungsprüfer, unmittelbar nach dem letzten Paar. Spricht er jetzt nicht an, ist jede Prüfung ungültig.
prove-goes-on = Der Spannungsprüfer ist auf Funktion geprüft. Die Prüfung geht weiter.
# life-critical
prove-after-failed = Jede Prüfung seit der ersten Funktionsprüfung ist ungültig. Gilt als unter Spannung stehend. Anderen Spannungsprüfer nehmen und neu beginnen.

prove-behind = Was dahinter sein kann
prove-likeliest = Am wahrscheinlichsten
prove-or = Oder
prove-next = Als Nächstes
prove-odd = Passt nicht zu den anderen
prove-odd-pair = { $first } – { $then }: dieses Paar neu prüfen.
# life-critical
prove-guess = Eine Vermutung aus den Messwerten und daraus, wie häufig jede Ursache ist. Keine Vermutung macht einen Leiter spannungsfrei.
prove-more = Weitere Messungen, um die Ursache zu finden
# life-critical
prove-more-caution = Nur wenn die eigenen Regeln das Messen an Teilen unter Spannung erlauben, mit dem Schutz, den sie verlangen.
prove-more-hint = Erste Prüfspitze an { $first }, andere Prüfspitze an { $then }.
prove-more-pad = Noch nicht gemessene Paare
prove-more-save = Weitere Messwerte speichern

# What to do with the hands first, then with the cover.
# life-critical
prove-stop-pair = Gilt als unter Spannung stehend. Prüfspitze zuerst von { $then } abnehmen, dann die von { $first }, und die Abdeckung zwischen sich und die Leiter bringen.
# life-critical
prove-stop = Gilt als unter Spannung stehend. Prüfspitzen abnehmen, und die Abdeckung zwischen sich und die Leiter bringen.
prove-unexpected = { $reading }, erwartet: keine Anzeige ({ $by })
prove-do-now = Was jetzt zu tun ist
# life-critical
prove-do-1 = 1. Alle von den Leitern fernhalten. Die für die Freischaltung verantwortliche Person informieren.
prove-do-2 = 2. Ursache suchen: falsche Stelle geöffnet, Quelle übersehen, Neutralleiter mit anderem Stromkreis geteilt, Spannung eingekoppelt.
prove-do-3 = 3. Eine übersehene Quelle kommt in den Auftrag, mit eigener Freischaltstelle und eigenem Schloss.
# life-critical
prove-do-4 = 4. Dann Spannungsprüfer auf Funktion prüfen und jedes Paar neu prüfen. Eine Erklärung macht keinen Leiter spannungsfrei.
prove-missed = Eine Quelle wurde übersehen
prove-points-again = Freischaltstellen neu ansehen
prove-level = Falls gesehen: { $at } leuchtete bis
prove-level-volts = { $volts } V
prove-level-save = Stufe speichern
prove-trouble = { $trouble } ({ $by })
prove-cause = Was die Ursache war und was dagegen getan wurde
prove-cause-hint = Das bleibt beim Protokoll.
prove-cause-save = Ursache speichern, dann neu prüfen
# life-critical
prove-cause-none-means = Wenn gesucht und nicht gefunden: zwei ganze Prüfungen folgen, die zweite mit anderem Spannungsprüfer oder durch andere Person.
prove-cause-none = Ursache nicht gefunden

prove-earth-shown = Als Erde nachgewiesen
# life-critical
prove-earth-shown-not = Nicht Erde
prove-earth-shown-by = { $how } ({ $by })
prove-earth-live-line = PE gegen einen bekannten Außenleiter unter Spannung zeigt die volle Spannung
prove-earth-main-terminal = Niederohmiger Durchgang von PE zur Haupterdungsschiene
prove-earth-bonded = Niederohmiger Durchgang von PE zu Metallteilen, deren Potentialausgleich anderswo angeschlossen ist
prove-earth-how = Wie nachgewiesen
prove-earth-where = Wo, oder ein anderer Weg
prove-earth-where-hint = Welcher Außenleiter unter Spannung oder welche Schiene
prove-earth-live-shows = Ein Außenleiter unter Spannung zeigt gegen Erde
prove-earth-about = Etwa { $volts } V
prove-earth-about-or = Etwa { $least } oder { $volts } V
# Two statements of whoever taps them.
prove-earth-proved = Erde nachgewiesen
# life-critical
prove-earth-proved-not = Erde nicht nachgewiesen
# life-critical
prove-earth-failed = Der Bezugsleiter ist nicht Erde. Gilt als unter Spannung stehend. Vor jeder anderen Prüfung die Unterbrechung suchen.

prove-discharge-none = In diesem Auftrag ist keine gespeicherte Energie und keine Gleichspannungsquelle eingetragen.
prove-discharge-unread = nicht gemessen
prove-discharge-read = { $reading } ({ $by })
prove-discharge-wait = { $what }, Wartezeit { $wait }
# life-critical
prove-discharge-caution = Prüfgerät auf Gleichspannung stellen. Warten, so lange die Aufschrift sagt, dann messen: Plus gegen Minus und jeden davon gegen PE. Den größten Wert eingeben.
prove-discharge-volts = Gleichspannung in Volt, an: { $what }
prove-discharge-volts-hint = Der größte der drei Werte
prove-discharge-save = Messwert speichern, an: { $what }
