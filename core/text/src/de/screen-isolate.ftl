# A draft that no licensed electrician has checked.

### The screens of isolating: loads switched off, each point opened, locked, signed and photographed.

isolate-no-loads = Keine Last ist aufgelistet.
isolate-order = In dieser Reihenfolge abschalten. Hingehen und nachsehen, oder nachsehen lassen, dass das Versorgte wirklich ausgeht.
isolate-seen = Was zu sehen war
isolate-seen-hint = { $circuit }: was sichtbar ausging, und wer es sah. Darf leer bleiben.
# Where nobody wrote what they saw.
isolate-seen-plain = Ging sichtbar aus
# Behind a load that is off: what was seen, and who saw it.
isolate-seen-by = { $seen } ({ $by })
isolate-off = { $circuit } ist aus und ging sichtbar aus
isolate-off-early = Außer der Reihe: { $circuit } ist aus und ging sichtbar aus
isolate-on-again = Wieder ein: { $by }
# The words of the rows of loads.
isolate-word-again = war aus, wieder ein
isolate-word-off = aus
isolate-word-now = jetzt abschalten
isolate-word-later = noch nicht aus

# life-critical
isolate-closed-beside = { $point } wurde für einen anderen Auftrag eingeschaltet: { $job }, { $when }. Gilt als unter Spannung stehend. Nachsehen, ob offen, und das angeben.
isolate-point = Freischaltstelle
isolate-known = An diesem Standort bekannt
isolate-known-of = { $label }, { $at }, aus: { $job }
isolate-opened = Geöffnet
isolate-closed = Eingeschaltet
isolate-sign = Schaltverbotsschild

isolate-another = Wenn es ein anderer Schalter ist
# life-critical
isolate-hold-both = Jedes Schloss an einer der beiden hält beide. Nur wer vor { $point } steht, gibt an, dass es zwei sind.
isolate-apart = Woran sie zu unterscheiden sind
isolate-apart-hint = Anderes Feld, andere Nummer an der Tür
isolate-two = Das sind zwei: diese hier, und { $label } aus: { $job }
isolate-none-of-these = Keine davon: ein anderer Schalter

# life-critical
isolate-listed-by = { $name } hat diese Stelle aufgelistet. Vor dem Öffnen nachsehen, ob das { $point } ist, Ort: { $at }, und ob sie trennt, was im Plan steht.
# life-critical
isolate-proves-nothing = Gilt als unter Spannung stehend. Öffnen beweist nichts: Spannungsfreiheit später feststellen, an der Arbeitsstelle.
# life-critical
isolate-open-already = Schon offen für { $held }. Hingehen und ansehen.
isolate-off-load = Lastfrei öffnen.
# life-critical
isolate-still-on = Noch ein: { $loads }. Öffnen unter Last kann einen Lichtbogen ziehen. Zuerst die Lasten abschalten.
isolate-how-opened = Wie wurde geöffnet?
isolate-opened-off-load = Lastfrei: es floss kein Strom
isolate-opened-on-load = Unter Last: das Gerät ist dafür gebaut
isolate-found = Wie vorgefunden
isolate-found-on = Ein: von mir ausgeschaltet
isolate-found-off = Schon aus
isolate-saw-off = Was sichtbar ausging
isolate-shows-open = Woran zu sehen ist, dass sie offen ist
isolate-shows-open-hint = Lampen, ein Display, die Stellung der Schaltmesser
# A statement of whoever taps it. $load: whether loads had to be off.
isolate-is-open =
    { $load ->
        [off] { $point } ist offen, lastfrei geöffnet
       *[any] { $point } ist offen
    }

isolate-locks = Schlösser, die jetzt daran hängen
isolate-padlock = Schloss
isolate-hasp = Schloss am Schließbügel
# life-critical
isolate-no-lock = Kein Schloss: { $how }
isolate-key-owner = Schlüssel beim Inhaber
isolate-key-box = Schlüssel im Schließkasten: { $holder }
isolate-lock = { $owner }: { $lock }, an: { $place }
isolate-lock-means = { $means }, { $key }
isolate-since = seit { $when }
isolate-sign-hangs = Das Schaltverbotsschild hängt an { $point }
isolate-photo-of = { $point }, Foto: { $by }. { $note }
isolate-photo-now = Jetzt das Foto aufnehmen
isolate-photo = Foto von { $point }
isolate-photo-hint =
    { $tag ->
        [yes] Darin lesbar: offene Stellung, Schloss, Schild, Beschriftung der Stelle und des Betriebsmittels, Codeschild.
       *[no] Darin lesbar: offene Stellung, Schloss, Schild, Beschriftung der Stelle und des Betriebsmittels.
    }
# life-critical
isolate-photo-elsewhere = Das letzte Foto zeigt das Codeschild einer anderen Stelle, nicht von { $point }. Es ist noch nicht im Protokoll gespeichert.
isolate-photo-waits = Das noch nicht gespeicherte Foto
isolate-photo-unsaved = Noch nicht gespeichert
isolate-photo-why = Warum es trotzdem gespeichert wird
isolate-photo-why-hint = Das bleibt beim Foto.
isolate-photo-save = Mit diesem Grund speichern
