# A draft that no licensed electrician has checked.

### What a company and its sites set: the limit for dead, how old a proof may get, the company's own rules.

# $limit is the message limit-set.
ruled-limit-none-short = Kein Grenzwert für Spannungsfreiheit gesetzt.
# life-critical
ruled-limit-none = Kein Grenzwert gesetzt: jede Zahl außer 0 zählt als Anzeige.
ruled-title = Regeln von Firma und Standorten
ruled-limit = Grenzwert für Spannungsfreiheit
# life-critical
ruled-limit-holds = Für Aufträge, die ab jetzt eröffnet werden. Eine leuchtende Lampe ist eine Anzeige, unabhängig vom Grenzwert.
ruled-save-limit = Grenzwert speichern, unterschrieben von { $name }
ruled-ask = Die verantwortliche Person fragen
ruled-age = Wie alt ein Nachweis werden darf
# Minutes. "Our rule": no standard that was found names figures.
ruled-age-most = Höchstens { $between } min zwischen zwei Funktionsprüfungen des Spannungsprüfers, und { $holds } min für einen Nachweis (unsere Regel, keine Quelle). Ein Standort darf weniger setzen.
ruled-a-site = Ein Standort
ruled-site-set = { $between } min zwischen Funktionsprüfungen, { $holds } min für einen Nachweis
ruled-site = Standort
ruled-between = Minuten zwischen zwei Funktionsprüfungen
ruled-holds = Minuten, die ein Nachweis gilt
ruled-minutes-hint = 1 bis { $most }
ruled-save-site = Für diesen Standort speichern, unterschrieben von { $name }
# In the place of a name.
ruled-nobody = noch niemand
ruled-limit-ac = Grenzwert in Volt AC
ruled-limit-ac-hint = Unter 50, z. B. 10
ruled-limit-dc = Grenzwert in Volt DC
ruled-limit-dc-hint = Unter 120, z. B. 10
ruled-limit-rule = Regel, die ihn setzt
ruled-limit-rule-hint = Wie die Firma sie nennt, mit Datum
# A text that is sent to the person who is responsible.
ruled-ask-text = Wir stellen Spannungsfreiheit mit einem zweipoligen Spannungsprüfer fest. Welche Zahl zählt an unseren Standorten als keine Spannung? Bitte einen Grenzwert in Volt AC (unter 50) und einen in Volt DC (unter 120) nennen, und die Regel, die sie setzt. Bis dahin zählt jede Zahl außer 0 als Anzeige.
ruled-asked = Der Text ist bereit zum Senden. Kein Grenzwert ist gesetzt, bis jemand unter „Regeln von Firma und Standorten“ einen speichert.
ruled-change = Der Grenzwert für Spannungsfreiheit ändert sich
ruled-change-charge = Nur { $name } ändert ihn, verantwortlich für diese Freischaltung.
# life-critical
ruled-change-ends = Die Änderung beendet den Nachweis.
ruled-change-limit = Grenzwert ändern, unterschrieben von { $name }
ruled-no-limit = Kein Grenzwert: nur 0 zählt, unterschrieben von { $name }

# Rules of a company.
ruled-company-heading = Regeln der Firma
ruled-company-none = Hier hat kein Standort Firmenregeln. Das Büro sendet sie, oder die Datei einfügen.
ruled-company-version-by = { $version } ({ $by })
ruled-company-hold = Für Aufträge, die ab jetzt eröffnet werden. Firmenregeln verlangen nur mehr oder setzen weniger.
ruled-company-site = Standort der Datei
ruled-company-file-field = Datei mit Regeln
ruled-company-file-hint = Der ganze Text der Datei, die die Firma gegeben hat
ruled-company-save = Diese Datei speichern, unterschrieben von { $name }
# $version is which rules, of which company.
ruled-company-saved = { $version }. Aufträge, die hier ab jetzt eröffnet werden, folgen dem.
ruled-company-of-job = Firmenregeln
ruled-company-newer = Neue Aufträge hier folgen { $version }. Dieser folgt weiter denen, mit denen er eröffnet wurde.
# On the page of a job that was opened where no rules of a company were known.
ruled-company-none-known = Beim Eröffnen dieses Auftrags waren keine Firmenregeln bekannt.
# The same, once some were heard of. $when says when, and by whom.
ruled-company-heard = Beim Eröffnen dieses Auftrags waren keine Firmenregeln bekannt. Er läuft nach diesen, seit von ihnen gehört wurde: { $when }.
ruled-company-whom-to-call = Wen anrufen
ruled-company-ringing = Anruf: { $who }.
