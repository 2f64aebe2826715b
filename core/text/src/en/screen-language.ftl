### The screen of languages.

language-title = Language
# $name: what the language calls itself.
language-row = Language: { $name }
language-as-device = As this device
language-chosen = chosen
# Beside a language that nobody licensed has checked.
language-draft = A draft: no licensed electrician has checked it.
# Somebody who takes a poor translation for the rule may touch what is live.
# life-critical
language-draft-caution = This language is a draft that no licensed electrician has checked. In doubt, read it in English.
language-rules-apart = Which rules a job follows is chosen with the job, not by the language.
