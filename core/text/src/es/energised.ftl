# A draft that no licensed electrician has checked.
### What does not look as it should with the supply back. $at is a pair, $other what the lines are read to.

odd-line-missing = { $at }: { $volts } V. Falta una fase: desconectar otra vez y después buscar la causa.
odd-neutral-missing = { $at }: { $volts } V. { $other } falta, o está cambiado con una fase: desconectar otra vez y después buscar la causa.
odd-neutral-off = { $other } está a { $volts } V del centro de las fases: falta. Desconectar otra vez y después buscar la causa.
odd-outside = { $at }: { $volts } V, fuera de { $least } a { $most } V ({ $tolerance }). Buscar la causa.
odd-not-at-earth = { $at }: { $volts } V, y esta fase debería estar a tierra.
odd-at-reference = { $at }: { $volts } V, y la fase está: un defecto a tierra, o una alimentación con esta fase a tierra.
odd-not-together = Fase a fase es { $ratio } veces fase a { $other }, y debería ser { $wanted } veces. Leer las dos otra vez.
odd-unbalanced = Las tensiones entre fases tienen un desequilibrio del { $percent } %. Buscar un neutro interrumpido o una fase perdida.
odd-delta-corner = { $line }: estas son las tensiones de un triángulo con esta fase a tierra. Comprobar qué alimentación es.
odd-delta-high-leg = { $line }: estas son las tensiones de un triángulo con el punto medio a tierra; esta es la fase alta. Comprobar qué alimentación es.
