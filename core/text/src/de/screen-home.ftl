# A draft that no licensed electrician has checked.

### Outside any job: the jobs, who is signed on, a new job, every lock that is on.

# The jobs.
home-title = Aufträge
home-sign-on-first = Niemand ist angemeldet. Zuerst den eigenen Namen antippen: alles wird unter diesem Namen gespeichert.
# life-critical
home-forgot = Dieses Telefon wurde aus einer Kopie zurückgespielt, oder ein anderes benutzt seinen Schlüssel. Nichts wird gespeichert, bis es mit neuem Schlüssel weitergeht. Danach Spannungsfreiheit neu feststellen.
home-forgot-comes-back = Was andere davon haben, kommt von selbst zurück.
# life-critical
home-aside-full = Zu viele Einträge sind zurückgestellt: Schlösser anderer fehlen hier womöglich. Nach den Schlössern an den Stellen richten. Beim Absender der Einträge nachfragen.
# life-critical
home-clocks-differ = Die Uhren zweier Telefone gehen verschieden. Die dieses Telefons mit einer dritten Uhr vergleichen. Geht sie falsch, sie stellen.
home-clock-right = Die Uhr dieses Telefons geht richtig
# life-critical
home-clock-right-done = Die Uhr dieses Telefons zählt. Was mit dem anderen Telefon festgestellt wurde, gilt hier nicht, bis dessen Uhr gestellt ist.
home-open-jobs = Offene Aufträge
home-no-open-job = Auf diesem Telefon ist kein Auftrag offen.
# Two jobs or two people of one name: $id tells them apart.
home-one-of-a-name = { $name } ({ $id })
# How far a job is. $stage is one of the stage- messages, $step one of the step- messages.
home-turn = { $stage }. Weiter: { $step }
home-this-phone = Dieses Telefon
home-signed-on = Angemeldet: { $name }
home-signed-on-tap = Alles wird unter diesem Namen gespeichert. Zum Ändern antippen.
# life-critical
home-owed =
    { $count ->
        [one] 1 Inhaber noch nicht informiert: Schloss in Abwesenheit abgenommen.
       *[other] { $count } Inhaber noch nicht informiert: Schlösser in Abwesenheit abgenommen.
    }
home-locks-on = Jetzt angebrachte Schlösser: { $count }
home-finished-jobs = Beendete Aufträge
# The state of a job, in a word.
home-handed-back = zurückgegeben
home-new-key = Mit neuem Schlüssel weiter
# life-critical
home-new-key-done = Dieses Telefon geht mit neuem Schlüssel weiter. Vor jeder Arbeit Spannungsfreiheit neu feststellen.
home-new-job = Neuer Auftrag

# Who is signed on, and new people.
people-title = Wer angemeldet ist
people-tap = Beim Übernehmen des Telefons den eigenen Namen antippen. Ab dann wird alles unter diesem Namen gespeichert.
people-pin-anew = PIN neu gesetzt { $when }, Zeuge: { $who }
# The state of a person, in a word.
people-is-signed-on = angemeldet
people-not-listed = Jemand, der nicht in der Liste steht
people-name = Name
people-name-hint = Vor- und Nachname
people-qualification = Qualifikation
people-qualification-hint = Wie auf Ausweis oder Zeugnis. Diese App beurteilt sie nicht.
people-telephone = Telefon
people-telephone-hint = Wo die Person wegen ihres Schlosses zu erreichen ist
people-add = Diese Person hinzufügen
people-added = { $name } steht jetzt in der Liste.

# A new job.
new-job-sign-on = Niemand ist angemeldet. Vor dem Eröffnen eines Auftrags den eigenen Namen antippen.
new-job-what = Was gemacht wird
new-job-what-hint = Z. B.: Schütz K3 tauschen
# $sites is a list of names.
new-job-known-sites = Hier bekannt: { $sites }
new-job-place = Ort am Standort
new-job-place-hint = Gebäude, Stockwerk, Raum
new-job-equipment = Betriebsmittel, das freigeschaltet wird
new-job-scope-hint = Woran gearbeitet wird und wo das endet. Leer: wie der Auftrag. Für alles darüber hinaus die Freischaltung neu ansehen.
# What follows is a country.
new-job-rules = Regeln, nach Land
new-job-order = Reihenfolge der Prüfung auf Spannungsfreiheit
new-job-order-of-site = Unterlagen nennen verschiedene Reihenfolgen. Die nehmen, die der Standort verlangt.
# How far the voltage of the supply may be from the nominal one.
new-job-tolerance = Toleranz der Versorgung
new-job-open = Diesen Auftrag eröffnen
new-job-opened = Auftrag eröffnet. { $name } ist für die Freischaltung verantwortlich.

# Every lock that is on, of all jobs.
board-title = Jetzt angebrachte Schlösser
# $caution is locks-no-clearance.
# life-critical
board-knows = Nur was dieses Telefon weiß. { $caution }
# life-critical
board-none = Dieses Telefon weiß von keinem angebrachten Schloss.
board-owed = In Abwesenheit abgenommen, Inhaber nicht informiert
# life-critical
board-tell = Jeden Inhaber informieren, bevor er weiterarbeitet.
board-near = Mit Codes, ohne Netz.
