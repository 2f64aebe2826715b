### Why a proof is void: one or two sentences each.

ended-lock-off = A lock came off { $place }.
ended-stored-found = Stored energy was found: { $what }.
ended-source-found = Another source was found: { $what }.
ended-point-added = A point of isolation was added: { $label }.
ended-point-opened = { $label } was opened.
ended-closed-between = { $label } was closed for another job in between.
ended-point-closed = { $label } was closed.
ended-some-point-closed = A point was closed.
ended-opened-and-closed = { $label } was opened on one device and closed on another that did not know of it.
ended-scope = The scope of the job changed.
ended-zone = The work zone in the supply network changed.
ended-shift = The shift changed.
ended-way-answered = A way that the supply network shows was answered for.
ended-work-left = The work was left.
ended-work-finished = The work is finished.
ended-work-stopped = The work was stopped.
ended-given-up = The isolation was given up.
ended-cover-off = A cover came off: { $what }.
ended-limit = The limit for dead was changed.
ended-company-limit = Rules of the company were heard of. They set a lower limit for dead.
ended-neutral-parted = A neutral was disconnected: { $what }.
ended-withdrawn = An entry of this job was withdrawn.
ended-system-corrected = Conductors, earthing or voltage had been noted wrong.
ended-earth-off = Temporary earth { $label } came off.
ended-stays-live = Something stays live: { $what }.
# $says is an answer with what it is about.
ended-answered = { $says }.

# $at is a pair or a place, $reading what was read.
trouble-voltage = Indication: { $at } { $reading }.
trouble-not-earth = The reference is not earth: readings against it show nothing. Find the break first.
trouble-indicator-failed = The indicator failed its second proof: every test since the first proof is void.

# $trouble is one of the trouble- messages.
void-trouble-unknown = { $trouble } Whoever began this test did not know of it, or of its cause.
void-indicator-unfit = The indicator of this test was found not fit for use.
void-prover-unfit = What the indicator was proved on was found not fit for use.
void-test-twice = The cause was not found: test once more, with another indicator or by another person.
void-alone = This is told without what is known beside the job.
void-newer = A newer version of this app wrote something here that this one cannot read. Treat as live, and update this app.
void-forgotten = This phone has forgotten what it wrote. Prove again.
void-source-known = Another source is known at this site: { $what } ({ $by }).
void-source-found = Another source was found at this site: { $what }.
void-network = The supply network shows a way that no lock cuts. { $says }
void-zone-unsaid = The site's supply is drawn, and nobody has said within the hour what is worked on in it.
# $says is what the entry says, without a full stop.
void-aside = An entry about this job is put aside: { $says }. Look at the spot, then prove again.
void-lights-late = The indicator lights too late for the voltages of this job: it shows nothing here.
void-prover-unknown = What the indicator was proved on is not known on this device.
void-not-this-shift = The indicator was not checked in this shift.
void-clock-doubt = A clock cannot be right: nobody knows how old the proof is. Prove again.
void-too-old = The proof is too old. Prove again.
