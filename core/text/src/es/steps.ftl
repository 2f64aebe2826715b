# A draft that no licensed electrician has checked.
### The parts of a job and its steps, as their titles say them.

stage-plan = Planificar
stage-isolate = Desconectar
stage-prove = Verificar la ausencia de tensión
stage-work = Trabajar
stage-restore = Reponer
# In the place of a stage, once nothing is left to do.
stage-over = Instalación devuelta

step-permit = Referencia del permiso
step-people = Personas de la intervención
step-told = Avisar a las personas afectadas
step-barriers = Barreras y carteles de peligro
step-sources = Buscar otras fuentes
step-stored = Buscar energía acumulada
step-points = Puntos de corte
step-instruments = Detector y unidad de prueba
step-rotation-found = Sentido de giro antes de desconectar
step-circuits = Cargas que hay que apagar
step-shed = Apagar las cargas
step-isolate = Desconectar { $point }
step-isolate-unknown = Desconectar un punto
step-open-up = Quitar tapas: tratar como si estuviera en tensión
step-prove-before = Probar el detector
step-prove-reference = Comprobar la tierra
step-discharge = Energía acumulada y tensión continua
step-dead-test = Comprobar todos los pares
step-prove-after = Probar otra vez el detector
step-work = Trabajar
step-covers-back = Volver a poner las tapas
step-warn = Avisar antes de dar tensión
step-unlock = Quitar candados y carteles
step-close = Volver a cerrar los puntos de corte
# $turns: whether the supply has more than one line.
step-presence = { $turns ->
    [yes] Alimentación repuesta: tensión y sentido de giro
   *[no] Alimentación repuesta: comprobar la tensión
}
step-circuits-on = Encender los circuitos, en orden
step-hand-back = Devolver la instalación
