### What a step still lacks, and where an isolation does not hold: a sentence each.

lacks-permit = The permit reference, or why there is none.
lacks-in-charge = Nobody is named who answers for the isolation.
lacks-told = Nobody has been told that the supply goes off.
lacks-barrier = No barrier or danger sign is recorded.
lacks-rotation-before = Which way the lines turn now, or why it was not read.
lacks-circuits = The loads to switch off, or that there are none.
lacks-instrument = No voltage indicator was found fit for use.
lacks-second-instrument = Only one instrument was found fit for use: both the indicator and what proves it are needed, or say that a known live source proves it.
lacks-circuit-off = { $label } is not switched off yet.
lacks-securing = { $at } is not secured.
lacks-own-lock = { $person } has no lock of their own on { $at }.
lacks-sign = No caution sign hangs at { $at }.
lacks-photo = No photo shows the lock and label on { $at }.
lacks-photo-of-tag = No photo shows the tag of { $at }: lock, label and tag in one picture, or the tag in a second one.
lacks-covers = Which covers came off, or that none has to.
lacks-signature = Tested under supervision: somebody on the job who is not under supervision signs it.
# $why is one or two sentences: why the proof is void.
lacks-proof = The last proof is void. { $why } Prove the indicator and test again.
lacks-indicator = The indicator is not proved.
lacks-reference = It is not shown that the protective conductor here is earth.
# $at is a pair or a place, $reading what was read.
lacks-no-voltage = { $at }: { $reading }. Treat as live.
lacks-test = { $direct ->
    [yes] { $first } – { $then }: not tested for direct voltage.
   *[no] { $first } – { $then }: not tested.
}
lacks-any-test = No pair is tested under a proof that stands.
lacks-proof-after = The indicator is not proved again after the tests.
lacks-end-of-work = The work is not finished.
lacks-work = Work has not begun under a proof that stands.
lacks-earth-off = Temporary earth { $label } is still in: { $at }.
lacks-cover-back = Not back yet: { $what }.
lacks-warning = Nobody has been warned that the supply comes back.
lacks-lock-off = The lock of { $owner } is still on { $place }.
lacks-sign-down = The sign is still at { $at }.
lacks-closing = { $at } is still open.
lacks-closing-beside = { $at } is still open. It brings { $own } beside { $others }: say why, or leave it open.
# $finding is a sentence.
lacks-reading-again = { $finding } Said to be mended: read again.
lacks-mending = { $finding } Mend it, or leave off what it feeds.
lacks-answer = { $finding } Say what becomes of it.
lacks-presence = { $first } – { $then }: not read.
lacks-rotation = The rotation is not read.
lacks-rotation-guard = The rotation was not read before: uncouple what turns, or watch a short bump, then read.
lacks-circuit-on = { $label } is still off.
lacks-hand-back = The installation is not handed back.

way-no-point = There is no point of isolation.
# $kind is a kind of source.
way-source-unanswered = { $kind }: not answered.
way-stored-unanswered = Stored energy: not answered.
way-source-beside = { $what }, known at this site ({ $by }): say whether it reaches this work.
way-line = { $line } of the normal supply is opened by no point.
way-opens-protective = { $at } opens { $conductor }, which has to stay joined.
way-no-normal-point = No point cuts off the normal supply yet.
way-neutral = { $neutral } of the normal supply is opened by no point; earthing { $earthing }: it has to be.
way-source-uncut = { $what }: found, and no point cuts it off yet.
way-source-conductor = { $conductor } of { $what } is opened by no point.
# In the place of what a source is, where nobody noted it.
way-source-unnamed = A source
way-direct-unread = { $what }: no reading of direct voltage. Wait { $wait }, then read.
way-direct-shows = { $what }: { $reading }. Treat as live, wait, and read again.
way-direct-early = { $what }: read before the { $wait } on its label were over. Read again.
way-not-open = { $at } is not open.
way-closed-beside = { $at } was closed for another job: { $job }. See that it is open, and say so.
way-no-lock = No lock is on { $at }.
way-not-all-locked = Somebody on the job has no lock of their own on { $at }.
# How many questions: kinds of source that nobody looked for, and sources that are known at the site.
lacks-sources = { $count ->
    [one] 1 question about sources is not answered
   *[other] { $count } questions about sources are not answered
}
