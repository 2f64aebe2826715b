# A draft that no licensed electrician has checked.
### The conductors of a job and their supply: picked, corrected, and what stays live beside them.

system-conductors = Conductores en el punto de trabajo
system-conductors-own = Conductores propios, con comas
# What stands in this example is as it is typed: name[colour]=role@supply.
system-conductors-own-hint = L1, L2[black], N1=neutral, PE. De otra alimentación: S+=dc-plus@String A
system-earthing = Esquema de tierra
# $hint is one of the named-by- messages, $volts a list of figures.
system-usual-here = { $hint }. Aquí es habitual: { $volts }
system-nominal = Tensión nominal en voltios

system-wrong = Los conductores se anotaron mal
# life-critical
system-wrong-ends = Esto acaba la verificación. Lo anotado se queda. Los puntos conservan los conductores que se anotaron para ellos.
system-wrong-what = Qué estaba mal
system-correct = Corregir los conductores

# What stays live beside the work.
system-live = Lo que aquí no se puede dejar sin tensión
# life-critical
system-live-what = SIGUE EN TENSIÓN: { $what }
# life-critical
system-live-at = { $place }. Apantallado: { $screened } ({ $by })
# life-critical
system-live-such-as = Por ejemplo: el lado de alimentación del interruptor general, las cadenas fotovoltaicas de día, los bornes de una batería. Nombrarlo, y apantallarlo.
system-live-conductors = Qué conductores del juego propio son
system-live-name = Qué sigue en tensión
system-live-where = Dónde está
system-live-screened = Cómo está apantallado, y quién lo miró
system-live-save = Esto sigue en tensión
