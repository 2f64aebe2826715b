# A draft that no licensed electrician has checked.

### What is asked about the device itself: who has it, PINs, the office, the rules.

ask-device-who-first = Zuerst anmelden. Was begonnen war, geht danach weiter.
ask-device-name = Namen der Person angeben.
ask-device-shorter = Kürzer fassen.
ask-device-pin = PIN eingeben.
ask-device-pin-new = Neue PIN eingeben.
ask-device-pin-twice = Die beiden sind nicht gleich. Neue PIN zweimal eingeben.
ask-device-pin-there = Hier gibt es schon eine PIN. Diese eingeben oder mit Zeugen neu setzen.
ask-device-pin-unset = Hier ist keine PIN gesetzt. Eine setzen.
ask-device-pin-unreadable = Die hier gespeicherte PIN ist nicht lesbar. Mit Zeugen neu setzen.
ask-device-pin-by-no-chance = Das System gab keine Zufallsbytes her, deshalb kann keine PIN gesetzt werden. Ohne PIN weiter.
ask-device-witness = Zeugen wählen.
ask-device-witness-is-other = Zeuge ist eine andere Person.
ask-device-witness-pin = Der Zeuge gibt seine PIN ein.
ask-device-office-as-witness = Den Code eingeben, den das Büro dafür erzeugt hat.
ask-device-office-code = Den Code scannen, den das Büro zeigt, oder abschreiben: er beginnt mit stillbar-enrol.
ask-device-office-code-whole = Das ist kein Code eines Büros. Dort einen anfordern und vollständig eingeben.
ask-device-office-code-of-ours = Dieser Code gehört zu einem anderen Büro als dem dieses Geräts. Beim eigenen Büro einen anfordern.
ask-device-office-not = Das ist kein Code eines Büros.
ask-device-tag = Die 16 Zeichen angeben, die neben dem Code aufgedruckt sind.
ask-device-site = Standort wählen.
ask-device-limit-ac = Grenzwert in Volt AC angeben.
ask-device-limit-dc = Grenzwert in Volt DC angeben.
ask-device-clock-uncontradicted = Jetzt widerspricht kein anderes Telefon dieser Uhr.
ask-device-key-goes-on = Dieses Telefon hat nichts vergessen: sein Schlüssel gilt weiter.
