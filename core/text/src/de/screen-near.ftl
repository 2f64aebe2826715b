# A draft that no licensed electrician has checked.

### Two phones beside each other, with no signal: each shows codes, and the other scans them.

near-title = Schlösser an ein Telefon daneben weitergeben
near-what-it-is = Zwei Telefone zeigen einander Aufträge und Schlösser als Codes. Ohne Netz, ohne Büro. Alles, was ankommt, wird geprüft.
# What the facts near-first, near-second and near-third are counted by.
near-one = 1
near-two = 2
near-three = 3
near-first = Eigenen Code zeigen. Das andere Telefon scannt ihn.
near-second = Das andere Telefon zeigt, was hier fehlt. Scannen.
near-third = Dann tauschen.
near-scan = Das andere Telefon scannen
near-show = Meinen Code zeigen
near-shows-has = Der eigene Code. Das andere Telefon scannt ihn.
# $count entries.
near-shows-entries =
    { $count ->
        [one] 1 Eintrag, den das andere Telefon nicht hat. Es scannt dies.
       *[other] { $count } Einträge, die das andere Telefon nicht hat. Es scannt dies.
    }
near-part = Teil { $part } von { $of }. Teile wechseln von selbst: beide Telefone ruhig halten.
near-drawing = Code { $part } von { $of }, für das andere Telefon zum Scannen.
near-stop = Nicht mehr zeigen

# Notices while codes are scanned.
near-unread = Code nicht vollständig gelesen. Das andere Telefon ruhig halten: es beginnt von vorn.
near-parts-here = { $here } von { $of } Teilen sind da. Halten, bis alle da sind.
near-has-all = Das andere Telefon hat alles, was dieses hat.
near-lacks =
    { $count ->
        [one] Dem anderen Telefon fehlt 1 Eintrag. Es scannt den Code, der jetzt gezeigt wird.
       *[other] Dem anderen Telefon fehlen { $count } Einträge. Es scannt die Codes, die jetzt gezeigt werden.
    }
near-nothing-new = Alles Gezeigte ist schon hier.
near-taken-in =
    { $count ->
        [one] Jetzt hier und geprüft: 1 Eintrag des anderen Telefons.
       *[other] Jetzt hier und geprüft: { $count } Einträge des anderen Telefons.
    }
near-some-aside = Einige wurden zurückgestellt: bei den Aufträgen nachsehen, die sie betreffen.
