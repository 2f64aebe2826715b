# A draft that no licensed electrician has checked.
### What is asked about a site's supply network.

ask-supply-zone = Marcar en qué se trabaja.
ask-supply-ways = Marcar por qué camino se responde.
ask-supply-ways-why = Escribir por qué no cuenta.
ask-supply-fed-from = Elegir desde dónde se alimenta, o dejar vacío el nombre del interruptor.
ask-supply-from = Elegir dónde empieza.
ask-supply-to = Elegir dónde acaba.
ask-supply-kind = Elegir qué es.
ask-supply-link-kind = Elegir qué clase de unión es.
ask-supply-lockable = Elegir si admite candado.
ask-supply-normally = Elegir si en servicio normal está abierto o cerrado.
ask-supply-name = Escribir su nombre, como está rotulado.
