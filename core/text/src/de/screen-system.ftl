# A draft that no licensed electrician has checked.

### The conductors of a job and their supply: picked, corrected, and what stays live beside them.

system-conductors = Leiter an der Arbeitsstelle
system-conductors-own = Eigene Leiter, mit Kommas
# What stands in this example is as it is typed: name[colour]=role@supply.
system-conductors-own-hint = L1, L2[schwarz], N1=neutral, PE. Von einer anderen Versorgung: S+=dc-plus@String A
system-earthing = Art der Erdverbindung
# $hint is one of the named-by- messages, $volts a list of figures.
system-usual-here = { $hint }. Hier üblich: { $volts }
system-nominal = Nennspannung in Volt

system-wrong = Die Leiter waren falsch notiert
# life-critical
system-wrong-ends = Das beendet den Nachweis. Was eingetragen wurde, bleibt. Freischaltstellen behalten die für sie notierten Leiter.
system-wrong-what = Was falsch war
system-correct = Leiter berichtigen

# What stays live beside the work.
system-live = Was sich hier nicht freischalten lässt
# life-critical
system-live-what = WEITER UNTER SPANNUNG: { $what }
# life-critical
system-live-at = { $place }. Abgedeckt: { $screened } ({ $by })
# life-critical
system-live-such-as = Z. B. die Versorgungsseite des Hauptschalters, PV-Strings bei Tageslicht, Batterieklemmen. Benennen, und abdecken oder abschranken.
system-live-conductors = Welche der eigenen Leiter es sind
system-live-name = Was unter Spannung bleibt
system-live-where = Wo es ist
system-live-screened = Wie es abgedeckt ist, und wer nachgesehen hat
system-live-save = Das bleibt unter Spannung
