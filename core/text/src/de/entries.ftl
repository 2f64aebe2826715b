# A draft that no licensed electrician has checked.

### What an entry says, in one sentence without a full stop at its end: for time lines, lists and the record. What people wrote stands in it
### as they wrote it.

# $says is what this version can read of it.
entry-more = { $says } (eine neuere Version hat hier mehr geschrieben, als diese lesen kann)
# life-critical
entry-newer = Von einer neueren Version geschrieben und hier nicht lesbar ({ $kind }): App aktualisieren
# What is about a site or a device and not about a job.
entry-not-of-job = Nicht zu diesem Auftrag

# What a part is called that is withdrawn, or that this device does not know. These stand in the place of its name.
part-point-withdrawn = zurückgezogene Freischaltstelle
part-circuit-withdrawn = zurückgezogener Stromkreis
part-lock = Schloss { $label } von { $owner }, an: { $place }
part-lock-unknown = Schloss, hier nicht bekannt
part-direct-withdrawn = zurückgezogen
part-source-unknown = Quelle dieses Standorts
part-cover-unknown = eine Abdeckung

entry-job-opened = Auftrag eröffnet: { $title }
entry-job-opened-by = Auftrag eröffnet: { $title }, nach den Regeln von { $company }, Version { $version }
entry-earth-in = Erdungsvorrichtung { $label } angebracht: { $at }
entry-earth-off = Erdungsvorrichtung { $label } entfernt
entry-system-corrected = Berichtigt: { $system }, { $volts } V, { $earthing }. { $why }
entry-stays-live = Bleibt unter Spannung: { $what }, Ort: { $at }. Abgedeckt: { $screened }
entry-scope = Arbeitsumfang geändert in: { $scope }. { $why }
entry-permit = Erlaubnisschein { $reference }
entry-no-permit = Kein Erlaubnisschein: { $why }
entry-no-permit-unsaid = Kein Erlaubnisschein: kein Grund angegeben
entry-in-charge = { $person } ist für die Freischaltung verantwortlich
entry-works = { $person } arbeitet mit
entry-learns = { $person } arbeitet unter Aufsicht
entry-left-job = { $person } hat den Auftrag verlassen
# $who was told, $how: in which way.
entry-told-off = Über das Abschalten informiert: { $who }, { $how }
# life-critical
entry-told-back = Vor dem Wiedereinschalten gewarnt: { $who }, { $how }
# $what is a barrier or a sign, $at where it stands.
entry-barrier = { $what }, Ort: { $at }
# $kind is a kind of source.
entry-source-found = { $kind }: gefunden, { $what }, Ort: { $at }
# $looked is where somebody looked.
entry-source-none = { $kind }: keine gefunden. Nachgesehen: { $looked }
# $wait is one of the wait- messages.
entry-stored-found = Gespeicherte Energie: { $what }, Ort: { $at }, Wartezeit { $wait }
entry-stored-found-label = Gespeicherte Energie: { $what }, Ort: { $at }, Wartezeit { $wait } (Aufschrift: { $label })
entry-stored-none = Gespeicherte Energie: keine gefunden. Nachgesehen: { $looked }
entry-point = Freischaltstelle { $label }, { $at }
entry-box = Schließkasten { $label }, { $at }
# $serves is what the circuit feeds.
entry-circuit = Stromkreis { $label }: { $serves }
# Circuits are switched off before the supply goes off, so that nothing is switched under load.
entry-no-circuit = Nichts vorab abzuschalten: { $why }
# life-critical
entry-instrument =
    { $instrument } kontrolliert: { $fit ->
        [yes] einsatzfähig
       *[no] nicht einsatzfähig
    }
# $seen is how it is known to be off.
entry-circuit-off = { $circuit } aus. { $seen }
# $seen is how it is known to be open.
# life-critical
entry-point-found-open = { $point } offen vorgefunden. { $seen }
# $off_load: whether no current flowed when it was opened.
# life-critical
entry-point-opened =
    { $point } geöffnet, { $off_load ->
        [yes] lastfrei
       *[no] unter Last
    }. { $seen }
# life-critical
entry-no-lock = { $place }: ohne Schloss gesichert, durch { $person }: { $how }
# life-critical
entry-lock = Schloss { $label } von { $owner }, an: { $place }
# One cable or bar goes through two devices and holds both open.
# life-critical
entry-lock-through = Schloss { $label } von { $owner }, an: { $place }: ein Seil oder eine Stange geht durch diese und eine weitere Stelle
entry-sign = Schaltverbotsschild an: { $at }
# $tag is what is written on a tag.
entry-tag-hangs = Codeschild { $tag } hängt an: { $at }
entry-tag-hangs-why = Codeschild { $tag } hängt an: { $at }. { $why }
entry-tag-gone = Codeschild { $tag } nicht mehr an { $at }: { $why }
entry-tag-read = Codeschild { $tag } gelesen an: { $at }
# $hash is the beginning of the picture's hash.
entry-photo = Foto von { $of }, SHA-256 { $hash }…
# $photo is entry-photo, or this message again; $doubt one of the photo- messages.
entry-photo-doubt = { $photo }. { $doubt }
entry-photo-kept = { $photo } Behalten, weil: { $note }
# $lock is part-lock. The key goes with it.
entry-key-offered = Zur Übernahme angeboten, an { $person }: { $lock }
entry-key-taken = Schloss und Schlüssel übernommen, unterschrieben
# $told is what the next shift has to know.
entry-shift-offered = Schicht zur Übernahme angeboten, an { $person }: { $told }
entry-shift-taken = Schicht übernommen, unterschrieben
# life-critical
entry-lock-cut = Vom Inhaber aufgeschnitten, kein Schlüssel: { $lock }. { $why }
# life-critical
entry-lock-off = Vom Inhaber abgenommen: { $lock }
# $authority is who allows it, $function their post, $reached how they were reached.
entry-forced-begun = Entfernung in Abwesenheit begonnen, verantwortet von { $authority }, { $function }, erreicht: { $reached }: { $lock }. { $why }
entry-owner-not-on-site = Inhaber nicht am Standort: { $how }
entry-owner-sought = Inhaber gesucht: { $how }. { $outcome }
# life-critical
entry-lock-forced = In Abwesenheit des Inhabers abgenommen: { $lock }
entry-owner-told = Inhaber informiert: { $how }
entry-cover-off = Abdeckung ab: { $what }
entry-no-cover = Keine Abdeckung abzunehmen: { $why }
# $on is a proving unit or entry-live-source. Before the tests the indicator is proved, after them it is proved again.
# life-critical
entry-indicator =
    Spannungsprüfer { $again ->
        [yes] erneut auf Funktion geprüft
       *[no] auf Funktion geprüft
    } an: { $on }: { $works ->
        [yes] funktioniert
       *[no] spricht nicht an
    }. { $indicator }
entry-live-source = bekannte Quelle unter Spannung, { $what }
# $reading is one of the reading- messages.
# life-critical
entry-reading =
    { $dc ->
        [yes] { $pair } DC: { $reading }
       *[no] { $pair }: { $reading }
    }
# life-critical
entry-voltage-met = Spannung angetroffen, Ort: { $at }: { $reading }
# $how is how it was shown: one of the shown-earth- messages, or what somebody wrote.
# life-critical
entry-reference =
    Bezugsleiter { $holds ->
        [yes] als Erde nachgewiesen
       *[no] nicht Erde
    }: { $how }
entry-run-signed = Prüfung unter Aufsicht unterschrieben
# life-critical
entry-direct = Gleichspannung, Ort: { $at }: { $reading }
# The cause of a voltage or a failure that was met.
entry-cause = Ursache: { $cause }
# life-critical
entry-cause-not-found = Ursache nicht gefunden: { $cause }
# life-critical
entry-work-stopped = Arbeit eingestellt, alle aus dem Gefahrenbereich
# $clear is how it is known that everybody is clear.
entry-given-up = Freischaltung abgebrochen: { $why }. { $clear }
# The figures below which a reading counts as no indication; with a limit, limit-set says it.
entry-no-limit = Kein Grenzwert für Messwerte mehr
# Written by the device that heard of them: none were known where the job was opened.
entry-company-heard = Von den Regeln von { $company }, Version { $version }, gehört: der Auftrag läuft von hier an nach ihnen
# life-critical
entry-source-elsewhere = { $source } reicht nicht bis zu dieser Arbeit: { $why }
# Two points have the same label. $apart is how they are told apart.
entry-points-parted = { $point } ist eine andere Stelle als die gleichlautende: { $apart }
entry-rotation-before = Drehfeld vor dem Freischalten: { $rotation }. { $how }
entry-rotation-before-unread = Drehfeld vor dem Freischalten nicht gemessen: { $how }
# What became of a reading with the supply back that was not as it should be.
entry-answer-mended = Messwert außerhalb der Toleranz behoben: { $who }. { $how }
entry-answer-left-off = Messwert außerhalb der Toleranz, bleibt ausgeschaltet: { $who }. { $how }
entry-answer-accepted = Messwert außerhalb der Toleranz hingenommen: { $who }. { $how }
entry-aside-answered = Einem zurückgestellten Eintrag wurde nachgegangen: { $why }
entry-work-began = Arbeit begonnen unter dem Nachweis, der galt
entry-work-left = Arbeit verlassen: { $why }
# life-critical
entry-neutral-parted = Neutralleiter aufgetrennt: { $what }
# $clear is how it is known that everybody is clear.
entry-work-finished = Arbeit beendet. { $clear }
entry-cover-back = Abdeckung wieder angebracht: { $what }
entry-sign-down = Schild abgenommen an: { $at }
# life-critical
entry-point-closed = { $point } eingeschaltet
# life-critical
entry-point-closed-beside = { $point } neben einer anderen Quelle eingeschaltet: { $why }
# $pair is two conductors.
entry-presence = Versorgung wieder da, { $pair }: { $reading }
# $rotation is one of the rotation- messages.
entry-rotation = Drehfeld: { $rotation }. { $how }
entry-rotation-uncoupled = Drehfeld: { $rotation }. { $how } (was sich dreht, war abgekuppelt)
entry-rotation-bumped = Drehfeld: { $rotation }. { $how } (kurz angetippt und beobachtet)
entry-circuit-on = { $circuit } ein
entry-handed-back = Zurückgegeben an { $to }, unterschrieben. { $note }
# $step is a step's title.
# life-critical
entry-passed-over = Übersprungen: { $step }: { $why }
entry-withdrawn = Ein Eintrag wurde zurückgezogen: { $why }
# $switch is a link of the supply network.
entry-point-drawn = { $point } im Versorgungsnetz: { $switch }
# $zone is a list of parts of the supply network.
entry-zone = Arbeitsbereich im Versorgungsnetz: { $zone }
# $ways is a list of links.
# life-critical
entry-way-answered = Verantwortung übernommen für einen Weg im Versorgungsnetz ({ $ways }): { $why }
