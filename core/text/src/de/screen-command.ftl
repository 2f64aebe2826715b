# A draft that no licensed electrician has checked.

### What commands print for a person at a terminal: plans, judgements, records, networks, tags.

# A dead test. $expect is what is read where the pair is dead.
command-test = { $first } – { $then }   erste Prüfspitze bleibt an { $first }, zweite an { $then }. Erwartet: { $expect }.
command-look-out = Achtung
command-stored = Gespeicherte Energie: { $what }
command-reference = Bezugsleiter: { $conductor }
# In the place of a conductor.
# life-critical
command-reference-missing = fehlt
command-ways = Auf eine dieser Arten nachweisen
# $pairs is a list of command-dc-pair, or command-every-pair.
command-dc = Auch Gleichspannung messen: { $pairs }
command-dc-pair = { $first }–{ $then }
command-every-pair = jedes Paar
command-tests = Prüfungen: { $count }, die Prüfspitzen werden { $moves }-mal angelegt (mindestens { $fewest })
# Behind the number of a test: a pair, and how the probes move.
command-pair-probes = { $first } – { $then }   { $probes }
command-probes-stay = eine Prüfspitze bleibt an { $held }, die andere an { $other }; zuerst abnehmen: { $off }
command-probes = erste Prüfspitze an { $first }, dann { $then }; zuerst abnehmen: { $off }
# life-critical
command-dead = wenn spannungsfrei: { $expect }
# life-critical
command-not-dead = wenn nicht spannungsfrei: { $expect }
command-notes = Anmerkungen

# The verdict on readings.
# life-critical
command-proved-dead = Spannungsfrei festgestellt
# life-critical
command-treat-as-live = Gilt als unter Spannung stehend
# life-critical
command-incomplete = Unvollständig: gilt als unter Spannung stehend
# life-critical
command-void = Ungültig: gilt als unter Spannung stehend
# $cause is the name of a cause in docs/judge.md. How well readings match it is no probability, and is not said.
# life-critical
command-may-be = Messwerte passen zu: { $cause }. Gilt als unter Spannung stehend.
command-pair = { $first } – { $then }
command-read-again = Neu messen

# Records.
command-record = { $file }: { $title }. Kopf { $head }.
command-record-csv = Eine CSV ist nicht nachprüfbar: PDF oder JSON daneben aufbewahren.
command-record-check = Jeder kann es nachprüfen: stillbar verify { $file }
command-head = Kopf { $head }
# life-critical
command-holds = Das Protokoll ist echt: so, wie seine Geräte es signiert haben. Es sagt nicht, dass jetzt etwas spannungsfrei ist.
# life-critical
command-does-not-hold = Das Protokoll hält der Prüfung NICHT stand.
command-failure = { $what }: { $why }
command-shown = Nachgewiesen:
command-not-shown = Nicht nachgewiesen:

# Networks.
command-more-sources = Insgesamt reichen { $count } Quellen hin; die Wege der anderen sind nicht aufgelistet.
command-supply-not-shown = Nicht nachgewiesen
command-remark = Bemerkung: { $remark }
command-proposal = { $proposal } ({ $worth })
command-stops = steht still: { $what }
command-tell = informieren: { $who }
# $label says in words what is drawn.
command-drawn = { $file } ist geschrieben. { $label }
command-written = Geschrieben: { $files }.

# Tags in photos.
command-tag = { $file }: Codeschild { $tag }
command-tag-foreign = { $file }: kein Codeschild von uns, sein Text ist „{ $text }“
command-tag-none = { $file }: kein Code gelesen. Foto näher, gerade und ohne Blendung aufnehmen.
