# A draft that no licensed electrician has checked.
### A long list that is narrowed by words.

find-words = In dieser Liste suchen
find-words-hint = Beliebige Wörter: wer, wo, was
find-look = Suchen
# A part that is taken for the whole hides locks.
# life-critical
find-shown = Hier stehen { $shown } von { $all }. Die anderen sind ausgelassen.
find-all = Alle zeigen
