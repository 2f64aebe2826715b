# A draft that no licensed electrician has checked.
### Outside any job: the jobs, who is signed on, a new job, every lock that is on.

# The jobs.
home-title = Intervenciones
home-sign-on-first = Nadie está identificado. Tocar primero el nombre propio: todo se guarda con él.
# life-critical
home-forgot = Este teléfono se repuso desde una copia, u otro teléfono usa su clave. No se guarda nada hasta que siga con una clave nueva. Después verificar otra vez la ausencia de tensión.
home-forgot-comes-back = Lo que otros tienen de él vuelve por sí solo.
# life-critical
home-aside-full = Hay demasiadas anotaciones apartadas: aquí pueden faltar candados de otras personas. Guiarse por los candados en los puntos. Preguntar quién envía las anotaciones.
# life-critical
home-clocks-differ = Los relojes de dos teléfonos no coinciden. Comparar el de este con un tercer reloj. Si va mal, ponerlo en hora.
home-clock-right = El reloj de este teléfono va bien
# life-critical
home-clock-right-done = Cuenta el reloj de este teléfono. Lo que verificó el otro teléfono no se cree aquí hasta que se ponga en hora su reloj.
home-open-jobs = Intervenciones abiertas
home-no-open-job = No hay ninguna intervención abierta en este teléfono.
# Two jobs or two people of one name: $id tells them apart.
home-one-of-a-name = { $name } ({ $id })
# How far a job is. $stage is one of the stage- messages, $step one of the step- messages.
home-turn = { $stage }. Siguiente: { $step }
home-this-phone = Este teléfono
home-signed-on = Usa este teléfono: { $name }
home-signed-on-tap = Todo se guarda con este nombre. Tocar para cambiarlo.
# life-critical
home-owed =
    { $count ->
        [one] 1 titular no sabe todavía que su candado se quitó por la fuerza.
       *[other] { $count } titulares no saben todavía que sus candados se quitaron por la fuerza.
    }
home-locks-on = Candados puestos ahora: { $count }
home-finished-jobs = Intervenciones terminadas
# The state of a job, in a word.
home-handed-back = instalación devuelta
home-new-key = Seguir con una clave nueva
# life-critical
home-new-key-done = Este teléfono sigue con una clave nueva. Verificar otra vez la ausencia de tensión antes de cualquier trabajo.
home-new-job = Intervención nueva

# Who is signed on, and new people.
people-title = Quién usa este teléfono
people-tap = Tocar el nombre propio al tomar el teléfono. Desde entonces todo se guarda con él.
people-pin-anew = PIN fijado de nuevo ({ $when }), testigo: { $who }
# The state of a person, in a word.
people-is-signed-on = usa el teléfono
people-not-listed = Alguien que no está en la lista
people-name = Nombre
people-name-hint = Nombre y apellidos
people-qualification = Cualificación
people-qualification-hint = Como en el carné o certificado. Esta app no la valora.
people-telephone = Teléfono
people-telephone-hint = Donde se puede contactar sobre su candado
people-add = Añadir a esta persona
people-added = { $name } ya está en la lista.

# A new job.
new-job-sign-on = Nadie está identificado. Tocar el nombre propio antes de abrir una intervención.
new-job-what = Qué trabajo es
new-job-what-hint = Por ejemplo: cambiar el contactor K3
# $sites is a list of names.
new-job-known-sites = Conocidos aquí: { $sites }
new-job-place = Lugar en el sitio
new-job-place-hint = Edificio, planta, sala
new-job-equipment = Equipo que se va a desconectar
new-job-scope-hint = En qué se trabaja y dónde acaba. Vacío: lo que es la intervención. Para todo lo que vaya más allá, mirar otra vez la desconexión.
# What follows is a country.
new-job-rules = Reglas de
new-job-order = Orden del ensayo de ausencia de tensión
new-job-order-of-site = El orden cambia de un documento a otro. Tomar el que pida el sitio.
# How far the voltage of the supply may be from the nominal one.
new-job-tolerance = Tolerancia de la alimentación
new-job-open = Abrir esta intervención
new-job-opened = Intervención abierta. Responsable de la desconexión: { $name }.

# Every lock that is on, of all jobs.
board-title = Candados puestos ahora
# $caution is locks-no-clearance.
# life-critical
board-knows = Solo lo que sabe este teléfono. { $caution }
# life-critical
board-none = Este teléfono no sabe de ningún candado puesto.
board-owed = Quitados por la fuerza, sin informar al titular
# life-critical
board-tell = Informar a cada titular antes de que reanude el trabajo.
board-near = Con códigos, sin señal.
