# A draft that no licensed electrician has checked.
### The screen of languages.

language-title = Idioma
# $name: what the language calls itself.
language-row = Idioma: { $name }
language-as-device = Como el dispositivo
language-chosen = elegido
# Beside a language that nobody licensed has checked.
language-draft = Borrador: ningún electricista habilitado lo ha revisado.
# Somebody who takes a poor translation for the rule may touch what is live.
# life-critical
language-draft-caution = Este idioma es un borrador que ningún electricista habilitado ha revisado. En caso de duda, leer en inglés.
language-rules-apart = Las reglas de una intervención se eligen con ella, no con el idioma.
