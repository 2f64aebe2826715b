# A draft that no licensed electrician has checked.
### The banner: what stands proved, in one or two sentences under the words of the state- messages, and what stands beside a proof.

# life-critical
standing-handed-back = A { $to }, { $by }. La alimentación está repuesta: tratar como si estuviera en tensión.
# life-critical
standing-restoring = El trabajo ha terminado y se está reponiendo la alimentación.
# life-critical
standing-nothing-proved = Todavía no hay nada verificado.
# life-critical
standing-not-proved-again = Todos los pares están comprobados; falta probar otra vez el detector.
# life-critical
standing-untested =
    { $pairs ->
        [one] Falta comprobar 1 par.
       *[other] Falta comprobar { $pairs } pares.
    }
# life-critical
standing-unsigned = Comprobado bajo supervisión y todavía sin firmar.
# $why is one of the void-, ended- or trouble- messages.
# life-critical
standing-void = La verificación está anulada. { $why }
# $by is when the indicator was proved again and who did it, $with the indicator.
# life-critical
standing-proved = { $by }, con { $with }, probado antes y después.
# Behind standing-proved, in the last half hour.
# life-critical
standing-runs-out = Caduca en { $minutes } min.
# Behind both.
# life-critical
standing-void-when = Se anula al quitar un candado o una tapa, al cambiar una fuente, un punto, el alcance o el turno, o al dejar o terminar el trabajo.
# Before whatever else there is to say.
# life-critical
standing-forgotten = Este teléfono ha olvidado lo que escribió: tratar como si estuviera en tensión.
# life-critical
standing-given-up = Se abandonó la desconexión y se está reponiendo la alimentación. { $why } ({ $by })
# $given_up is standing-given-up, which ends without a full stop; $indication one of the two after this.
# life-critical
standing-given-up-indication = { $given_up }. { $indication }
# life-critical
standing-indication = Indicación: { $readings }.
# life-critical
standing-indication-more = Indicación: { $readings }; y { $more } más.
# One of them. $at is a pair or a place.
standing-reading = { $at }, { $reading }

# Each of these is a line of its own. $by is when it was said, and by whom.
# life-critical
standing-deviation = Desviación en el paso «{ $step }»: { $why } ({ $by })
# life-critical
standing-way-differs = Un camino que muestra la red de alimentación no cuenta: { $why } ({ $by })
# life-critical
standing-no-lock = { $place }: sin candado; cierre impedido así: { $how }
# $what is one of the undone- messages.
# life-critical
standing-undone = Anotación retirada: { $what }. { $why } ({ $by })
# $trouble is one of the trouble- messages.
# life-critical
standing-cause-not-found = { $trouble } Causa no hallada: { $cause } ({ $by })
# $dead are the conductors that were tested, $live what stays live beside them.
# life-critical
standing-still-live = Ausencia de tensión verificada: { $dead }. SIGUE EN TENSIÓN: { $live }.
# $was is what the conductors had been noted as before somebody corrected them.
standing-corrected = Conductores corregidos; antes se anotó { $was } a { $volts } V: { $why } ({ $by })
# life-critical
standing-stays-live = SIGUE EN TENSIÓN: { $what } en { $at }. Apantallado: { $screened } ({ $by })
# $says is an answer by which not all was shown.
# life-critical
standing-unshown = { $says } ({ $by })
# life-critical
standing-limit = Hasta { $ac } V AC y { $dc } V DC cuentan como sin indicación, según { $rule }

# What was withdrawn, though it once spoke against the proof.
undone-source = fuente hallada, { $kind } ({ $what })
undone-stored = energía acumulada hallada ({ $what })
undone-check = { $instrument }, hallado no apto para el uso
