# A draft that no licensed electrician has checked.
### The screens of proving dead.

# life-critical
prove-covers-caution = Tratar cada conductor detrás de una tapa como si estuviera en tensión hasta que esté todo verificado. Guantes y protección facial según las reglas locales.
prove-cover-back = Tapa puesta otra vez
prove-cover-off = Tapa quitada
prove-cover-by = { $cover } ({ $by })
prove-cover = Tapa que se quita
prove-cover-hint = Una cada vez. Cada una tiene que estar puesta otra vez antes de dar tensión.
# A cover that nearly every board has, and the button that says that it alone is off.
prove-usual-cover = Tapa frontal
prove-usual-cover-off = La tapa frontal está quitada, ninguna más
prove-no-cover-why = O: por qué no hace falta quitar ninguna tapa
prove-no-cover-hint = Los puntos de medida son accesibles desde fuera.
prove-no-cover = No se quita ninguna tapa

prove-known-source = Una fuente que se sabe en tensión
prove-on = Probado con
prove-which-source = Qué fuente en tensión, si fue una
prove-which-source-hint = Que no sea parte de esta desconexión
prove-indicator = Detector
prove-proved = Probado
# life-critical
prove-stop-work = La verificación ha acabado, y el trabajo sigue en curso.
prove-stop-work-first = Primero parar el trabajo
prove-ranges = Probarlo en cada escala y con cada lámpara o sonido que use el ensayo, justo antes del ensayo.
# life-critical
prove-no-indicator = Ningún detector de tensión se halló apto para el uso. Revisar uno primero.
prove-check-indicator = Revisar un detector
prove-voltage-indicator = Detector de tensión
# Two statements of whoever taps them.
prove-responds = Responde como debe
prove-responds-not = No responde como debe
prove-is-proved = El detector está probado.
# life-critical
prove-failed = No usar este detector. Tomar otro, y revisarlo y probarlo.
# life-critical
prove-indication = Una indicación. Parar, y tratar como si estuviera en tensión.

prove-pair = { $first } – { $then }
# A pair of which only direct voltage is left to read.
prove-pair-dc = { $first } – { $then } DC
prove-pair-hint = La otra punta en { $then }. Lo esperado: { $expected }.
prove-set = Grupo { $group } de { $groups }: la primera punta se queda en { $conductor }. Quitar primero la segunda.
prove-nothing = Sin indicación
prove-continuity = Continuidad
prove-lit = Encendido
prove-save-readings = Guardar estas lecturas
prove-seen-since = Indicación vista desde entonces
# The last pair, after a slip of the thumb: what was read before stays in the record.
prove-read-again = Leer otra vez { $pair }
# life-critical
prove-gave = Este par dio indicación
prove-not-tested = sin comprobar
prove-then = { $first }, después { $then }
prove-results = Lecturas de este ensayo
prove-column-pair = Par
prove-column-reading = Lectura
# life-critical
prove-between-late = El detector se probó hace demasiado tiempo. Probarlo ahora, y después leer otra vez los pares leídos desde la prueba anterior.
prove-between = Probar otra vez el detector en menos de { $minutes } min; después sigue el ensayo.
prove-again-by = Probado otra vez
# life-critical
prove-supervised = Comprobado bajo supervisión. Quien firma lo ha presenciado, y responde de ello.
prove-signs = { $name } firma por este ensayo
prove-sign-as = Firmar este ensayo como { $name }
prove-hand-on = Pasar el dispositivo a otra persona
# life-critical
prove-after = El mismo detector, justo después del último par. Si ahora no responde, queda anulada toda comprobación.
prove-goes-on = El detector está probado. El ensayo sigue.
# life-critical
prove-after-failed = Toda comprobación desde la primera prueba queda anulada. Tratar como si estuviera en tensión. Tomar otro detector y empezar otra vez.

prove-behind = Qué puede haber detrás
prove-likeliest = Lo más probable
prove-or = O bien
prove-next = A continuación
prove-odd = La que no encaja
prove-odd-pair = { $first } – { $then }: comprobar otra vez este par.
# life-critical
prove-guess = Una suposición, según las lecturas y lo frecuente que es cada causa. Ninguna suposición deja un conductor sin tensión.
prove-more = Más lecturas, para hallar la causa
# life-critical
prove-more-caution = Solo si las reglas por las que se trabaja permiten medir en partes en tensión, con la protección que piden.
prove-more-hint = Primera punta en { $first }, la otra punta en { $then }.
prove-more-pad = Pares todavía sin leer
prove-more-save = Guardar las lecturas adicionales

# What to do with the hands first, then with the cover.
# life-critical
prove-stop-pair = Tratar como si estuviera en tensión. Quitar primero la punta de { $then }, después la de { $first }, y poner la tapa de por medio.
# life-critical
prove-stop = Tratar como si estuviera en tensión. Quitar las puntas, y poner la tapa de por medio.
prove-unexpected = { $reading }; se esperaba: sin indicación ({ $by })
prove-do-now = Qué hacer ahora
# life-critical
prove-do-1 = 1. Mantener a todos lejos de los conductores. Informar a la persona que responde de la desconexión.
prove-do-2 = 2. Hallar la causa: se abrió un punto equivocado, una fuente pasada por alto, un neutro compartido con otro circuito, una tensión inducida.
prove-do-3 = 3. Una fuente pasada por alto se añade a la intervención, con su propio punto y candado.
# life-critical
prove-do-4 = 4. Después probar el detector y comprobar otra vez todos los pares. Una explicación no deja un conductor sin tensión.
prove-missed = Se pasó por alto una fuente
prove-points-again = Mirar otra vez los puntos
prove-level = Si se vio: { $at }, encendido hasta
prove-level-volts = { $volts } V
prove-level-save = Guardar el nivel
prove-trouble = { $trouble } ({ $by })
prove-cause = Cuál fue la causa, y qué se hizo
prove-cause-hint = Queda en el acta.
prove-cause-save = Guardar la causa; después, verificar otra vez
# life-critical
prove-cause-none-means = Si se buscó y no se halló: siguen dos ensayos completos, el segundo con otro detector o por otra persona.
prove-cause-none = Causa no hallada

prove-earth-shown = Se demostró que es tierra
# life-critical
prove-earth-shown-not = No es tierra
prove-earth-shown-by = { $how } ({ $by })
prove-earth-live-line = De PE a una fase que se sabe en tensión aparece la tensión completa
prove-earth-main-terminal = Continuidad de baja resistencia de PE al borne principal de tierra
prove-earth-bonded = Continuidad de baja resistencia de PE a partes metálicas con unión equipotencial en otro lugar
prove-earth-how = Cómo se demostró
prove-earth-where = Dónde, o de qué otro modo
prove-earth-where-hint = Qué fase en tensión o qué borne
prove-earth-live-shows = Una fase en tensión muestra contra tierra
prove-earth-about = Unos { $volts } V
prove-earth-about-or = Unos { $least } o { $volts } V
# Two statements of whoever taps them.
prove-earth-proved = Tierra demostrada
# life-critical
prove-earth-proved-not = Tierra no demostrada
# life-critical
prove-earth-failed = La referencia no es tierra. Tratar como si estuviera en tensión, y hallar la interrupción antes de cualquier otra comprobación.

prove-discharge-none = En esta intervención no consta energía acumulada ni ninguna fuente de tensión continua.
prove-discharge-unread = sin leer
prove-discharge-read = { $reading } ({ $by })
prove-discharge-wait = { $what }, esperar { $wait }
# life-critical
prove-discharge-caution = Poner el instrumento en tensión continua. Esperar lo que dice el rótulo y después leer, más a menos y cada uno a PE; introducir el valor mayor.
prove-discharge-volts = Tensión continua en { $what }, en voltios
prove-discharge-volts-hint = El mayor de los tres
prove-discharge-save = Guardar la lectura en { $what }
