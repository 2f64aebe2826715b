# A draft that no licensed electrician has checked.

### The screen of languages.

language-title = Sprache
# $name: what the language calls itself.
language-row = Sprache: { $name }
language-as-device = Wie das Gerät
language-chosen = gewählt
# Beside a language that nobody licensed has checked.
language-draft = Entwurf: von keiner Elektrofachkraft geprüft.
# Somebody who takes a poor translation for the rule may touch what is live.
# life-critical
language-draft-caution = Diese Sprache ist ein Entwurf, den keine Elektrofachkraft geprüft hat. Im Zweifel auf Englisch lesen.
language-rules-apart = Nach welchen Regeln ein Auftrag läuft, wird beim Auftrag gewählt, nicht durch die Sprache.
