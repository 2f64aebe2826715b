# A draft that no licensed electrician has checked.

### What the supply network has to say against something. Where a message takes $says, that is one or more sentences of the network's own.

not-of-site = Das betrifft keinen Standort.
link-named = { $id } heißt schon eine Verbindung. Anderen Namen angeben.
node-named = { $id } heißt schon ein Verteiler, eine Quelle oder ein Verbraucher. Anderen Namen angeben.
network-too-many = Das Netz eines Standorts nimmt höchstens { $most } Teile jeder Art auf. Weglassen, was weit von der Arbeit entfernt ist.
part-not-there = { $id } ist nicht in diesem Netz.
part-gone-unsaid = Angeben, woher bekannt ist, dass es nicht da ist.
part-locked = Ein Schloss von { $owner } hängt an { $part }, { $job }: so lange nicht zu streichen.
rules-too-wide = Ein Standort setzt weniger, nicht mehr: 1 bis { $between } min zwischen zwei Funktionsprüfungen, 1 bis { $holds } min für einen Nachweis.
not-in-network = { $id } ist nicht im Versorgungsnetz.
network-not-drawn = Für diesen Standort ist noch kein Versorgungsnetz gezeichnet.
point-already = { $link } ist schon eine Freischaltstelle dieses Auftrags.
network-way = Das Versorgungsnetz zeigt einen Weg, den kein Schloss trennt. { $says } Abschließen, oder unter „Versorgungsnetz“ angeben, warum er nicht zählt.
point-held = { $at } bleibt offen: Schloss { $lock } von { $owner } hängt daran, für Auftrag: { $job }.
point-not-yet = { $at } bleibt offen. { $says }
