# A draft that no licensed electrician has checked.

### What stands where an earlier job's words are offered again. Nothing of an earlier job counts before a person has said it anew.

# $label: the label of the field. Above answers that were given there before.
said-before = { $label }: wie vorher
like-heading = Wie ein früherer Auftrag
like = Wie: { $title }
# The short form of a new job.
like-what = Wie in { $title }. Jede Zeile prüfen; was nicht stimmt, ändern.
like-none = Nicht wie dieser
like-change = Diese ändern
taken-along = Übernehmen: abwählen, was nicht stimmt
# $name: who answers for the isolation.
like-opened = Auftrag eröffnet. { $name } ist für die Freischaltung verantwortlich. Jede Quelle, jeder Messwert und jedes Schloss wird neu abgefragt.
taken-no-permit = Kein Erlaubnisschein: { $why }
taken-person = { $name }: { $duty }
taken-point = Freischaltstelle: { $label }, { $at }
taken-circuit = Vorab abschalten: { $label }, { $serves }
taken-no-circuits = Nichts vorab abzuschalten: { $why }
where-of = { $equipment }. { $place }
told-again = Jetzt informiert: { $who }, { $how }
barrier-again = Steht jetzt: { $what }, { $at }
this-shift = Diese Schicht
checked-this-shift = { $name }, kontrolliert { $at }
looked-over-again = Neu kontrolliert: Leitungen, Spitzen, Gehäuse in Ordnung, Prüffrist gültig
