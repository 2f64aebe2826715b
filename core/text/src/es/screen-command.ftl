# A draft that no licensed electrician has checked.
### What commands print for a person at a terminal: plans, judgements, records, networks, tags.

# A dead test. $expect is what is read where the pair is dead.
command-test = { $first } – { $then }   la primera punta se queda en { $first }, la segunda en { $then }. Se espera { $expect }.
command-look-out = Atención
command-stored = Energía acumulada: { $what }
command-reference = Referencia: { $conductor }
# In the place of a conductor.
# life-critical
command-reference-missing = falta
command-ways = Demostrarlo de una de estas maneras
# $pairs is a list of command-dc-pair, or command-every-pair.
command-dc = Leer también la tensión continua: { $pairs }
command-dc-pair = { $first }–{ $then }
command-every-pair = todos los pares
command-tests = Comprobaciones: { $count }, con { $moves } cambios de punta (mínimo posible: { $fewest })
# Behind the number of a test: a pair, and how the probes move.
command-pair-probes = { $first } – { $then }   { $probes }
command-probes-stay = una punta se queda en { $held }, pasar la otra a { $other }; levantar primero la de { $off }
command-probes = primera punta en { $first }, después { $then }; levantar primero la de { $off }
# life-critical
command-dead = si está sin tensión: { $expect }
# life-critical
command-not-dead = si no está sin tensión: { $expect }
command-notes = Notas

# The verdict on readings.
# life-critical
command-proved-dead = Ausencia de tensión verificada
# life-critical
command-treat-as-live = Tratar como si estuviera en tensión
# life-critical
command-incomplete = Verificación incompleta: tratar como si estuviera en tensión
# life-critical
command-void = Verificación anulada: tratar como si estuviera en tensión
# $cause is the name of a cause in docs/judge.md. How well readings match it is no probability, and is not said.
# life-critical
command-may-be = Las lecturas concuerdan con: { $cause }. Tratar como si estuviera en tensión.
command-pair = { $first } – { $then }
command-read-again = Leer otra vez

# Records.
command-record = { $file }: { $title }. Cabeza { $head }.
command-record-csv = Un CSV no se puede verificar: conservar junto a él el PDF o el JSON.
command-record-check = Cualquiera puede comprobarlo: stillbar verify { $file }
command-head = Cabeza { $head }
# life-critical
command-holds = El acta es auténtica: tal como la firmaron sus dispositivos. No dice que nada esté ahora sin tensión.
# life-critical
command-does-not-hold = El acta NO es válida.
command-failure = { $what }: { $why }
command-shown = Demostrado:
command-not-shown = No demostrado:

# Networks.
command-more-sources = En total llegan { $count } fuentes; los caminos de las demás no están en la lista.
command-supply-not-shown = No demostrado
command-remark = Observación: { $remark }
command-proposal = { $proposal } ({ $worth })
command-stops = se para: { $what }
command-tell = avisar: { $who }
# $label says in words what is drawn.
command-drawn = { $file } está escrito. { $label }
command-written = Escrito: { $files }.

# Tags in photos.
command-tag = { $file }: etiqueta { $tag }
command-tag-foreign = { $file }: no es una etiqueta nuestra, su texto es «{ $text }»
command-tag-none = { $file }: no se leyó ningún código. Hacer la foto más cerca, de frente, sin reflejos.
