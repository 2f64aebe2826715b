# A draft that no licensed electrician has checked.
### What is wrong with a case in a file, and what to write instead. The command line puts the place before it.

case-at = línea { $line }, columna { $column }
case-placed = { $place }: { $says }
case-too-large = pasa de { $most } bytes, lo máximo que se lee; hacer varios casos de él.
case-empty = está vacío; escribir al menos {"{"}"conductors":[{"{"}"name":"L"{"}"},{"{"}"name":"N"{"}"},{"{"}"name":"PE"{"}"}]{"}"}.
# $field stands in quotation marks.
case-twice = el campo { $field } está dos veces; conservar el que es cierto.
case-too-deep = las listas dentro de listas son demasiado profundas; seguir el formato.
case-crowded = esto no es JSON (un objeto tiene más de { $most } campos); corregirlo aquí.
# $why is in the words of the library that reads JSON.
case-not-json = esto no es JSON ({ $why }); corregirlo aquí.
# $is is one of the kind- messages.
case-wants-object = Aquí va un objeto entre llaves, no { $is }.
case-wants-list = Aquí va una lista entre corchetes, no { $is }.
case-wants-text = Aquí va un texto entre comillas, no { $is }.
case-wants-one-of = Aquí va uno de { $choices }, no { $is }.
case-wants-volts = Aquí va un número de voltios sin unidad, por ejemplo 230, no { $is }.
case-wants-flag = Aquí va true o false, no { $is }; si no se sabe, dejarlo fuera.
kind-null = null
kind-flag = true o false
kind-number = un número
kind-text = un texto
kind-list = una lista
kind-object = un objeto entre llaves
case-unknown-field = el campo { $field } aquí no se conoce; se conocen { $known }.
case-needs-conductors = falta el campo "conductors"; dar la lista, por ejemplo [{"{"}"name":"L1","role":"line"{"}"},{"{"}"name":"PE"{"}"}].
case-needs-name = falta el campo "name"; dar la designación del conductor, por ejemplo L1.
case-needs-what = falta el campo "what"; decir qué puede guardar carga, por ejemplo "drive U1".
case-needs-pair = falta el campo "pair"; nombrar los dos conductores, por ejemplo ["L1","N"].
case-too-many = esta lista tiene { $count } elementos y se toman como mucho { $most }; acortarla.
case-not-seen = un nombre necesita caracteres visibles, y ningún espacio delante ni detrás.
case-too-long = esto tiene { $count } caracteres y se toman como mucho { $most }; acortarlo.
case-not-one-of = { $word } no es uno de { $choices }.
case-negative = { $volts } V está por debajo de cero; escribir el valor sin signo.
case-too-high = esto pasa de { $most } V, lo máximo que se puede guardar; corregirlo.
case-not-seconds = aquí va un número entero de segundos de { $least } a { $most }.
case-not-minutes = aquí va un número entero de minutos de { $least } a { $most }; las reglas solo fijan menos que eso, nunca más.
case-not-hertz = aquí va un número entero de hercios de { $least } a { $most }.
case-two-orders = también se da "own_order" y solo uno de ellos puede contar; dejar uno fuera.
case-few-conductors = un ensayo de ausencia de tensión necesita al menos dos conductores; dar todos los que hay en el punto de trabajo.
case-name-twice = { $name } es también el nombre de conductors[{ $at }]; dar a cada uno su propio nombre.
# $usual and $role are roles as files have them.
case-role-of-name = { $name } designa un conductor { $usual } (IEC 60445), no { $role }; corregir la función o el nombre.
case-role-unsaid = la función de { $name } no se deduce de su nombre; dar "role": uno de { $roles }.
case-neutral-in-tn-c = TN-C no tiene neutro junto al conductor PEN, y { $neutral } es un neutro; escribir TN-C-S, o corregir la función.
case-pen-elsewhere = { $earthing } no tiene conductor PEN, y { $pen } lo es; escribir TN-C o TN-C-S, o corregir la función.
case-nominal-too-low = una tensión nominal de menos de 1 V no lo es; si no se sabe, dejarla fuera.
case-not-low-voltage = por encima de 1000 V AC o 1500 V DC entre conductores esto no es baja tensión; este método y sus detectores no sirven.
case-nominals-apart = { $line_line } V fase a fase no corresponde a { $line_neutral } V fase a neutro (es 1,73 veces eso, o el doble con punto medio); corregir uno.
case-not-listed = { $name } no está en "conductors"; añadirlo allí o corregirlo.
case-not-a-pair = un par son dos nombres, por ejemplo ["L1","N"].
case-pair-of-one = los dos son { $name }; un par son dos conductores distintos.
case-pole-twice = { $name } está dos veces; nombrar cada polo una vez.
case-pole-protective = { $name } es un conductor de protección o PEN, y ningún punto de corte lo abre; quitarlo, y mirar otra vez qué abre el punto de corte.
case-pair-twice = { $first } y { $then } están dos veces; nombrar cada par una vez.
case-pair-missing = faltan { $first } y { $then }; un orden propio nombra cada par una vez.
case-levels-unordered = los escalones de un detector van subiendo, y el primero está por encima de cero; ponerlos en orden.
case-no-levels = un detector tiene al menos un escalón; para los habituales, dejar fuera el campo.
# $limit is limit-too-high.
case-limit = { $limit }; escribir 0, o el límite de la regla de la empresa.
case-read-elsewhere = "read_at" dice entre qué conductores; lo que se leyó allí va en "readings".
case-equipment-twice = esto está dos veces; nombrar cada clase una vez.
case-nothing-read = falta lo que se leyó; dar "volts": 230.0, o "level": "none".
case-read-twice = también se da "volts"; conservar lo que se leyó.
# $steps is a list of voltages.
case-no-such-step = el detector no tiene tal escalón (tiene { $steps } V); escribir uno de ellos, dar los suyos en indicator.levels_volts, o dar "volts".
