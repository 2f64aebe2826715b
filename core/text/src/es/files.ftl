# A draft that no licensed electrician has checked.
### What is wrong with a file of a network, and what to write instead.

# $place is one of the place- messages or a path, $why any message of this file.
file-error = { $place }: { $why }
place-line = línea { $line }
place-field = línea { $line }, { $field }
place-column = línea { $line }, columna { $column }
place-row = { $table }, fila { $row }
remark-kind = { $place }.kind: { $word } no es ninguna clase conocida aquí ({ $known }), así que se toma por desconocida: donde se llegue a ella, no se demuestra que nada esté cortado.

file-too-large = pasa de { $most } bytes, lo máximo que se lee; dejar fuera lo que está lejos del trabajo.
file-empty-json = está vacío; escribir al menos { $least }.
file-empty-csv = está vacío; su primera línea nombra los campos: { $known }.
# $why is what the reader of the format says, in English.
file-no-csv = esto no es CSV ({ $why }); guardarlo como valores separados por comas en UTF-8.
file-quote-open = hay una comilla sin cerrar; dentro de un texto, escribir dos por una.
file-cells = tiene { $count } celdas y la primera línea tiene { $first }; igualar el número.
file-field-unknown = el campo { $field } aquí no se conoce; se conocen { $known }.
file-field-twice = el campo { $field } está dos veces; conservar el que es cierto.
# $fix is one of the fix- messages.
file-field-missing = falta el campo "{ $field }"; { $fix }.
fix-id = dar su nombre, como en el aparato
fix-node-kind = decir source, board, load o junction
fix-link-kind = decir switch, cable u otra clase
fix-from = nombrar el nodo de un extremo
fix-to = nombrar el nodo del otro extremo
file-list-missing = tienen que estar los dos campos "nodes" y "links"; escribir [] donde todavía no haya ninguno.
file-no-network = Aquí va un objeto entre llaves, con "nodes" y "links".
file-no-object = Aquí va un objeto entre llaves.
file-no-list = Aquí va una lista entre corchetes.
file-too-many = se toman como mucho { $most }; dejar fuera lo que está lejos del trabajo.
file-too-many-lines = se toman como mucho { $most } líneas; dejar fuera lo que está lejos del trabajo.
file-too-many-parts = se toman como mucho { $most } partes; dejar fuera lo que está lejos del trabajo.
file-text-empty = un texto necesita al menos un carácter; si no se sabe, dejarlo fuera.
file-not-one-of = { $word } no es uno de { $known }.
file-conductor-count = aquí va un número entero de 1 a { $most }, o los nombres de los conductores.
# $given is one of the kind- messages.
wants-text = Aquí va un texto entre comillas, no { $given }.
wants-flag = Aquí va true o false, no { $given }.
wants-list = Aquí va una lista entre corchetes, no { $given }.
file-pandapower = no es como lo escribe pandapower; guardar la red otra vez con pandapower.to_json.
file-pandapower-table = la tabla no es como la escribe pandapower; guardar la red otra vez con pandapower.to_json.
file-pandapower-column = "{ $column }" no es como lo escribe pandapower; guardar la red otra vez con pandapower.to_json.
