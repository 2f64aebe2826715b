# A draft that no licensed electrician has checked.

### The office: joining one, what waits to be sent and why, and what does not agree.

office-alone = Dieses Telefon arbeitet für sich allein.
office-reached = { $office }, zuletzt erreicht { $when }
office-not-reached = { $office }, noch nicht erreicht
office-all-sent = Alles gesendet.
office-unsent =
    { $count ->
        [one] 1 Eintrag wartet auf das Senden.
       *[other] { $count } Einträge warten auf das Senden.
    }
office-title = Büro
# Nobody has joined an office yet.
# life-critical
office-none = Dieses Telefon arbeitet für sich allein: andere sehen seine Schlösser nicht. Ein Büro teilt Einträge zwischen Telefonen an denselben Standorten.
office-scan = Code des Büros scannen
office-name = Büro
office-at = { $office }, { $address }
office-last-reached = Zuletzt erreicht
office-not-yet = noch nicht
office-now = Jetzt
office-running = Abgleich läuft.
office-next-try = Nächster Versuch
office-next = { $when }, oder sobald es etwas Neues gibt
office-another = Anderes Büro
office-scan-another = Code eines anderen Büros scannen
office-exchange = Jetzt abgleichen
office-waiting = Wartet auf das Senden
office-entries = Einträge
office-entries-unsent = { $count }, auf diesem Telefon gespeichert. Einträge gehen zuerst, der Reihe nach.
# Photos are sent in three sizes, the smallest first.
office-pictures-small = Kleine Bilder
office-pictures-larger = Größere Bilder
office-pictures-original = Originalfotos
office-pictures-sent = Alle gesendet, die das Büro verlangt hat.
office-pictures-going = { $count }, unterwegs.
office-pictures-after = { $count }, nach den Einträgen.
office-pictures-wifi = { $count }, warten auf WLAN oder eine andere kostenlose Verbindung.
office-send-originals = Originale über diese Verbindung senden
office-photos-gone =
    { $count ->
        [one] 1 Foto, das das Büro verlangt, ist nicht mehr auf diesem Telefon.
       *[other] { $count } Fotos, die das Büro verlangt, sind nicht mehr auf diesem Telefon.
    }
office-aside-there =
    { $count ->
        [one] Das Büro hat 1 Eintrag dieses Telefons zurückgestellt, bis dort jemand nachsieht. Uhr dieses Telefons prüfen. Büro fragen.
       *[other] Das Büro hat { $count } Einträge dieses Telefons zurückgestellt, bis dort jemand nachsieht. Uhr dieses Telefons prüfen. Büro fragen.
    }
office-old-key = Das Büro kennt dieses Telefon unter seinem alten Schlüssel und stellt zurück, was es sendet. Einen neuen Code des Büros scannen.
# life-critical
office-differs = Büro und Telefon stimmen nicht überein, auch nach neuem Abruf von allem. Hier wurde nichts geändert. Schlösser anderer fehlen hier womöglich.
office-compare = Neu vergleichen
office-put-aside = Hier zurückgestellt
# life-critical
office-not-in-journal = Diese stehen nicht im Journal. Einträge zu einem Auftrag stehen bei diesem Auftrag: vor Ort nachsehen.
# $device is the beginning of what the device is known by.
office-aside = Eintrag { $number } von Gerät { $device }
office-code = Oder den Code als Text
office-code-hint = Er beginnt mit stillbar-enrol
office-use-code = Diesen Code verwenden
office-address = Büro unter
office-everything-goes = Jeder Eintrag auf diesem Telefon, bisherige und künftige, geht mit Namen und Fotos an dieses Büro. Andere an denselben Standorten sehen das.
office-unencrypted = Diese Adresse ist nicht verschlüsselt: unterwegs kann jeder mitlesen. Nur zum Ausprobieren.
office-asking = Büro wird gefragt.
office-join = Diesem Büro beitreten
office-do-not-join = Nicht beitreten

office-asked = Gefragt. Dieser Bildschirm ändert sich, wenn das Büro antwortet.
office-originals-go = Die Originale gehen jetzt hinaus.
office-compared = Alles wird neu verglichen.
