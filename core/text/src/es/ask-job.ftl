# A draft that no licensed electrician has checked.
### What is asked about a job as a whole: its set-up, its entries, the work, the shift.

ask-job-title = Escribir qué trabajo es, por ejemplo: cambiar el contactor K3.
ask-job-site = Escribir el nombre del sitio.
ask-job-place = Escribir en qué lugar del sitio está.
ask-job-equipment = Escribir qué equipo se va a desconectar, como está rotulado.
ask-job-system = Elegir qué conductores hay en el punto de trabajo.
ask-job-rules = Elegir según qué reglas se hace la intervención, o que son las propias del sitio.
ask-job-system-why = Escribir qué estaba mal en los conductores.
ask-job-own = Dar los conductores con comas, al menos dos: L1, L2, N1=neutral, PE, y de otra alimentación S+=dc-plus@String A. Funciones: line, neutral, pen, protective, mid-point, dc-plus, dc-minus, control.
ask-job-earth = Escribir el número de la tierra temporal y dónde está puesta.
ask-job-stays-live = Escribir qué sigue en tensión, dónde está y cómo está apantallado.
ask-job-earthing = Elegir el esquema de tierra, o que no se sabe.
ask-job-order = Elegir el orden del ensayo de ausencia de tensión.
ask-job-volts = Escribir la tensión nominal: fase a neutro; sin neutro, fase a fase.
ask-job-tolerance = Elegir la tolerancia de la alimentación.
ask-job-reason = Dar el motivo.
ask-job-entry-wrong = Decir qué estaba mal en la anotación.
ask-job-at-the-spot = Escribir cómo está en el lugar.
ask-job-give-up-why = Escribir por qué se abandona la desconexión.
ask-job-give-up-clear = Escribir cómo se vio que todos están fuera de la zona.
ask-job-prove-first = Todavía no hay ausencia de tensión verificada. Verificarla primero.
ask-job-clear = Escribir cómo se vio que no quedan personas, herramientas ni tierras temporales.
ask-job-met-at = Escribir dónde se halló la tensión.
ask-job-left-why = Escribir por qué se deja el trabajo.
ask-job-source-kind = Elegir de qué clase de fuente se trata.
ask-job-source-what = Escribir qué fuente es.
ask-job-source-at = Escribir por dónde entra la fuente.
ask-job-scope-new = Escribir en qué se va a trabajar ahora.
ask-job-scope-why = Escribir por qué cambia el alcance.
ask-job-neutral-parted = Escribir qué neutro se desconectó y dónde.
ask-job-shift-to = Elegir quién recibe el turno.
ask-job-shift-told = Escribir qué se le dijo.
ask-job-shift-offered = El turno no está ofrecido. Primero lo ofrece la persona saliente.
