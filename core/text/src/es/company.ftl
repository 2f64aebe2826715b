# A draft that no licensed electrician has checked.
### Rules of a company. A place in the file stands before what is wrong with it, as "case-placed" says.

company-too-large = pasa de { $most } bytes, lo máximo que se lee; dejar fuera lo que una intervención no necesita.
company-empty = está vacío; escribir al menos {"{"}"company":"Su empresa","version":"1"{"}"}.
# $field is a name of the format.
company-missing = falta el campo "{ $field }"; añadirlo.
company-text = aquí va un texto de 1 a { $most } caracteres que diga algo, sin saltos de línea, sin espacios alrededor y sin caracteres que no se ven.
company-too-many = aquí se toman como mucho { $most }; acortarlo.
# $code stands in quotation marks; $known are codes.
company-no-question = { $code } no es ninguna pregunta de esta versión; las que se pueden hacer en toda intervención son { $known }.
company-of-its-own = { $code } se pregunta de un punto, de una fuente, de un sistema o antes de un acto, y en otro lugar no dice nada; las que se pueden hacer en toda intervención son { $known }.
company-twice = { $what } está dos veces; conservar uno.
# $limit is limit-too-high.
company-limit = { $limit }; las reglas de una empresa solo lo hacen más estricto.
company-limit-unruled = nombrar la regla que fija el límite, como la llama la empresa.
company-minutes = aquí van minutos enteros de 1 a { $most }: una empresa fija menos de lo que permite la app, no más.
company-code = un código tiene minúsculas, cifras y guiones sueltos, por ejemplo keys-counted, y como mucho 40 caracteres.
company-number = un número de teléfono tiene al menos tres cifras, y aparte de ellas solo + ( ) / - * # y espacios.
# $version stands in quotation marks.
company-version-taken = la versión { $version } ya dice otra cosa; dar a lo que cambió una versión propia.
company-held = Estas reglas ya valen en este sitio. No se cambió nada.

company-version = { $company }, versión { $version } ({ $short })
company-ppe = { $company }: { $text }
# On a button; $who is whom the company wants called.
company-ring = Llamar a { $who }

company-label = Reglas de
company-sha256 = SHA-256
company-always = Se pregunta en toda intervención
company-limit-label = Límite para ausencia de tensión
company-between = Entre dos pruebas
company-holds = Una verificación vale
company-at-most = como mucho { $minutes } min
company-before-opening = Llevar puesto antes de abrir un punto
company-before-dead-test = Llevar puesto hasta verificar la ausencia de tensión
company-before-work = Llevar puesto antes del trabajo
company-before-restoring = Llevar puesto antes de reponer
company-point-isolate = Punto propio, antes de desconectar
company-point-work = Punto propio, antes del trabajo
company-point-restore = Punto propio, antes de reponer
company-point = { $text }{ $skip ->
    [yes] {" "}(se puede omitir, con un motivo)
   *[no] {""}
}
company-call = Llamar
company-called = { $who }: { $number }
