# A draft that no licensed electrician has checked.
### What is asked about locks and keys.

ask-lock-secured-instead = Este punto no admite candado. Escribir con qué otro medio se impide su cierre.
ask-lock-label = Escribir lo que pone en el rótulo del candado.
ask-lock-where = Elegir dónde está el candado: en un punto o en una caja de bloqueo.
ask-lock-key = Elegir dónde está la llave de este candado.
ask-lock-key-with-owner = La llave de un candado personal en una caja se queda con su titular. Elegir: la tiene el titular.
ask-lock-means = Elegir cómo está bloqueado: candado por el aparato, o candado en una pinza de bloqueo.
ask-lock-means-other = Escribir qué otro medio impide el cierre del punto.
ask-lock-padlock-mark = Escribir qué distingue a los dos candados, por ejemplo: cinta azul.
ask-lock-offer-to = Elegir quién recibe el candado y la llave.
ask-lock-offer-first = Este candado no está ofrecido. Primero lo ofrece quien lo tiene.
ask-lock-cut-why = Escribir por qué no había llave.
ask-lock-authority = Elegir quién responde de quitar este candado.
ask-lock-authority-first = Nombrar primero quién responde de quitar este candado.
ask-lock-authority-is = Escribir qué es la autoridad en este sitio.
ask-lock-authority-reached = Escribir cómo se contactó a la autoridad.
ask-lock-cannot-wait = Escribir por qué no se puede esperar al titular.
ask-lock-not-on-site = Escribir cómo se vio que el titular no está en el sitio.
ask-lock-sought-how = Escribir cómo se intentó contactar al titular.
ask-lock-sought-outcome = Escribir qué resultado tuvo el intento.
ask-lock-told-how = Escribir cómo se informó al titular.
ask-lock-telephone = No hay teléfono guardado del titular. Pedirlo en el sitio.
