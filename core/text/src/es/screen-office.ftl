# A draft that no licensed electrician has checked.
### The office: joining one, what waits to be sent and why, and what does not agree.

office-alone = Este teléfono trabaja por su cuenta.
office-reached = { $office }, último contacto: { $when }
office-not-reached = { $office }, sin contacto todavía
office-all-sent = Todo enviado.
office-unsent =
    { $count ->
        [one] 1 anotación espera para enviarse.
       *[other] { $count } anotaciones esperan para enviarse.
    }
office-title = Oficina
# Nobody has joined an office yet.
# life-critical
office-none = Este teléfono trabaja por su cuenta: otros no ven sus candados. Una oficina comparte lo anotado entre teléfonos de los mismos sitios.
office-scan = Escanear el código de la oficina
office-name = Oficina
office-at = { $office }, { $address }
office-last-reached = Último contacto
office-not-yet = todavía no
office-now = Ahora
office-running = Sincronizando.
office-next-try = Próximo intento
office-next = { $when }, o en cuanto haya algo nuevo
office-another = Otra oficina
office-scan-another = Escanear el código de otra oficina
office-exchange = Sincronizar ahora
office-waiting = Por enviar
office-entries = Anotaciones
office-entries-unsent = { $count }, guardadas en este teléfono. Van primero, en orden.
# Photos are sent in three sizes, the smallest first.
office-pictures-small = Fotos pequeñas
office-pictures-larger = Fotos más grandes
office-pictures-original = Fotos originales
office-pictures-sent = Enviado todo lo que pidió la oficina.
office-pictures-going = { $count }, en camino.
office-pictures-after = { $count }, después de las anotaciones.
office-pictures-wifi = { $count }, en espera de Wi-Fi u otra conexión sin coste.
office-send-originals = Enviar las originales por esta conexión
office-photos-gone =
    { $count ->
        [one] 1 foto que pide la oficina ya no está en este teléfono.
       *[other] { $count } fotos que pide la oficina ya no están en este teléfono.
    }
office-aside-there =
    { $count ->
        [one] La oficina apartó 1 anotación de este teléfono hasta que alguien allí la mire. Comprobar el reloj de este teléfono. Preguntar a la oficina.
       *[other] La oficina apartó { $count } anotaciones de este teléfono hasta que alguien allí las mire. Comprobar el reloj de este teléfono. Preguntar a la oficina.
    }
office-old-key = La oficina conoce este teléfono por su clave antigua y aparta lo que envía. Escanear un código nuevo de la oficina.
# life-critical
office-differs = Oficina y teléfono no coinciden, ni después de traer todo otra vez. Aquí no se cambió nada. Pueden faltar aquí candados de otras personas.
office-compare = Comparar otra vez
office-put-aside = Apartadas aquí
# life-critical
office-not-in-journal = Estas no están en el diario. Las anotaciones sobre una intervención están en la lista de esa intervención: mirar en el lugar.
# $device is the beginning of what the device is known by.
office-aside = Anotación { $number } del dispositivo { $device }
office-code = O el código como texto
office-code-hint = Empieza por stillbar-enrol
office-use-code = Usar este código
office-address = Oficina en
office-everything-goes = Todo lo anotado en este teléfono, pasado y futuro, va a esta oficina con nombres y fotos. Otras personas de los mismos sitios lo ven.
office-unencrypted = Esta dirección no está cifrada: cualquiera en el camino puede leerlo. Solo para pruebas.
office-asking = Preguntando a la oficina.
office-join = Unirse a esta oficina
office-do-not-join = No unirse

office-asked = Preguntado. Esta pantalla cambia cuando la oficina responda.
office-originals-go = Las originales se envían ahora.
office-compared = Se compara todo otra vez.
