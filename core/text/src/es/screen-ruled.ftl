# A draft that no licensed electrician has checked.
### What a company and its sites set: the limit for dead, how old a proof may get, the company's own rules.

# $limit is the message limit-set.
ruled-limit-none-short = No hay fijado ningún límite para ausencia de tensión.
# life-critical
ruled-limit-none = No hay fijado ningún límite: todo valor distinto de 0 cuenta como indicación.
ruled-title = Reglas de la empresa y de los sitios
ruled-limit = Límite para ausencia de tensión
# life-critical
ruled-limit-holds = Para intervenciones abiertas desde ahora. Una lámpara que se enciende es una indicación, sea cual sea el límite.
ruled-save-limit = Guardar el límite, firma { $name }
ruled-ask = Preguntar a quien es responsable
ruled-age = Qué edad puede tener una verificación
# Minutes. "Our rule": no standard that was found names figures.
ruled-age-most = Como mucho { $between } min entre dos pruebas del detector, y { $holds } min para una verificación (regla nuestra, sin fuente). Un sitio puede fijar menos.
ruled-a-site = Un sitio
ruled-site-set = { $between } min entre pruebas, { $holds } min para una verificación
ruled-site = Sitio
ruled-between = Minutos entre dos pruebas
ruled-holds = Minutos que vale una verificación
ruled-minutes-hint = De 1 a { $most }
ruled-save-site = Guardar para este sitio, firma { $name }
# In the place of a name.
ruled-nobody = nadie todavía
ruled-limit-ac = Límite en voltios AC
ruled-limit-ac-hint = Por debajo de 50, por ejemplo 10
ruled-limit-dc = Límite en voltios DC
ruled-limit-dc-hint = Por debajo de 120, por ejemplo 10
ruled-limit-rule = Regla que lo fija
ruled-limit-rule-hint = Como la llama la empresa, con su fecha
# A text that is sent to the person who is responsible.
ruled-ask-text = Verificamos la ausencia de tensión con un detector de tensión bipolar. ¿Qué valor cuenta como ausencia de tensión en nuestros sitios? Por favor, dar un límite en voltios AC (por debajo de 50) y otro en voltios DC (por debajo de 120), y la regla que los fija. Hasta entonces todo valor distinto de 0 cuenta como indicación.
ruled-asked = El texto está listo para enviar. No hay ningún límite fijado hasta que alguien guarde uno en Reglas de la empresa y de los sitios.
ruled-change = Cambia el límite para ausencia de tensión
ruled-change-charge = Solo lo cambia { $name }, responsable de esta desconexión.
# life-critical
ruled-change-ends = Cambiarlo acaba la verificación.
ruled-change-limit = Cambiar el límite, firma { $name }
ruled-no-limit = Sin límite: solo cuenta 0, firma { $name }

# Rules of a company.
ruled-company-heading = Reglas de la empresa
ruled-company-none = Aquí ningún sitio tiene reglas de empresa. La oficina las envía, o pegar su archivo.
ruled-company-version-by = { $version } ({ $by })
ruled-company-hold = Para intervenciones abiertas desde ahora. Solo piden más, o fijan menos.
ruled-company-site = Sitio del archivo
ruled-company-file-field = Archivo de reglas
ruled-company-file-hint = El texto completo del archivo que dio la empresa
ruled-company-save = Guardar este archivo, firma { $name }
# $version is which rules, of which company.
ruled-company-saved = { $version }. Las intervenciones que se abran aquí desde ahora se hacen según esta versión.
ruled-company-of-job = Reglas de la empresa
ruled-company-newer = Las intervenciones nuevas se hacen aquí según { $version }. Esta sigue con las reglas con que se abrió.
# On the page of a job that was opened where no rules of a company were known.
ruled-company-none-known = Al abrir esta intervención no se conocían reglas de empresa.
# The same, once some were heard of. $when says when, and by whom.
ruled-company-heard = Al abrir esta intervención no se conocían reglas de empresa. Sigue estas desde que se recibieron: { $when }.
ruled-company-whom-to-call = A quién llamar
ruled-company-ringing = Llamando a { $who }.
