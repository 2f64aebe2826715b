# A draft that no licensed electrician has checked.

### What is asked while the plan is made.

ask-plan-permit-or-none = Entweder eine Nummer oder ein Grund, warum es keine gibt: eines davon löschen.
ask-plan-permit-reference = Nummer des Erlaubnisscheins angeben, oder unten, warum es keinen gibt.
ask-plan-permit-why-none = Angeben, warum es keinen Erlaubnisschein gibt.
ask-plan-person = Person wählen.
ask-plan-duty = Wählen, was die Person in diesem Auftrag tut.
ask-plan-told-who = Angeben, wer über das Abschalten informiert wurde.
ask-plan-told-how = Angeben, wie informiert wurde.
ask-plan-barrier = Angeben, welche Absperrung oder welches Schild es ist.
ask-plan-barrier-at = Angeben, wo es steht oder hängt.
ask-plan-circuit = Stromkreis angeben, wie am Verteiler beschriftet.
ask-plan-circuit-row = Die kleinere Nummer zuerst, höchstens 48 Stromkreise auf einmal: F1 bis F6.
ask-plan-circuit-serves = Angeben, was der Stromkreis versorgt.
ask-plan-circuits-why-none = Angeben, warum nichts vorab abzuschalten ist.
ask-plan-source-elsewhere = Angeben, warum sie nicht bis zu dieser Arbeit reicht.
ask-plan-source-kind = Wählen, welche Art von Quelle es ist.
ask-plan-source-kinds = Jede Art antippen, die gesucht und nicht gefunden wurde.
ask-plan-source-found-or-none = Es ist angegeben, was gefunden wurde. Als gefunden speichern oder zuerst diese zwei Felder leeren.
ask-plan-looked = Angeben, wo nachgesehen wurde. Ohne Nachsehen keine Antwort.
ask-plan-control-terminals = Klemmen der Steuerspannung an der Arbeitsstelle angeben, mit Kommas: X3:1, X3:2.
ask-plan-control-volts = Spannung der Steuerspannung angeben, z. B. 24.
ask-plan-source-what = Angeben, was gefunden wurde, wie beschriftet.
ask-plan-source-at = Angeben, wo sie einspeist.
ask-plan-stored-found-or-none = Es ist angegeben, was gefunden wurde. Als gefunden speichern oder zuerst diese Felder leeren.
ask-plan-stored-stands = In diesem Auftrag wurde gespeicherte Energie gefunden, und das gilt. Im Verlauf zurückziehen, wenn es falsch war.
ask-plan-stored-what = Angeben, was die Energie speichert.
ask-plan-stored-at = Angeben, wo dessen Klemmen sind.
ask-plan-stored-minutes = Wartezeit in ganzen Minuten angeben, z. B. 5: mindestens 1, höchstens eine Woche.
ask-plan-box = Nummer oder Namen des Schließkastens angeben.
ask-plan-box-at = Angeben, wo der Schließkasten hängt.
ask-plan-point = Freischaltstelle angeben, wie beschriftet, z. B.: Q1 Hauptschalter.
ask-plan-point-at = Angeben, wo die Freischaltstelle ist.
ask-plan-point-kind = Wählen, welche Art Gerät die Freischaltstelle ist.
ask-plan-point-lockable = Wählen, ob die Freischaltstelle abschließbar ist.
ask-plan-point-poles = Jeden Leiter ankreuzen, den die Freischaltstelle trennt.
ask-plan-point-cuts = Wählen, was die Stelle trennt: die Normaleinspeisung oder eine gefundene Quelle.
ask-plan-point-switch = Wählen, welcher Schalter im Versorgungsnetz es ist, oder dass er dort nicht gezeichnet ist.
ask-plan-lights-from-ac = Die niedrigste AC-Spannung wählen, die der Spannungsprüfer anzeigt.
ask-plan-lights-from-dc = Die niedrigste DC-Spannung wählen, die der Spannungsprüfer anzeigt, oder dass er keine anzeigt.
ask-plan-instrument-kind = Wählen, wofür das Prüfgerät ist.
ask-plan-instrument-name = Hersteller und Typ des Prüfgeräts angeben.
ask-plan-instrument-serial = Seriennummer angeben, oder dass es keine hat.
ask-plan-instrument-listed = Dieses Prüfgerät steht schon in der Liste. Oben wählen.
ask-plan-instrument = Wählen, welches Prüfgerät kontrolliert wurde.
ask-plan-rotation-where = Angeben, wo gemessen wurde.
ask-plan-rotation-why-not = Angeben, warum nicht gemessen wurde.

instrument-leads = Leitungen
instrument-tips = Spitzen
instrument-case = Gehäuse
instrument-date = Prüffrist
