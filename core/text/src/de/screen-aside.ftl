# A draft that no licensed electrician has checked.

### Entries about a job that are put aside: what came from other phones and is not believed, until somebody has looked at the spot.

# The row that leads there.
aside-row =
    { $count ->
        [one] 1 Eintrag zurückgestellt
       *[other] { $count } Einträge zurückgestellt
    }
aside-all-seen = Alle angesehen.
aside-to-look-at = { $count } anzusehen, vor Ort.
aside-title = Zurückgestellte Einträge
aside-none = Zu diesem Auftrag ist nichts zurückgestellt.
# life-critical
aside-count = Diese stehen nicht im Journal. Jeder zählt, bis jemand vor Ort nachgesehen hat: ein Schloss darin gilt als angebracht.
# $why is the reason why it is not believed.
aside-why = Zurückgestellt: { $why }.
# $by is when and by whom.
aside-looked-at-by = Angesehen: { $by }
aside-looked-at = angesehen
aside-to-do = zu tun
aside-more = Und { $count } weitere, sie erscheinen, sobald diese beantwortet sind.
aside-one = Vor Ort nachsehen
aside-says = Inhalt
aside-recorded = Eingetragen
aside-device = Von Gerät
# $device is the beginning of what the device is known by.
aside-device-is = { $device }, Eintrag { $number }
aside-because = Zurückgestellt, weil
# life-critical
aside-go-there = Hingehen: { $place }. Schloss { $lock } gilt als angebracht, bis vor Ort gesehen wurde, dass es nicht hängt.
aside-how = Wie es vor Ort ist
aside-how-hint = Wer gefragt wurde und was dort ist: eine andere Person muss es verstehen.
aside-leave-open = Offen lassen
aside-answer = Speichern: vor Ort nachgesehen
aside-answered = In zurückgestellten Einträgen, angesehen
aside-lock = { $owner }, an: { $place }: { $lock }, aus zurückgestelltem Eintrag
aside-counts = Gilt als angebracht: { $why }.
aside-saved = Gespeichert. Der Eintrag bleibt zurückgestellt und verhindert keinen Nachweis mehr.
