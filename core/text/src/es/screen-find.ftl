# A draft that no licensed electrician has checked.
### A long list that is narrowed by words.

find-words = Buscar en esta lista
find-words-hint = Palabras cualesquiera: quién, dónde, qué
find-look = Buscar
# A part that is taken for the whole hides locks.
# life-critical
find-shown = Aquí se muestran { $shown } de { $all }. Los demás se omiten.
find-all = Mostrar todo
