### The PIN of who takes the phone, or goes on after a pause, where several people use it.

pin-title = PIN of { $name }
pin-paused = Nobody touched this phone for 10 minutes, or it was restarted. After this you go on where you were.
pin-later = Back, and do it later
pin-digits-hint = { $from } to { $to } digits. It stays on this phone.
pin-new = New PIN
pin-new-again = New PIN again
pin-field = PIN
pin-field-hint = { $name } types it.
pin-sign-on = Sign on
pin-why = Several people use this phone. Set a PIN, so that nobody signs as you.
pin-set = Set this PIN
pin-without-says = Without it, board and record say "no PIN" behind what { $name } does.
pin-without = Go on without PIN
pin-forgotten = If it is forgotten
pin-office-agreed = The office has agreed. Set a new PIN.
pin-set-new = Set the new PIN
pin-no-witness = Nobody else has a PIN here to be your witness. Go on without.
pin-witness = Witness beside you
pin-of-witness = PIN of the witness
pin-of-witness-hint = The witness types it.
pin-set-witnessed = Set the new PIN with this witness
pin-office-code = Code from the office
pin-office-code-hint = One that was made there just now.
pin-ask-office = Ask the office as witness
pin-office-asked = The office is asked. Its answer comes on this screen.
pin-signed-on = { $name } is signed on.
