# A draft that no licensed electrician has checked.
### Entries about a job that are put aside: what came from other phones and is not believed, until somebody has looked at the spot.

# The row that leads there.
aside-row =
    { $count ->
        [one] 1 anotación apartada
       *[other] { $count } anotaciones apartadas
    }
aside-all-seen = Todas miradas en el lugar.
aside-to-look-at = { $count } por mirar en el lugar.
aside-title = Anotaciones apartadas
aside-none = No hay nada apartado sobre esta intervención.
# life-critical
aside-count = Estas no están en el diario. Cada una cuenta hasta que alguien haya mirado en el lugar: un candado que conste en ella está puesto.
# $why is the reason why it is not believed.
aside-why = Apartada: { $why }.
# $by is when and by whom.
aside-looked-at-by = Mirada en el lugar: { $by }
aside-looked-at = mirada
aside-to-do = pendiente
aside-more = Y { $count } más, que aparecen a medida que se responden estas.
aside-one = Mirar en el lugar
aside-says = Dice
aside-recorded = Anotado
aside-device = Por el dispositivo
# $device is the beginning of what the device is known by.
aside-device-is = { $device }, anotación { $number }
aside-because = Apartada porque
# life-critical
aside-go-there = Ir a { $place }. El candado { $lock } cuenta como puesto hasta haber visto que no lo está.
aside-how = Cómo está en el lugar
aside-how-hint = A quién se preguntó y qué hay allí: otra persona tiene que entenderlo.
aside-leave-open = Dejarla sin responder
aside-answer = Guardar: miré en el lugar
aside-answered = En anotaciones apartadas, mirada
aside-lock = { $owner } en { $place }: { $lock }, de una anotación apartada
aside-counts = Cuenta como puesto: { $why }.
aside-saved = Guardado. La anotación sigue apartada y ya no impide que una verificación esté vigente.
