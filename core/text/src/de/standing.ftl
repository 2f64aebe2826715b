# A draft that no licensed electrician has checked.

### The banner: what stands proved, in one or two sentences under the words of the state- messages, and what stands beside a proof.

# life-critical
standing-handed-back = An: { $to }, { $by }. Die Versorgung ist wieder eingeschaltet: gilt als unter Spannung stehend.
# life-critical
standing-restoring = Die Arbeit ist beendet, die Versorgung wird wieder eingeschaltet.
# life-critical
standing-nothing-proved = Noch ist nichts festgestellt.
# life-critical
standing-not-proved-again = Jedes Paar ist geprüft; der Spannungsprüfer ist noch nicht erneut auf Funktion geprüft.
# life-critical
standing-untested =
    { $pairs ->
        [one] 1 Paar ist noch nicht geprüft.
       *[other] { $pairs } Paare sind noch nicht geprüft.
    }
# life-critical
standing-unsigned = Unter Aufsicht geprüft und noch nicht unterschrieben.
# $why is one of the void-, ended- or trouble- messages.
# life-critical
standing-void = Der Nachweis ist ungültig. { $why }
# $by is when the indicator was proved again and who did it, $with the indicator.
# life-critical
standing-proved = { $by }, mit: { $with }, vorher und nachher auf Funktion geprüft.
# Behind standing-proved, in the last half hour.
# life-critical
standing-runs-out = Läuft ab in { $minutes } min.
# Behind both.
# life-critical
standing-void-when = Ungültig, sobald ein Schloss oder eine Abdeckung abgenommen wird, sich Quelle, Freischaltstelle, Arbeitsumfang oder Schicht ändert oder die Arbeit verlassen oder beendet wird.
# Before whatever else there is to say.
# life-critical
standing-forgotten = Dieses Telefon hat vergessen, was es geschrieben hat: gilt als unter Spannung stehend.
# life-critical
standing-given-up = Die Freischaltung wurde abgebrochen, die Versorgung wird wieder eingeschaltet. { $why } ({ $by })
# $given_up is standing-given-up, which ends without a full stop; $indication one of the two after this.
# life-critical
standing-given-up-indication = { $given_up }. { $indication }
# life-critical
standing-indication = Anzeige: { $readings }.
# life-critical
standing-indication-more = Anzeige: { $readings }; und { $more } weitere.
# One of them. $at is a pair or a place.
standing-reading = { $at } { $reading }

# Each of these is a line of its own. $by is when it was said, and by whom.
# life-critical
standing-deviation = Abweichung bei: { $step }: { $why } ({ $by })
# life-critical
standing-way-differs = Ein Weg, den das Versorgungsnetz zeigt, zählt nicht: { $why } ({ $by })
# life-critical
standing-no-lock = { $place }: ohne Schloss gesichert: { $how }
# $what is one of the undone- messages.
# life-critical
standing-undone = { $what }: zurückgezogen. { $why } ({ $by })
# $trouble is one of the trouble- messages.
# life-critical
standing-cause-not-found = { $trouble } Ursache nicht gefunden: { $cause } ({ $by })
# $dead are the conductors that were tested, $live what stays live beside them.
# life-critical
standing-still-live = Spannungsfrei festgestellt: { $dead }. WEITER UNTER SPANNUNG: { $live }.
# $was is what the conductors had been noted as before somebody corrected them.
standing-corrected = Leiter berichtigt, vorher notiert als { $was } mit { $volts } V: { $why } ({ $by })
# life-critical
standing-stays-live = WEITER UNTER SPANNUNG: { $what }, Ort: { $at }. Abgedeckt: { $screened } ({ $by })
# $says is an answer by which not all was shown.
# life-critical
standing-unshown = { $says } ({ $by })
# life-critical
standing-limit = Bis { $ac } V AC und { $dc } V DC zählen als keine Anzeige, nach { $rule }

# What was withdrawn, though it once spoke against the proof.
undone-source = { $kind } gefunden ({ $what })
undone-stored = Gespeicherte Energie gefunden ({ $what })
undone-check = { $instrument }: nicht einsatzfähig befunden
