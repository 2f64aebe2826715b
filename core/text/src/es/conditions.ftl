# A draft that no licensed electrician has checked.
### What the plan of a dead test demands and a case does not show: a sentence each.

unmet-indicator-before = No consta que el detector funcionara antes de las comprobaciones.
unmet-indicator-after = No consta que el detector funcionara después de las comprobaciones.
# $current is AC or DC, $lowest where the indicator begins, $by where it has to.
unmet-lights-never = El detector no indica { $current }; aquí tiene que hacerlo desde { $by } V. Que no indicara no demuestra nada: usar uno que empiece antes, o leer en cifras.
unmet-lights-late = El detector empieza a { $lowest } V { $current }; aquí tiene que hacerlo desde { $by } V. Que no indicara no demuestra nada: usar uno que empiece antes, o leer en cifras.
unmet-lights-unsaid = No se dijo desde dónde indica el detector en { $current } y se toman { $lowest } V; aquí tiene que hacerlo desde { $by } V. Que no indicara no demuestra nada: usar uno que empiece antes, o leer en cifras.
unmet-limit-too-high =
    Un límite para ausencia de tensión tiene que estar aquí por debajo de { $bound } V { $current }: por debajo de { $current ->
        [DC] 120
       *[AC] 50
    } V (EN 61243-3) y de la mitad de la tensión más baja que una fuente pone en una fase o polo.
unmet-no-earth = No hay conductor de protección entre los conductores: no se leyó nada contra tierra.
unmet-earth-not-proved = No se demostró que la referencia sea tierra: si está interrumpida, conductores en tensión pueden leer cero en todos los pares.
# $it: whether the supply is known not to be earthed.
unmet-known-line =
    Una fase que se sabe en tensión no demuestra aquí la tierra: { $it ->
        [yes] en IT una fase en tensión puede no mostrar nada contra tierra
       *[no] no se sabe el esquema de tierra, y en IT una fase en tensión puede no mostrar nada contra tierra
    }. Medir hasta el borne principal de tierra, o hasta una segunda tierra.
unmet-line-closed = { $line }: ningún punto lo abre. Abrir todas las fases y polos, y bloquear.
unmet-neutral-closed = { $neutral } no está abierto y tiene que estarlo ({ $earthing }): puede no estar al potencial de tierra. Abrirlo también.
unmet-neutral-closed-unknown = { $neutral } no está abierto y tiene que estarlo (no se sabe el esquema de tierra): puede no estar al potencial de tierra. Abrirlo también.
# $pairs is a list of pairs; $more counts those that are not named.
unmet-not-read = Sin leer todavía: { $pairs }.
unmet-not-read-more = Sin leer todavía: { $pairs } y { $more } más.
unmet-pair-dc = { $pair } (DC)
unmet-not-waited = { $what }: su rótulo dice { $label } s y se esperaron { $waited } s.
unmet-wait-unsaid = { $what }: su rótulo dice { $label } s y no se dijo cuánto se esperó.
unmet-charge-not-read = Falta la lectura en DC de { $pair } en { $what }: el tiempo solo no demuestra nada.
unmet-charge-not-read-own = Falta la lectura en DC en los bornes ({ $what }): el tiempo solo no demuestra nada.

# What holds a charge, where nobody named it.
holder-drive = el variador
holder-ups = el UPS (SAI)
holder-inverter = el inversor
