# A draft that no licensed electrician has checked.

### What the gate refuses of people, plans, tags, steps that are passed over, and entries that are withdrawn.

nobody-acts = Zuerst anmelden.
reason-says-nothing = Den Grund so angeben, dass ihn eine andere Person versteht.
job-handed-back = Dieser Auftrag ist zurückgegeben. Für alles Weitere einen neuen Auftrag eröffnen.
job-given-up = Die Freischaltung wurde abgebrochen. Zuerst den Arbeitsumfang ändern; dann neu freischalten und Spannungsfreiheit feststellen.
job-finished = Die Arbeit ist beendet. Zuerst den Arbeitsumfang ändern; dann neu freischalten und Spannungsfreiheit feststellen.
not-on-job = { $person } ist nicht im Auftrag: zuerst unter „Personen am Auftrag“ aufnehmen.
# $step is the title of a step, $lack a sentence.
first-step = Zuerst: { $step }. { $lack }
no-such-step = Diesen Schritt gibt es in diesem Auftrag nicht.
no-such-point = Diese Freischaltstelle gibt es in diesem Auftrag nicht.

no-job-open = Das gehört zu einem Auftrag oder Standort: zuerst öffnen.
no-name = Namen der Person angeben.
name-alike = „{ $name }“ sieht aus wie { $other }, hier schon bekannt. Ergänzen, was die beiden unterscheidet, oder { $other } wählen.
limit-unruled = Namen der Firmenregel angeben, die den Grenzwert setzt.
# $limit is limit-too-high.
limit-lower = Einen niedrigeren setzen: { $limit }.
limit-too-high =
    ein Grenzwert für Spannungsfreiheit muss hier unter { $bound } V { $current } liegen: unter { $current ->
        [DC] 120
       *[AC] 50
    } V (EN 61243-3) und unter der Hälfte der niedrigsten Spannung, die eine Quelle auf einen Außenleiter oder Pol gibt
not-low-voltage = { $volts } V zwischen Leitern ist keine Niederspannung, die hier bei { $most } V endet. Dieses Verfahren und seine Spannungsprüfer taugen dafür nicht.
own-conductors = Zwei bis 64 Leiter auflisten, jeder mit eigenem Namen von höchstens 12 Zeichen; und nur bei „Eigene Leiterliste“.
stays-live-unsaid = Angeben, was unter Spannung bleibt, wo, und wie es abgedeckt ist.
may-not-stay-live = { $conductor } muss spannungsfrei festgestellt werden: liegt hinter einer Freischaltstelle oder gehört zur Normaleinspeisung. Unter Spannung bleiben kann nur ein Leiter der eigenen Leiterliste, von einer anderen Versorgung, die keine Freischaltstelle trennt.

charge-with-locks = Schlösser hängen: die Verantwortung für die Freischaltung nur durch Schichtübergabe wechseln.
charge-left-with-locks = Schlösser hängen, und diese Person ist für die Freischaltung verantwortlich: das wechselt nur durch Schichtübergabe.
leaves-lock = Ein Schloss von { $person } hängt noch: { $place }. Vor dem Verlassen abnehmen oder übergeben.
leaves-charge = { $person } ist für die Freischaltung verantwortlich. Zuerst die Schicht übergeben.
control-device = Ein Stopptaster, eine Verriegelung oder ein Schütz ist keine Freischaltstelle: kann versagen oder zurückgestellt werden. Den Schalter oder die Sicherungen nennen, die die Versorgung trennen.
point-alike = { $label } ist schon in diesem Auftrag, an einem gleich benannten Ort.
point-not-of-site = Diese Freischaltstelle ist an diesem Standort nicht bekannt.
point-no-poles = Angeben, welche Leiter diese Stelle trennt.
point-opens-protective = { $conductor } ist der Schutzleiter: keine Freischaltstelle trennt ihn. Kreuz entfernen.
tag-no-point = Diese Freischaltstelle gibt es in diesem Auftrag nicht.
tag-hangs = Dieses Codeschild hängt schon an { $at }.
tags-most = { $at } hatte schon { $most } Codeschilder. Die Freischaltstelle neu anlegen.
tag-gone-unsaid = Angeben, was mit dem Codeschild geschehen ist.
tag-not-there = Dieses Codeschild hängt nicht an { $at }.
nothing-to-pass = Diesem Schritt fehlt nichts: es gibt nichts zu überspringen.
cannot-pass = Das kann nicht übersprungen werden. Ausführen, oder nicht weitermachen.
limit-above-company = Die Regeln der Firma setzen { $ac } V AC und { $dc } V DC ({ $rule }). Ein Auftrag setzt den Grenzwert niedriger, nicht höher.
limit-not-in-charge = Nur wer für die Freischaltung verantwortlich ist, ändert den Grenzwert eines Auftrags.
wait-short = Mindestens warten: { $wait }. Für eine kürzere Wartezeit eingeben, was auf dem Gerät aufgeschrieben steht.
looked-unsaid = Angeben, wo nachgesehen wurde: hingehen, ein Plan genügt nicht.
only-control = Nur eine Steuerspannung bringt eigene Klemmen mit.
no-terminals = Die Klemmen der Steuerspannung an der Arbeitsstelle nennen: auch sie werden geprüft.
# $name stands in quotation marks.
terminal-name = { $name } kann nicht der Name einer Klemme sein: höchstens 12 Zeichen, und keiner, den es schon gibt.
terminals-most = Höchstens { $most } Klemmen einer Steuerspannung.
conductors-most = Mehr Leiter, als zusammen geprüft werden können.
no-control-voltage = Spannung der Steuerspannung angeben.
source-not-known = Diese Quelle ist an diesem Standort außerhalb dieses Auftrags nicht bekannt.
not-two-points = Eine Freischaltstelle dieses Auftrags wählen und die andere, die sie nicht ist.
not-aside = Ein solcher Eintrag zu diesem Auftrag ist hier nicht zurückgestellt.

withdrawn-already = Dieser Eintrag ist schon zurückgezogen.
withdraw-no-entry = Diesen Eintrag gibt es in diesem Auftrag nicht.
withdraw-stands-out = Dieser Messwert sieht nicht aus, wie er soll: er bleibt. Neu messen oder Stellung nehmen.
withdraw-voltage = Dieser Messwert zeigte eine Spannung: er bleibt. Ursache eintragen, dann Spannungsprüfer auf Funktion prüfen und neu prüfen.
withdraw-point-locked = An dieser Stelle hängt ein Schloss. So lange kann sie nicht zurückgezogen werden.
withdraw-done = Dieser Eintrag sagt, dass etwas getan wurde: er kann nicht zurückgezogen werden. Stattdessen eintragen, was jetzt gilt.
