# A draft that no licensed electrician has checked.
### What stands where an earlier job's words are offered again. Nothing of an earlier job counts before a person has said it anew.

# $label: the label of the field. Above answers that were given there before.
said-before = { $label }: como antes
like-heading = Como una intervención anterior
like = Como: { $title }
# The short form of a new job.
like-what = Como en { $title }. Revisar cada línea; lo que no sea así, cambiarlo.
like-none = No es como esa
like-change = Cambiar esto
taken-along = Se trae de antes: desmarcar lo que no sea así
# $name: who answers for the isolation.
like-opened = Intervención abierta. Responsable de la desconexión: { $name }. Cada fuente, lectura y candado se pregunta de nuevo.
taken-no-permit = Sin permiso: { $why }
taken-person = { $name }: { $duty }
taken-point = Punto: { $label }, { $at }
taken-circuit = Apagar antes: { $label }, { $serves }
taken-no-circuits = Nada que apagar antes: { $why }
where-of = { $equipment }. { $place }
told-again = Avisado ahora: { $who }, { $how }
barrier-again = Colocado ahora: { $what }, { $at }
this-shift = Este turno
checked-this-shift = { $name }, revisado { $at }
looked-over-again = Revisado otra vez: cables, puntas y carcasas en buen estado, en fecha
