# A draft that no licensed electrician has checked.

### A job from above: its steps, what is skipped, its time line.

# What was said or seen, and when and by whom.
job-noted = { $what } ({ $by })
job-place = Ort
job-work = Arbeit
# By which rules the job is done.
job-rules = Regeln
job-at-any-time = Jederzeit
# Behind locks-title.
job-locks-on = { $count } jetzt angebracht
job-changed = Etwas hat sich geändert
job-changed-what = Weitere Quelle, anderer Arbeitsumfang, ein Neutralleiter aufgetrennt.
job-shift = Schichtübergabe
job-time-line = Verlauf
job-time-line-what = Alles, was eingetragen wurde, und Berichtigungen.
job-record-what = Eine PDF, die jeder prüfen kann, zum Weitergeben.

# The state of a step, in a word. What is "to do" may be done now, though it is not its turn.
job-word-done = erledigt
job-word-now = jetzt
job-word-to-do = zu tun
job-word-later = später
job-word-skipped = übersprungen
# Behind the first of what a step still lacks.
job-more = Und { $count } weitere.
# life-critical
job-skipped = Übersprungen: { $why } ({ $by })

# The way on.
job-next = Weiter: { $step }
# life-critical
job-next-asides = Weiter: vor Ort nachsehen, Einträge sind zurückgestellt
# life-critical
job-stop-work = Arbeit einstellen: gilt als unter Spannung stehend

# Skipping a step.
job-skip = Schritt überspringen, mit Begründung
job-skip-title = Überspringen: { $step }
# life-critical
job-skip-says = Das wird im eigenen Namen gespeichert und ab hier angezeigt. Örtliche Regeln können es verbieten: die für die Freischaltung verantwortliche Person fragen.
# What the step still lacks.
job-not-done = Nicht erledigt
job-skip-why = Warum, und was stattdessen getan wird
job-skip-why-hint = Eine andere Person muss es verstehen.
job-skip-signed = Überspringen, unterschrieben von { $name }

# The time line.
job-time-line-stays = Nichts hier kann geändert oder gelöscht werden. Eintrag antippen, um ihn zurückzuziehen: das fügt einen Eintrag hinzu. Ein beendeter Nachweis bleibt beendet.
job-clock-was-behind = Die Uhr des Telefons ging nach: die Zeit ist zweifelhaft, die Reihenfolge nicht.
# The state of an entry, in a word.
job-withdrawn = zurückgezogen
job-withdrawn-why = Zurückgezogen: { $why } ({ $by })
job-withdraw-title = Eintrag { $number } zurückziehen?
job-it-says = Inhalt
job-saved-by = Gespeichert
# life-critical
job-withdraw-ends = Zurückziehen beendet jeden Nachweis, der gilt. Der Eintrag bleibt im Verlauf, als zurückgezogen gekennzeichnet.
job-withdraw-why = Was an dem Eintrag falsch war
job-leave-it = So lassen, wie er ist
job-withdraw = Diesen Eintrag zurückziehen
job-withdraw-done = Der Eintrag ist zurückgezogen. Er bleibt im Verlauf.
