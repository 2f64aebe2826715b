# A draft that no licensed electrician has checked.

### Locks and keys: what is refused, and what keeps a lock on.

no-such-lock = Dieses Schloss gibt es in diesem Auftrag nicht.
lock-off-already = Dieses Schloss ist schon ab.
lock-not-theirs = Nur { $owner } darf dieses Schloss abnehmen. Ist { $owner } nicht erreichbar, kann eine benannte befugte Person die Entfernung in Abwesenheit beginnen.
# $owners is a list of people.
lock-boxed = Der Schlüssel dieses Schlosses ist im Schließkasten, und daran hängt noch das Schloss von { $owners }.
lock-owed = Das Schloss von { $owner } wurde in Abwesenheit abgenommen, Stelle: { $place }. Das muss { $owner } vor dem Weiterarbeiten gesagt und hier eingetragen werden.
lock-cut-by-owner = Nur { $owner } schneidet das eigene Schloss auf.
lock-given-by-owner = Nur { $owner } darf dieses Schloss übergeben.
key-in-box = Der Schlüssel ist in einem Schließkasten. Nur wer ein eigenes Schloss an diesem Kasten hat, kann dieses Schloss übernehmen.
key-theirs-already = Es gehört dieser Person schon.
key-not-on-job = Die Person zuerst in den Auftrag aufnehmen.
has-to-confirm = { $person } muss das bestätigen.
offer-gone = Dieses Angebot gilt nicht mehr.
shift-not-theirs = Nur wer für die Freischaltung verantwortlich ist, kann die Schicht übergeben.
shift-to-nobody = Eine andere Person am Auftrag wählen.
shift-gap = Es entstünde eine Lücke: { $person } hat noch kein eigenes Schloss an { $at }.
authority-unsaid = Angeben, welche Funktion die befugte Person an diesem Standort hat und wie sie erreicht wurde.
authority-learns = Wer unter Aufsicht arbeitet, verantwortet keine Entfernung in Abwesenheit.
authority-owns = Die befugte Person muss jemand anders sein als der Inhaber.
authority-first = Zuerst die befugte Person benennen.
forced-own-lock = Das ist das eigene Schloss: selbst abnehmen, oder angeben, dass es aufgeschnitten wurde.
forced-why-unsaid = Angeben, warum es nicht auf den Inhaber warten kann.
forced-no-authority = Noch ist keine befugte Person benannt.
forced-not-on-site = Nicht eingetragen, wie festgestellt wurde, dass der Inhaber nicht am Standort ist.
forced-not-sought = Kein Versuch eingetragen, den Inhaber zu erreichen.
not-forced = Dieses Schloss wurde nicht in Abwesenheit des Inhabers abgenommen.
box-held = Der Schlüssel dieses Schlosses ist hier: { $place }. Daran hängt das Schloss von { $owner }: dieses zuerst abnehmen.
padlock-gone = Dieses Schloss hängt sonst nirgends mehr.
padlock-other = Das ist nicht das Schloss mit dieser Aufschrift und diesem Inhaber.
padlock-on = { $label } von { $owner } hängt schon: { $place }, { $job }. Angeben, ob es umgehängt wurde, durch beide geht oder ein anderes ist.
owner-not-on-job = { $owner } ist nicht im Auftrag: zuerst aufnehmen.
lock-no-label = Angeben, was auf dem Schloss steht: Nummer oder Name unterscheidet es von jedem anderen.
key-in-no-box = Für den Schlüssel einen Schließkasten dieses Auftrags wählen.
box-key-not-kept = Der Schlüssel eines persönlichen Schlosses am Schließkasten bleibt beim Inhaber.
box-takes-locks = An einen Schließkasten kommt ein Schloss und nichts anderes.
no-such-box = Diesen Schließkasten gibt es in diesem Auftrag nicht.
lock-on-closed = { $at } ist nicht offen: ein Schloss an einer eingeschalteten Stelle sichert nichts.
point-takes-lock = Diese Stelle ist abschließbar: Schloss anbringen. Anderes ist nur für nicht abschließbare Stellen, mit Angabe, wie.
point-takes-no-lock = Diese Stelle ist nicht abschließbar. Angeben, mit welchem anderen Mittel sie gesichert ist.
one-lock-only = Ein Schloss hängt schon. Mehrere nur an Schließbügel oder Schließkasten.
lock-not-on-hasp = Das vorhandene Schloss geht direkt durch das Gerät. Der Inhaber muss es zuerst an den Schließbügel hängen: abnehmen und neu anbringen.
