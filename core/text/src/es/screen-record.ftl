# A draft that no licensed electrician has checked.
### The record of a job: what it is, and the way to hand it on.

record-title = Acta de esta intervención
record-what = Un PDF con todo lo anotado: resumen, puntos, candados, fotos, verificaciones, lecturas y cronología.
record-signed = Contiene el diario firmado de la intervención: cualquiera puede comprobar que cada página sale de él.
# life-critical
record-not-now = Cuenta lo que se hizo y se leyó, no cómo está nada ahora. Hecha antes de acabar la intervención, le falta lo que viene después.
record-photos = Fotos
record-handed-back = Instalación devuelta
record-not-yet = todavía no
record-private = No contiene ubicación ni números de teléfono. Mirar fotos y notas antes de pasarla.
record-made = El acta está hecha y se puede comprobar. Lo que venga después no está en ella.
record-share = Compartir el acta
record-share-withheld = Compartirla sin nombres ni firmas
# In whatever language the app speaks.
record-in-english = El acta y sus páginas están en inglés.
