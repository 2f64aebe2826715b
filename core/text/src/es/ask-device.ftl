# A draft that no licensed electrician has checked.
### What is asked about the device itself: who has it, PINs, the office, the rules.

ask-device-who-first = Decir primero quién es. Lo que se hizo sigue después.
ask-device-name = Escribir el nombre de la persona.
ask-device-shorter = Escribirlo más corto.
ask-device-pin = Escribir el PIN.
ask-device-pin-new = Escribir un PIN nuevo.
ask-device-pin-twice = Los dos no son iguales. Escribir el PIN nuevo dos veces.
ask-device-pin-there = Aquí ya tiene un PIN. Escribirlo, o fijarlo de nuevo con un testigo.
ask-device-pin-unset = Aquí no hay ningún PIN fijado. Fijar uno.
ask-device-pin-unreadable = El PIN guardado aquí no se puede leer. Fijarlo de nuevo con un testigo.
ask-device-pin-by-no-chance = El sistema no dio bytes aleatorios y no se puede fijar un PIN. Seguir sin él.
ask-device-witness = Elegir quién es el testigo.
ask-device-witness-is-other = El testigo es otra persona.
ask-device-witness-pin = El testigo escribe su PIN.
ask-device-office-as-witness = Escribir el código que la oficina hizo para esto.
ask-device-office-code = Escanear el código que muestra la oficina, o copiarlo: empieza por stillbar-enrol.
ask-device-office-code-whole = Este no es el código de una oficina. Pedir uno allí y escribirlo entero.
ask-device-office-code-of-ours = Este código es de otra oficina, no de la de este dispositivo. Pedir uno a la propia oficina.
ask-device-office-not = Este no es el código de una oficina.
ask-device-tag = Escribir los 16 caracteres impresos junto a la etiqueta.
ask-device-site = Elegir el sitio.
ask-device-limit-ac = Escribir el límite en voltios AC.
ask-device-limit-dc = Escribir el límite en voltios DC.
ask-device-clock-uncontradicted = Ahora ningún otro teléfono contradice este reloj.
ask-device-key-goes-on = Este teléfono no ha olvidado nada: su clave sigue.
