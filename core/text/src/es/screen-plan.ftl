# A draft that no licensed electrician has checked.
### The screens of the plan.

# Nobody may take "not asked" for "not there".
# life-critical
sources-caution = Ir y mirar. Una fuente que nadie buscó: tratarla como si estuviera en tensión.
sources-looked-for = Buscadas y NO halladas: tocar cada una
sources-stored = Energía acumulada
where-looked = Dónde se buscó
where-looked-hint = Salas, tableros, rótulos, personas preguntadas
sources-save-none = Guardar: no hallada
sources-found = Se halló una
sources-kind = Clase de fuente
sources-what = Qué se halló
as-labelled = Como está rotulado
sources-at = Por dónde entra
sources-at-hint = Tablero, borne o cable
sources-save = Guardar esta fuente
counts-second-feeder = Conmutadores, acoplamientos, una alimentación desde otro tablero u otro transformador.
counts-generator = Grupos de emergencia, y tomas para un grupo móvil.
counts-ups = Los centrales y los pequeños en armarios y bajo mesas, y sus bypass.
counts-pv = Paneles e inversores. Los paneles dan tensión mientras hay luz.
counts-battery = Baterías, y cargadores de vehículos que devuelven energía.
counts-control = Tensión de mando, calefactores, alumbrado o medida que vienen de otro tablero.

duty-in-charge = Responsable de la desconexión
duty-working = Trabaja en ello
duty-learning = Bajo supervisión

site = Sitio
equipment = Equipo
scope = Alcance del trabajo
conductors-and-rules = Conductores y reglas

cover-off-last = Esta tapa está quitada, ninguna más
cover-off-more = Esta tapa está quitada

still-to-do = Pendiente
and-more = y { $count } más

# Readings of nothing say nothing while the earth is not shown to be earth.
# life-critical
earth-first = Con la tierra interrumpida, un tablero en tensión puede no dar lectura en ningún par. Comprobar primero la tierra.
