# A draft that no licensed electrician has checked.
### Words and pieces that stand inside other messages.

place-unknown = un punto que este dispositivo no conoce
# What stands proved: in a list, and as the large words of the banner. These are few words, for a screen that is looked at in passing.
# life-critical
state-proved = Ausencia de tensión verificada
# In a list that is heard of from afar, which cannot say how old the proof is.
# life-critical
state-proved-heard = Ausencia de tensión verificada según la última noticia
# A voltage was met.
# life-critical
state-stop = Parar: tratar como si estuviera en tensión
# life-critical
state-live = Tratar como si estuviera en tensión
state-handed-back = Instalación devuelta
place-of-other-job = un punto de otra intervención
job-unknown = otra intervención
instrument-named = { $name }, n.º de serie { $serial }
instrument-without-serial = { $name }, sin n.º de serie indicado
# $id is the beginning of what the instrument is known by.
instrument-unknown = instrumento { $id }
told-by-network = la red de alimentación
direct-voltage = tensión continua
pair = { $first } – { $then }
wait-by-label = lo que diga el rótulo
wait-minutes = { $minutes } min
wait-seconds = { $seconds } s
# Two things of a list; of a longer one, all but the last and the last.
list-comma = { $first }, { $then }
list-and = { $first } y { $then }
# The same where what is listed has commas of its own.
list-semicolon = { $first }; { $then }
# Two sentences, one after the other.
sentences = { $first } { $then }

quoted = «{ $text }»
quoted-in-part = «{ $text }…»
seen-open = visto abierto
seen-closed = visto cerrado
# $way is one of the shown-earth- messages.
shown-earth-how = { $way }: { $how }
shown-earth-live-line = De PE a una fase que se sabe en tensión aparece la tensión completa
shown-earth-main-terminal = Continuidad de PE al borne principal de tierra
shown-earth-bonded = Continuidad de PE a partes metálicas con unión equipotencial
limit-set = { $ac } V AC y { $dc } V DC cuentan como sin indicación, según { $rule }
# One of a list or another.
list-or = { $first } o { $then }

as-ruled = Como dicen estas reglas
order-least-dangerous-first = Lo menos peligroso primero (fase a fase al final)
order-line-line-first = Fase a fase primero
order-earth-first = Tierra primero (todos al conductor de protección, luego los demás)

point-switch-disconnector = Interruptor-seccionador
point-circuit-breaker = Interruptor automático apto para seccionamiento
point-fuse-switch = Interruptor-fusible
point-fuse-links = Fusibles retirados
point-plug = Clavija y toma de corriente
point-control-device = Pulsador de paro, enclavamiento o contactor

system-one-phase = Monofásica: L, N, PE
system-three-phase-neutral = Trifásica con neutro: L1, L2, L3, N, PE
system-three-wire = Trifásica sin neutro: L1, L2, L3, PE
system-pen = Trifásica con PEN (TN-C): L1, L2, L3, PEN
system-two-lines = Dos fases sin neutro: L1, L2, PE
system-site-transformer = Transformador de obra 55-0-55: L1, L2, PE
system-site-transformer-three = Transformador de obra, tres fases: L1, L2, L3, PE
system-split-phase = Fase partida: L1, L2, N, PE
system-high-leg = Triángulo con una fase alta: L1, L2, L3, N, PE
system-corner-grounded = Triángulo con una fase a tierra: L1, L2, L3, PE
system-dc-two-wire = DC, dos polos: L+, L-, PE
system-dc-three-wire = DC con punto medio: L+, M, L-, PE
system-own = Juego propio de conductores
named-by-neutral = Fase a neutro, por ejemplo 230, 120 o 277
named-by-pen = Fase a PEN, por ejemplo 230
named-by-lines = Fase a fase, por ejemplo 400, 230 o 480
named-by-poles = Polo a polo, por ejemplo 110 o 48
named-by-highest = La más alta entre dos conductores cualesquiera

# In the drawing of a system, between two terminals: at most seven letters a line.
drawn-volts = { $volts } V
# The line above drawn-volts: anything up to it, or one of two.
drawn-from-nothing = de 0 a
drawn-either = { $lower } o
# Above these drawings.
drawings-of-systems = Los dibujos muestran tensiones habituales. Un signo de interrogación marca lo que cambia de un lugar a otro.

earthing-unknown = No se sabe

reading-none = sin indicación
reading-continuity = continuidad
reading-lit = encendido
reading-lit-to = encendido hasta { $volts } V
reading-volts = { $volts } V
reading-amps = { $amps } A

tolerance-iec = IEC 60038: ±10 %
tolerance-uk = Reino Unido: +10 %, -6 %
tolerance-ansi = ANSI C84.1, gama A: ±5 %

rotation-clockwise = horario
rotation-anticlockwise = antihorario
rotation-not-needed = no hace falta
rotation-choice-clockwise = Horario: L1, L2, L3
rotation-choice-anticlockwise = Antihorario: L1, L3, L2
rotation-choice-not-needed = No hace falta: nada gira
rotation-guard-uncoupled = Lo que gira está desacoplado
rotation-guard-bumped = Arranque breve, a la vista

supply-answer-mended = Reparado, hay que leer otra vez
supply-answer-left-off = Se deja apagado
supply-answer-accepted = Aceptado por alguien que fue informado

source-generator = Generador
source-ups = UPS (SAI)
source-pv = Fotovoltaica
source-battery = Batería
source-second-feeder = Segunda alimentación o conmutación
source-control = Alimentación de mando o auxiliar

photo-blurred = La foto parece borrosa: mirar el rótulo en ella y repetirla si no se puede leer.
photo-dark = La foto está muy oscura: dar más luz y repetirla si se puede.
photo-bright = La foto tiene demasiada luz: girarse para no tenerla de frente y repetirla si se puede.
# $here is what the picture was taken for.
photo-tag-of-namesake = La etiqueta de esta foto es de otro punto que también se llama { $here }.
photo-other-tag = La etiqueta de esta foto es de { $belongs }, no de { $here }.
photo-unknown-tag = La etiqueta de esta foto, { $tag }, no es de nada que este dispositivo conozca, ni de { $here }.
photo-no-tag = En esta foto no se lee ninguna etiqueta, y { $here } tiene una.

sort-grid = red pública
sort-second-feeder = segunda alimentación
sort-generator = generador
sort-ups = UPS (SAI)
sort-pv = fotovoltaica
sort-battery = batería
sort-control = alimentación de mando
sort-unsaid = fuente

link-switch = un interruptor
link-cable = un cable
link-changeover = una conmutación
link-tie = un acoplamiento
link-inverter = un inversor que trabaja en isla
link-inlet = una toma para un grupo móvil
link-transformer = un transformador
link-unknown = una unión que nadie ha rastreado

# What keeps energy after the supply is cut, each with its least wait where no label says one, and where that comes from. On a button.
stored-kind = { $kind }: esperar { $wait } ({ $source })
stored-drive = Variador, bus DC
stored-power-factor = Condensadores de factor de potencia
stored-capacitors = Otros condensadores
stored-ups = UPS (SAI)
stored-pv-inverter = Inversor fotovoltaico
stored-battery-converter = Convertidor de batería o de vehículo
stored-not-known = No se sabe
stored-wait-practice = práctica común
stored-wait-iec-60831 = IEC 60831-1
stored-wait-longest = la espera más larga
