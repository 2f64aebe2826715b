### What an entry says, in one sentence without a full stop at its end: for time lines, lists and the record. What people wrote stands in it
### as they wrote it.

# $says is what this version can read of it.
entry-more = { $says } (a newer version wrote more here than this one can read)
# life-critical
entry-newer = Written by a newer version and not readable here ({ $kind }): update this app
# What is about a site or a device and not about a job.
entry-not-of-job = Not of this job

# What a part is called that is withdrawn, or that this device does not know. These stand in the place of its name.
part-point-withdrawn = a withdrawn point
part-circuit-withdrawn = a withdrawn circuit
part-lock = lock { $label } of { $owner } on { $place }
part-lock-unknown = a lock not known here
part-direct-withdrawn = withdrawn
part-source-unknown = A source of this site
part-cover-unknown = a cover

entry-job-opened = Job opened: { $title }
entry-job-opened-by = Job opened: { $title }, by the rules of { $company }, version { $version }
entry-earth-in = Temporary earth { $label } in: { $at }
entry-earth-off = Temporary earth { $label } off
entry-system-corrected = Corrected: { $system }, { $volts } V, { $earthing }. { $why }
entry-stays-live = Stays live: { $what } at { $at }. Screened: { $screened }
entry-scope = Scope changed to: { $scope }. { $why }
entry-permit = Permit { $reference }
entry-no-permit = No permit: { $why }
entry-no-permit-unsaid = No permit: no reason given
entry-in-charge = { $person } answers for the isolation
entry-works = { $person } works
entry-learns = { $person } learns under supervision
entry-left-job = { $person } left the job
# $who was told, $how: in which way.
entry-told-off = Told that the supply goes off: { $who }, { $how }
# life-critical
entry-told-back = Warned that the supply comes back: { $who }, { $how }
# $what is a barrier or a sign, $at where it stands.
entry-barrier = { $what } at { $at }
# $kind is a kind of source.
entry-source-found = { $kind }: found, { $what } at { $at }
# $looked is where somebody looked.
entry-source-none = { $kind }: none found. Looked: { $looked }
# $wait is one of the wait- messages.
entry-stored-found = Stored energy: { $what } at { $at }, wait { $wait }
entry-stored-found-label = Stored energy: { $what } at { $at }, wait { $wait } (its label: { $label })
entry-stored-none = Stored energy: none found. Looked: { $looked }
entry-point = Point of isolation { $label }, { $at }
entry-box = Lock box { $label }, { $at }
# $serves is what the circuit feeds.
entry-circuit = Circuit { $label }: { $serves }
# Circuits are switched off before the supply goes off, so that nothing is switched under load.
entry-no-circuit = Nothing to switch off first: { $why }
# life-critical
entry-instrument =
    { $instrument } checked: { $fit ->
        [yes] fit for use
       *[no] not fit for use
    }
# $seen is how it is known to be off.
entry-circuit-off = { $circuit } off. { $seen }
# $seen is how it is known to be open.
# life-critical
entry-point-found-open = { $point } found open. { $seen }
# $off_load: whether no current flowed when it was opened.
# life-critical
entry-point-opened =
    { $point } opened { $off_load ->
        [yes] off load
       *[no] under load
    }. { $seen }
# life-critical
entry-no-lock = { $place } secured without a lock by { $person }: { $how }
# life-critical
entry-lock = Lock { $label } of { $owner } on { $place }
# One cable or bar goes through two devices and holds both open.
# life-critical
entry-lock-through = Lock { $label } of { $owner } on { $place }: one cable or bar through it and another
entry-sign = Caution sign at { $at }
# $tag is what is written on a tag.
entry-tag-hangs = Tag { $tag } hangs at { $at }
entry-tag-hangs-why = Tag { $tag } hangs at { $at }. { $why }
entry-tag-gone = Tag { $tag } is off { $at }: { $why }
entry-tag-read = Tag { $tag } read at { $at }
# $hash is the beginning of the picture's hash.
entry-photo = Photo of { $of }, SHA-256 { $hash }…
# $photo is entry-photo, or this message again; $doubt one of the photo- messages.
entry-photo-doubt = { $photo }. { $doubt }
entry-photo-kept = { $photo } Kept because: { $note }
# $lock is part-lock. The key goes with it.
entry-key-offered = Offered to { $person }: { $lock }
entry-key-taken = Lock and key taken over, signed
# $told is what the next shift has to know.
entry-shift-offered = Shift offered to { $person }: { $told }
entry-shift-taken = Shift taken, signed
# life-critical
entry-lock-cut = Cut by its owner, no key: { $lock }. { $why }
# life-critical
entry-lock-off = Taken off by its owner: { $lock }
# $authority is who allows it, $function their post, $reached how they were reached.
entry-forced-begun = Forced removal begun under { $authority }, { $function }, reached { $reached }: { $lock }. { $why }
entry-owner-not-on-site = Owner not on site: { $how }
entry-owner-sought = Owner sought: { $how }. { $outcome }
# life-critical
entry-lock-forced = Taken off in the owner's absence: { $lock }
entry-owner-told = Owner told: { $how }
entry-cover-off = Cover off: { $what }
entry-no-cover = No cover comes off: { $why }
# $on is a proving unit or entry-live-source. Before the tests the indicator is proved, after them it is proved again.
# life-critical
entry-indicator =
    Indicator { $again ->
        [yes] proved again
       *[no] proved
    } on { $on }: { $works ->
        [yes] works
       *[no] does not respond
    }. { $indicator }
entry-live-source = a source known to be live, { $what }
# $reading is one of the reading- messages.
# life-critical
entry-reading =
    { $dc ->
        [yes] { $pair } DC: { $reading }
       *[no] { $pair }: { $reading }
    }
# life-critical
entry-voltage-met = Voltage met at { $at }: { $reading }
# $how is how it was shown: one of the shown-earth- messages, or what somebody wrote.
# life-critical
entry-reference =
    Reference { $holds ->
        [yes] shown to be earth
       *[no] not earth
    }: { $how }
entry-run-signed = Test under supervision signed
# life-critical
entry-direct = Direct voltage at { $at }: { $reading }
# The cause of a voltage or a failure that was met.
entry-cause = Cause: { $cause }
# life-critical
entry-cause-not-found = Cause not found: { $cause }
# life-critical
entry-work-stopped = Work stopped, everybody clear
# $clear is how it is known that everybody is clear.
entry-given-up = Isolation given up: { $why }. { $clear }
# The figures below which a reading counts as no indication; with a limit, limit-set says it.
entry-no-limit = No limit for figures any more
# Written by the device that heard of them: none were known where the job was opened.
entry-company-heard = Heard of the rules of { $company }, version { $version }: the job is done by them from here on
# life-critical
entry-source-elsewhere = { $source } does not reach this work: { $why }
# Two points have the same label. $apart is how they are told apart.
entry-points-parted = { $point } is another point than the one alike: { $apart }
entry-rotation-before = Rotation before isolating { $rotation }. { $how }
entry-rotation-before-unread = Rotation not read before isolating: { $how }
# What became of a reading with the supply back that was not as it should be.
entry-answer-mended = Reading out of tolerance mended: { $who }. { $how }
entry-answer-left-off = Reading out of tolerance left off: { $who }. { $how }
entry-answer-accepted = Reading out of tolerance accepted: { $who }. { $how }
entry-aside-answered = An entry that is put aside was looked into: { $why }
entry-work-began = Work began under the proof that stood
entry-work-left = Work left: { $why }
# life-critical
entry-neutral-parted = Neutral disconnected: { $what }
# $clear is how it is known that everybody is clear.
entry-work-finished = Work finished. { $clear }
entry-cover-back = Cover back: { $what }
entry-sign-down = Sign down at { $at }
# life-critical
entry-point-closed = { $point } closed
# life-critical
entry-point-closed-beside = { $point } closed beside another source: { $why }
# $pair is two conductors.
entry-presence = Supply back, { $pair }: { $reading }
# $rotation is one of the rotation- messages.
entry-rotation = Rotation { $rotation }. { $how }
entry-rotation-uncoupled = Rotation { $rotation }. { $how } (what turns was uncoupled)
entry-rotation-bumped = Rotation { $rotation }. { $how } (a short bump was watched)
entry-circuit-on = { $circuit } on
entry-handed-back = Handed back to { $to }, signed. { $note }
# $step is a step's title.
# life-critical
entry-passed-over = Skipped { $step }: { $why }
entry-withdrawn = An entry was withdrawn: { $why }
# $switch is a link of the supply network.
entry-point-drawn = { $point } is { $switch } in the supply network
# $zone is a list of parts of the supply network.
entry-zone = Work zone in the supply network: { $zone }
# $ways is a list of links.
# life-critical
entry-way-answered = Answered for a way in the supply network ({ $ways }): { $why }
