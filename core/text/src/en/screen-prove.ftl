### The screens of proving dead.

# life-critical
prove-covers-caution = Treat every conductor behind a cover as live until all is proved. Gloves and face protection as local rules say.
prove-cover-back = Cover back
prove-cover-off = Cover off
prove-cover-by = { $cover } ({ $by })
prove-cover = Cover that comes off
prove-cover-hint = One at a time. Each has to come back before energising.
# A cover that nearly every board has, and the button that says that it alone is off.
prove-usual-cover = Front cover
prove-usual-cover-off = The front cover is off, no other
prove-no-cover-why = Or: why no cover has to come off
prove-no-cover-hint = Test points can be reached from outside.
prove-no-cover = No cover comes off

prove-known-source = A source known to be live
prove-on = Proved on
prove-which-source = Which live source, if it was one
prove-which-source-hint = Not part of this isolation
prove-indicator = Indicator
prove-proved = Proved
# life-critical
prove-stop-work = The proof has ended under the work.
prove-stop-work-first = Stop work first
prove-ranges = Prove it on every range and every lamp or sound that the test uses, right before the test.
# life-critical
prove-no-indicator = No voltage indicator was found fit for use. Check one first.
prove-check-indicator = Check an indicator
prove-voltage-indicator = Voltage indicator
# Two statements of whoever taps them.
prove-responds = It responds as it should
prove-responds-not = It does not respond as it should
prove-is-proved = The indicator is proved.
# life-critical
prove-failed = Do not use this indicator. Take another, and check and prove that one.
# life-critical
prove-indication = An indication. Stop, and treat as live.

prove-pair = { $first } – { $then }
# A pair of which only direct voltage is left to read.
prove-pair-dc = { $first } – { $then } DC
prove-pair-hint = Other probe on { $then }. Expected: { $expected }.
prove-set = Set { $group } of { $groups }: first probe stays on { $conductor }. Lift the second one first.
prove-nothing = Nothing
prove-continuity = Continuity
prove-lit = Lit
prove-save-readings = Save these readings
prove-seen-since = An indication seen since
# The last pair, after a slip of the thumb: what was read before stays in the record.
prove-read-again = Read { $pair } again
# life-critical
prove-gave = This pair gave an indication
prove-not-tested = not tested
prove-then = { $first }, then { $then }
prove-results = Readings of this test
prove-column-pair = Pair
prove-column-reading = Reading
# life-critical
prove-between-late = The indicator was proved too long ago. Prove it now, then read the pairs since then again.
prove-between = Prove the indicator again within { $minutes } min; the test then goes on.
prove-again-by = Proved again
# life-critical
prove-supervised = Tested under supervision. Who signs has watched it, and answers for it.
prove-signs = { $name } signs for this test
prove-sign-as = Sign this test as { $name }
prove-hand-on = Hand the device on
# life-critical
prove-after = The same indicator, right after the last pair. If it does not respond now, every test is void.
prove-goes-on = The indicator is proved. The test goes on.
# life-critical
prove-after-failed = Every test since the first proof is void. Treat as live. Take another indicator and begin again.

prove-behind = What may be behind it
prove-likeliest = Likeliest
prove-or = Or
prove-next = Next
prove-odd = Odd one out
prove-odd-pair = { $first } – { $then }: test this pair again.
# life-critical
prove-guess = A guess from the readings, and from how common each cause is. No guess makes a conductor dead.
prove-more = More readings, to find the cause
# life-critical
prove-more-caution = Only if your rules let you measure on live parts, with the protection that they ask for.
prove-more-hint = First probe on { $first }, other probe on { $then }.
prove-more-pad = Pairs not read yet
prove-more-save = Save the further readings

# What to do with the hands first, then with the cover.
# life-critical
prove-stop-pair = Treat as live. Take the probe off { $then } first, then off { $first }, and put the cover between you and it.
# life-critical
prove-stop = Treat as live. Take the probes off, and put the cover between you and it.
prove-unexpected = { $reading }, expected no indication ({ $by })
prove-do-now = What to do now
# life-critical
prove-do-1 = 1. Keep everybody away from the conductors. Tell the person who answers for the isolation.
prove-do-2 = 2. Find the cause: the wrong point opened, a source that was missed, a neutral shared with another circuit, an induced voltage.
prove-do-3 = 3. A source that was missed goes into the job, with its own point and lock.
# life-critical
prove-do-4 = 4. Then prove the indicator and test every pair again. An explanation does not make a conductor dead.
prove-missed = A source was missed
prove-points-again = Look at the points again
prove-level = If you saw it: { $at } was lit to
prove-level-volts = { $volts } V
prove-level-save = Save the level
prove-trouble = { $trouble } ({ $by })
prove-cause = What the cause was, and what was done about it
prove-cause-hint = It stays with the record.
prove-cause-save = Save the cause, then prove again
# life-critical
prove-cause-none-means = If it was looked for and not found: two whole tests follow, the second with another indicator or by another person.
prove-cause-none = Cause not found

prove-earth-shown = Shown to be earth
# life-critical
prove-earth-shown-not = Not earth
prove-earth-shown-by = { $how } ({ $by })
prove-earth-live-line = PE to a line that is known to be live shows the full voltage
prove-earth-main-terminal = Low-resistance continuity from PE to the main earthing terminal
prove-earth-bonded = Low-resistance continuity from PE to metalwork that is bonded elsewhere
prove-earth-how = How it was shown
prove-earth-where = Where, or another way
prove-earth-where-hint = Which live line or which terminal
prove-earth-live-shows = A live line shows to earth
prove-earth-about = About { $volts } V
prove-earth-about-or = About { $least } or { $volts } V
# Two statements of whoever taps them.
prove-earth-proved = Earth proved
# life-critical
prove-earth-proved-not = Earth not proved
# life-critical
prove-earth-failed = The reference is not earth. Treat as live, and find the break before any other test.

prove-discharge-none = No stored energy and no source of direct voltage is in this job.
prove-discharge-unread = not read
prove-discharge-read = { $reading } ({ $by })
prove-discharge-wait = { $what }, wait { $wait }
# life-critical
prove-discharge-caution = Set the instrument to direct voltage. Wait as long as the label says, then read, plus to minus and each to PE; enter the greatest.
prove-discharge-volts = Direct voltage at { $what }, in volts
prove-discharge-volts-hint = The greatest of the three
prove-discharge-save = Save the reading at { $what }
