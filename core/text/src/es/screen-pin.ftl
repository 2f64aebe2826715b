# A draft that no licensed electrician has checked.
### The PIN of who takes the phone, or goes on after a pause, where several people use it.

pin-title = PIN de { $name }
pin-paused = Nadie tocó este teléfono en 10 minutos, o se reinició. Después de esto se sigue donde estaba.
pin-later = Volver, y hacerlo más tarde
pin-digits-hint = De { $from } a { $to } cifras. Se queda en este teléfono.
pin-new = PIN nuevo
pin-new-again = PIN nuevo otra vez
pin-field = PIN
pin-field-hint = Lo escribe { $name }.
pin-sign-on = Identificarse
pin-why = Varias personas usan este teléfono. Fijar un PIN, para que nadie firme en nombre de otro.
pin-set = Fijar este PIN
pin-without-says = Sin él, el tablón de la oficina y el acta dicen «sin PIN» detrás de lo que hace { $name }.
pin-without = Seguir sin PIN
pin-forgotten = Si se ha olvidado
pin-office-agreed = La oficina ha aceptado. Fijar un PIN nuevo.
pin-set-new = Fijar el PIN nuevo
pin-no-witness = Aquí nadie más tiene un PIN para ser testigo. Seguir sin él.
pin-witness = Testigo al lado
pin-of-witness = PIN del testigo
pin-of-witness-hint = Lo escribe el testigo.
pin-set-witnessed = Fijar el PIN nuevo con este testigo
pin-office-code = Código de la oficina
pin-office-code-hint = Uno que se acaba de hacer allí.
pin-ask-office = Pedir a la oficina que sea testigo
pin-office-asked = Se preguntó a la oficina. Su respuesta llega a esta pantalla.
pin-signed-on = { $name } usa ahora este teléfono.
