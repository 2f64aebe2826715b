# A draft that no licensed electrician has checked.

### The PIN of who takes the phone, or goes on after a pause, where several people use it.

pin-title = PIN von { $name }
pin-paused = 10 Minuten lang hat niemand dieses Telefon berührt, oder es wurde neu gestartet. Danach geht es an derselben Stelle weiter.
pin-later = Zurück, später erledigen
pin-digits-hint = { $from } bis { $to } Ziffern. Die PIN bleibt auf diesem Telefon.
pin-new = Neue PIN
pin-new-again = Neue PIN noch einmal
pin-field = PIN
pin-field-hint = Eingabe durch { $name }.
pin-sign-on = Anmelden
pin-why = Mehrere benutzen dieses Telefon. PIN setzen, damit niemand unter fremdem Namen unterschreibt.
pin-set = Diese PIN setzen
pin-without-says = Ohne sie steht auf Anzeige und Protokoll „ohne PIN“ bei allem von { $name }.
pin-without = Ohne PIN weiter
pin-forgotten = Wenn sie vergessen ist
pin-office-agreed = Das Büro hat zugestimmt. Neue PIN setzen.
pin-set-new = Die neue PIN setzen
pin-no-witness = Niemand sonst hat hier eine PIN und könnte Zeuge sein. Ohne PIN weiter.
pin-witness = Anwesender Zeuge
pin-of-witness = PIN des Zeugen
pin-of-witness-hint = Eingabe durch den Zeugen.
pin-set-witnessed = Die neue PIN mit diesem Zeugen setzen
pin-office-code = Code vom Büro
pin-office-code-hint = Einer, der dort gerade erzeugt wurde.
pin-ask-office = Das Büro als Zeugen fragen
pin-office-asked = Das Büro ist gefragt. Die Antwort kommt auf diesen Bildschirm.
pin-signed-on = { $name } ist angemeldet.
