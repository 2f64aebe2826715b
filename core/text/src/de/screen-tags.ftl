# A draft that no licensed electrician has checked.

### Tags: scanning one, what this phone knows of it, and the tags of a point.

tags-scan-title = Codeschild scannen
tags-scan-what = Das Codeschild sagt, wessen Schloss hängt, wer den Schlüssel hat und seit wann.
tags-look-up = Nachschlagen
tags-scan = Mit der Kamera scannen
tags-typed = Oder den Code wie aufgedruckt
tags-typed-hint = 16 Zeichen, in Vierergruppen
tags-title = Codeschild { $tag }
# $caution is locks-no-clearance, here and below.
# life-critical
tags-unknown = Dieses Telefon weiß nichts von diesem Codeschild. { $caution }
tags-scan-another = Anderes Codeschild scannen
tags-hangs-at = Hängt an
tags-place = { $point }, { $place }
# life-critical
tags-given-up = Dieses Codeschild wurde aufgegeben: { $why }. Nicht danach richten: die Stelle selbst ansehen.
# life-critical
tags-no-lock = Dieses Telefon weiß von keinem Schloss an dieser Stelle, für keinen Auftrag. { $caution }
tags-jobs = Aufträge
tags-hung = Codeschild angebracht { $when }
tags-hung-at = Codeschild angebracht an { $point } { $when }
# $id tells jobs of one title apart.
tags-job = { $job } ({ $id })
tags-same-point = Dieselbe Stelle, soweit bekannt: { $point }, { $place }
# How old what is shown is.
# life-critical
tags-as-known = Wie diesem Telefon bekannt, Stand { $now }. Büro zuletzt erreicht { $when }; andere Telefone wissen womöglich von weiteren Schlössern.
# life-critical
tags-as-known-alone = Wie diesem Telefon bekannt, Stand { $now }. Es hat kein Büro erreicht; andere Telefone wissen womöglich von weiteren Schlössern.
tags-lock-on = Schloss von { $owner } an { $point }
tags-key-holder = Schlüssel
tags-since = Seit
tags-of-job = Auftrag
tags-of-job-is = { $job }, { $place }
tags-lock = Schloss { $lock }
tags-about-lock = Alles zu diesem Schloss
tags-telephone = Telefon
tags-telephone-none = nicht angegeben
tags-ring = Anrufen: { $owner }
tags-photo = { $job }, Foto von { $by }
tags-pictures = Bilder

# The tags of a point.
tags-none-yet = Noch kein Codeschild
tags-read-by = { $tag }, gelesen { $by }
tags-not-read = { $tag }, in diesem Auftrag nicht gelesen
tags-of-point = Codeschild von { $point }
tags-no-point = Diese Freischaltstelle ist nicht in diesem Auftrag
# life-critical
tags-known-elsewhere = Codeschild { $tag } ist bekannt als das von { $known }, nicht von { $point }. Nachsehen, welcher Schalter das hier ist.
tags-moved-why = Wenn es wirklich jetzt hier hängt: warum
tags-moved-why-hint = Z. B.: der Schalter wurde getauscht
tags-hangs-here-now = Das Codeschild hängt jetzt an { $point }
tags-blank = Codeschild { $tag } ist leer: dieses Telefon kennt keine Stelle, an der es hängt.
tags-hangs-here = Es hängt an { $point }
tags-stick = Ein leeres Codeschild neben den Schalter kleben, wo es bleibt, wenn eine Abdeckung abgenommen wird. Dann scannen.
tags-hangs-since = hängt hier seit { $by }
tags-read = Gelesen
tags-use-this = Dieses Codeschild verwenden
tags-lost = Wenn ein Codeschild weg ist: was damit geschah
tags-lost-hint = Verloren, beschädigt, abgenommen
tags-gone = Codeschild { $tag } ist weg
tags-scan-here = Das Codeschild hier scannen
tags-was-given-up = Das Codeschild ist aufgegeben. Ein neues kleben und scannen.
tags-this-is = Laut Codeschild ist das { $point }.
tags-is-blank = Ein leeres Codeschild. Angeben, wo es hängt.
tags-at-other-site = { $point } an einem anderen Standort
# life-critical
tags-belongs = Dieses Codeschild gehört zu { $known }, nicht zu { $point }.
