# A draft that no licensed electrician has checked.

### Restoring: what stays open, and what is asked about readings with the supply back.

close-not-open = { $at } ist in diesem Auftrag nicht offen: nichts einzuschalten.
close-found-off = { $at } wurde aus vorgefunden: bleibt aus.
# $first is a list of points.
close-after = { $at } wird erst nach der Versorgung eingeschaltet: zuerst { $first }.
# $own is a supply, $others one or more.
close-beside = { $at } schaltet zu: { $own } neben { $others }. Angeben, warum beide zusammen eingeschaltet werden, oder offen lassen.
rotation-before-late = Eine Stelle wurde schon geöffnet: das Drehfeld davor bleibt, wie es notiert ist, und ist jetzt nicht mehr zu messen.
rotation-unguarded = Das Drehfeld wurde vorher nicht gemessen: abkuppeln, was sich dreht, oder kurz antippen und beobachten, dann angeben, was davon.
answer-of-nothing = Wählen, um welchen der auffälligen Messwerte es geht.
answer-was-wrong = Angeben, was falsch war.
answer-mended = Angeben, was behoben wurde.
answer-left-off = Angeben, was ausgeschaltet bleibt.
answer-kept-off = Angeben, wodurch es ausgeschaltet bleibt.
answer-accepts = Angeben, wer informiert wurde und es hinnimmt.
answer-accepts-why = Angeben, wie informiert wurde und warum es hingenommen wird.
missing-accepted = Einen fehlenden Außen- oder Neutralleiter nimmt niemand hin: beheben lassen oder ausschalten, was davon gespeist wird.
rotation-turned = Das Drehfeld ist jetzt { $now }, vorher war es { $before }: Motoren laufen rückwärts. Wieder freischalten, dann zwei Außenleiter tauschen.

supply-normal = Normaleinspeisung
supply-unlisted = eine nicht mehr gelistete Quelle
supply-unnamed = eine unbenannte Quelle
