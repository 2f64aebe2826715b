# A draft that no licensed electrician has checked.
### What the judge finds in readings: why the verdict is what it is, and what may be behind them.

judge-failed-before = El detector no funcionó en su prueba antes de las comprobaciones: ninguna lectura cuenta. Tratar como si estuviera en tensión.
judge-failed-after = El detector falló en su prueba después de las comprobaciones: ninguna lectura desde la primera prueba cuenta. Tratar como si estuviera en tensión.
judge-reference-failed = Falló la comprobación de la referencia: lo que se apoya en ella no vale nada.
# $at is a pair or a place; $dc whether it is direct voltage.
judge-read =
    { $dc ->
        [yes] { $at }: se leyeron { $volts } V DC.
       *[no] { $at }: se leyeron { $volts } V.
    }
judge-read-limit =
    { $dc ->
        [yes] { $at }: se leyeron { $volts } V DC; el límite es { $limit } V.
       *[no] { $at }: se leyeron { $volts } V; el límite es { $limit } V.
    }
judge-lit-to =
    { $dc ->
        [yes] { $at }: encendido hasta { $volts } V DC.
       *[no] { $at }: encendido hasta { $volts } V.
    }
judge-lit =
    { $dc ->
        [yes] { $at }: se encendió el detector en DC.
       *[no] { $at }: se encendió el detector.
    }
judge-lit-more = También otras lecturas: { $more } más.
judge-all-read = Se leyeron todos los pares ({ $pairs }) sin ninguna indicación, y el detector funcionó antes y después.
# $limits is one limit or two.
judge-all-read-limit = Se leyeron todos los pares ({ $pairs }) sin ningún detector encendido y sin ningún valor por encima de { $limits }, y el detector funcionó antes y después.
judge-limit = { $volts } V { $current }
judge-reference =
    Se demostró que la referencia es tierra: { $way ->
        [known-line] una fase que se sabe en tensión dio contra ella la tensión completa
        [second-earth] se leyó contra una segunda tierra, independiente
        [continuity] se midió su camino hasta el borne principal de tierra
       *[none] no demostrado
    }.
judge-low-impedance = Una impedancia baja hace caer una tensión de interferencia solo mientras toca.

neutral-joined = { $neutral } está abierto y sigue unido a { $earth }: una segunda unión, o un neutro prestado de otro circuito.
neutral-joined-tt = { $neutral } está abierto y sigue unido a { $earth }: un defecto entre ellos, detrás del punto de corte.
neutral-joined-it = { $neutral } está unido a { $earth } en una alimentación que no está puesta a tierra: un primer defecto, o no es una alimentación IT.
neutral-not-joined = { $neutral } no está abierto y no está unido a { $earth }: uno de los dos está interrumpido entre aquí y su unión.
neutral-no-continuity = { $neutral } no está abierto y no apareció continuidad a { $earth }: el detector no la muestra, o uno de los dos está interrumpido entre aquí y su unión.

# What may be behind the readings; $which are conductors.
cause-no-voltage = Las lecturas son las que dan conductores al mismo potencial.
cause-neutral-drop = { $which }: a unos voltios de tierra, como lo pone la corriente de otros circuitos que lo comparten.
cause-not-isolated = { $which }: se lee como si no se hubiera abierto nada.
cause-one-line-live = { $which }: en tensión; las otras fases no tienen alimentación.
cause-two-lines-live = { $which }: en tensión; la tercera fase no tiene alimentación o depende de ellas a través de cargas.
cause-backfeed = { $which }: al mismo potencial, lejos de neutro y tierra; una fase alimenta a todas a través de cargas o devanados.
cause-open-neutral = { $which }: lejos de su punto de estrella, y la alimentación está en tensión. Está interrumpido en el lado de la alimentación, y las cargas lo desplazan.
cause-borrowed-neutral = { $which }: en tensión mientras las fases de este circuito no tienen alimentación; por él vuelve una carga de otro circuito.
cause-other-source = { $which }: se lee como alimentado por una fuente que no es de la alimentación desconectada, otra fase o contrafase.
cause-floating-supply = Las fases están en tensión en una alimentación que no está puesta a tierra. Las lecturas contra tierra dependen de capacitancia y aislamiento, y aquí no dicen nada.
cause-broken-reference = { $which }: no está donde debería estar la tierra; la referencia está interrumpida, flota o está ella misma en tensión.
cause-induced = { $which }: se lee como hilos sin alimentación que van junto a otros en tensión, una tensión por capacitancia.
# $which is a pair.
cause-misplaced = La lectura { $which } no encaja con las demás: no hay potenciales que den todas.
# $which are pairs and places.
cause-direct-voltage = Hay DC en { $which }: energía acumulada, una batería u otra fuente DC.
cause-unexplained = Ninguna causa que aquí se conozca da estas lecturas.
# Behind a cause where many conductors were read.
cause-of-most = (Deducido de los { $count } conductores con lectura más alta.)
the-lines = Las fases

# What to do about each.
next-no-voltage = Cualquier indicación cuenta como en tensión hasta que el par se verifique otra vez sin tensión.
next-neutral-drop = Tratar como si estuviera en tensión. Buscar qué circuitos comparten este neutro; hay que abrirlo o quitar la carga de esos circuitos.
next-not-isolated = Parar. Comprobar que este es el punto de corte de este equipo y que abrieron todos los polos.
next-one-line-live = Parar. Buscar un polo que no abrió, un contacto soldado o una segunda alimentación de esta fase.
next-two-lines-live = Parar. Comprobar cada polo del punto de corte y cada fusible; buscar una segunda alimentación.
next-backfeed = Parar. Buscar la alimentación en el lado de la carga (un circuito de mando, un puente, una fuente pequeña) y desconectarla también.
next-open-neutral = Parar. Las fases están en tensión y el neutro es tan peligroso como una fase. Desconectar en la alimentación; no volver a conectar cargas.
next-borrowed-neutral = Parar. Buscar el circuito que toma prestado este neutro, desconectarlo también y ensayar otra vez.
next-other-source = Parar. Buscar un generador, un inversor, una batería o una segunda acometida, y desconectarlos.
next-floating-supply = Parar. Desconectar; guiarse por las lecturas fase a fase; buscar un primer defecto a tierra.
next-broken-reference = Parar y no tocar partes metálicas. Comprobar la tierra contra una fuente conocida o una segunda tierra, y ensayar otra vez.
next-induced = Cuenta como en tensión. Leer otra vez con impedancia baja; sigue así hasta que ningún par muestre nada. Desconectar el circuito vecino o ponerlo a tierra.
next-misplaced = Tratar como si estuviera en tensión. Repetir los pares nombrados, diciendo los bornes en voz alta; probar el detector antes y después.
next-neutral-earth = Averiguar la causa antes de hacer cualquier otra cosa.
next-direct-voltage = Parar. Esperar el tiempo del rótulo, leer DC otra vez, y desconectar la fuente si no baja.
next-unexplained = Tratar como si estuviera en tensión. Buscar una segunda alimentación; después probar el detector y comprobar todos los pares otra vez.

# The drawing of the potentials, in words.
middle-earth = tierra
middle-supply = el centro de la alimentación
# $several: whether $names are more than one conductor.
dot-at-middle =
    { $names } { $several ->
        [yes] están
       *[no] está
    } en { $middle }
dot-off-middle =
    { $names } { $several ->
        [yes] están
       *[no] está
    } a { $volts } V contra { $middle }
dots = Potenciales que encajan con las lecturas: { $dots }. Las direcciones son solo relativas.
