### Questions of the procedure. Of each: the question, what stands before an answer in a list, its answers as buttons, and what has to be said
### with an answer. $of is the point or source that it is asked of, as people wrote it.

# Where an answer is told: $asked is what the question is about, $answer a button's text, $words what was said with it, which may be empty.
asked-told = { $words ->
    [none] { $asked }: { $answer }
   *[other] { $asked }: { $answer }. { $words }
}
asked-lacks = Answer: { $asked }
# An answer that nothing goes on under. Life-critical.
asked-stopped = { $asked }: { $answer }. Treat as live, put it right, and answer again.
asked-first = Answer this first: { $asked }
asked-unknown = This question does not belong to this job, or has no such answer. Go back and answer what is asked here.
# On a button; $answer is one of the answers.
asked-save = Save: { $answer }
asked-not-so = By what is recorded this is not so yet. Do it and list it first, or give another answer.
asked-words = Say how, what or where: a word or two.
# What was read with an instrument for an answer, and what was said with it.
asked-answer-with = { $answer }: { $with }
asked-read-said = { $read }. { $words }
asked-as-shown = As it is shown, nothing rounded
asked-save-reading = Save this reading
asked-save-nothing = Save: no indication
# $read is a figure with its unit; $answer is the answer that stops. Life-critical.
asked-over = { $read } is kept as: { $answer }. Treat as live, and find its cause.
asked-unread-current = Type the current that the clamp shows, in amperes.
asked-unread-voltage = Type the voltage that was read, or save that there was no indication.

asked-told-each-other = Have owner and contractor told each other how they lock, and who controls the points?
asked-told-each-other-short = Owner and contractor
asked-told-each-other-told = Told each other
asked-told-each-other-told-words = Who told whom
asked-told-each-other-one-employer = One employer only

asked-instrument-fit = Do the indicator and its leads have two poles, and category and voltage for this place?
asked-instrument-fit-short = Instruments for this place
asked-instrument-fit-fits = Yes, read on instrument and leads
asked-instrument-fit-does-not-fit = No

asked-right-board = Is { $of } the right switch? See what it feeds live, without opening anything.
asked-right-board-short = Right switch, { $of }
asked-right-board-seen-live = Seen live
asked-right-board-seen-live-words = What was seen live: a lamp, a load, a meter
asked-right-board-traced = Traced
asked-right-board-traced-words = How it was traced
asked-right-board-not-shown = Could not be shown
asked-right-board-not-shown-words = Why not

asked-labels = Can the labels of { $of } and of the equipment both be read in the photos, and do they match?
asked-labels-short = Both labels, { $of }
asked-labels-in-photo = Both can be read, and match
asked-labels-not-shown = Could not be shown
asked-labels-not-shown-words = Which label, and why not
asked-labels-do-not-match = They do not match

asked-starts-itself = Can { $of } start or come back by itself, or from afar?
asked-starts-itself-short = Starting by itself, { $of }
asked-starts-itself-blocked = Blocked at its controller
asked-starts-itself-blocked-words = How it is blocked
asked-starts-itself-cannot = It cannot
asked-starts-itself-cannot-words = How that is known
asked-starts-itself-not-blocked = Yes, and it is not blocked

asked-tried-to-start = Work the normal controls, with everybody near told. Does anything start? Set them back to off.
asked-tried-to-start-short = Tried to start
asked-tried-to-start-nothing-moved = Nothing started
asked-tried-to-start-not-tried = Not tried
asked-tried-to-start-not-tried-words = Why not
asked-tried-to-start-it-started = It started

asked-neutral-current = Clamp the neutral before it is disconnected, everything else live. Does it carry current?
asked-neutral-current-short = Current in the neutral
asked-neutral-current-none = No current
asked-neutral-current-none-read = Amperes on the clamp
asked-neutral-current-none-words = Which neutral, with which clamp
asked-neutral-current-current = It carries current

asked-live-beside = Is anything within reach of the work still live?
asked-live-beside-short = Live parts beside the work
asked-live-beside-none = Nothing within reach
asked-live-beside-screened = Screened
asked-live-beside-screened-words = What is live, and how it is screened
asked-live-beside-not-screened = Live and not screened

asked-left-inside = Count tools, links, shorts and earths. Is anything left inside?
asked-left-inside-short = Left inside
asked-left-inside-nothing = Nothing: all counted out
asked-left-inside-something = Something is left inside

asked-rcd = Were the RCDs tested, with the supply back?
asked-rcd-short = RCDs
asked-rcd-measured = By instrument
asked-rcd-measured-words = Trip time and current, with what
asked-rcd-button = By their button only
asked-rcd-none-fitted = None fitted
asked-rcd-not-tested = Not tested
asked-rcd-not-tested-words = Why not

asked-controls-back = Is the control of { $of } back to automatic?
asked-controls-back-short = Control of { $of }
asked-controls-back-automatic = Back to automatic
asked-controls-back-automatic-words = Who was told
asked-controls-back-left-blocked = Left blocked
asked-controls-back-left-blocked-words = Why, and who knows

asked-high-line = Which line stands higher to neutral? Read each line to N, before anything is opened.
asked-high-line-short = The high line
asked-high-line-l1 = L1
asked-high-line-l1-words = What was read, L1, L2 and L3 to N
asked-high-line-l2 = L2
asked-high-line-l2-words = What was read, L1, L2 and L3 to N
asked-high-line-l3 = L3
asked-high-line-l3-words = What was read, L1, L2 and L3 to N
asked-high-line-not-known = Not known
asked-high-line-not-known-words = Why it could not be read

asked-grounded-line = Which line is at earth? Read each line to PE, before anything is opened.
asked-grounded-line-short = The line at earth
asked-grounded-line-l1 = L1
asked-grounded-line-l1-words = What was read, L1, L2 and L3 to PE
asked-grounded-line-l2 = L2
asked-grounded-line-l2-words = What was read, L1, L2 and L3 to PE
asked-grounded-line-l3 = L3
asked-grounded-line-l3-words = What was read, L1, L2 and L3 to PE
asked-grounded-line-not-known = Not known
asked-grounded-line-not-known-words = Why it could not be read

asked-earthed-pole = Is a pole at earth? Read each to PE, before anything is opened.
asked-earthed-pole-short = The pole at earth
asked-earthed-pole-plus = L+
asked-earthed-pole-plus-words = What was read, L+ and L- to PE
asked-earthed-pole-minus = L-
asked-earthed-pole-minus-words = What was read, L+ and L- to PE
asked-earthed-pole-none = Neither
asked-earthed-pole-none-words = How that is known
asked-earthed-pole-not-known = Not known
asked-earthed-pole-not-known-words = Why it could not be read

asked-temporary-earths = Are temporary earths asked for here? Prove dead first, then fit them below.
asked-temporary-earths-short = Temporary earths
asked-temporary-earths-fitted = Fitted, as listed
asked-temporary-earths-not-asked = Not asked for
asked-temporary-earths-not-asked-words = By whose rule

asked-charge-returned = Read the stored charge again at the work, after the wait. Does any come back?
asked-charge-returned-short = Charge coming back
asked-charge-returned-gone = No charge came back
asked-charge-returned-gone-read = Volts DC at the work
asked-charge-returned-gone-words = Where it was read, with what
asked-charge-returned-shorted = A short stays on
asked-charge-returned-shorted-words = Where, and what it is marked with
asked-charge-returned-returned = Charge came back

asked-coupled = Load the conductor that showed a voltage: a low-impedance tester, its button held. Does it stay?
asked-coupled-short = The voltage under load
asked-coupled-other-cause = Another cause, noted
asked-coupled-other-cause-words = What showed that cause
asked-coupled-gone-under-load = Gone under load: coupled
asked-coupled-gone-under-load-read = Volts left under load
asked-coupled-gone-under-load-words = Which conductor, with what
asked-coupled-stays-under-load = It stays under load: a source

asked-current-transformers = Are current transformers in there? Never open a secondary under current: short it first.
asked-current-transformers-short = Current transformers
asked-current-transformers-none = None in there
asked-current-transformers-left-closed = There are; nothing of them is opened
asked-current-transformers-shorted = Shorted before opening
asked-current-transformers-shorted-words = Where, how many shorts
asked-current-transformers-open = A secondary is open

asked-shorts-off = Are the shorts of the current transformers off, and their current seen back?
asked-shorts-off-short = Shorts of current transformers
asked-shorts-off-off = Off, and current seen back
asked-shorts-off-off-words = Where the current was seen
asked-shorts-off-left-on = Left on
asked-shorts-off-left-on-words = Why, and who knows

asked-interlocks = Two supplies can meet here. Look at each interlock and shutter. Is any bridged or held?
asked-interlocks-short = Interlocks and shutters
asked-interlocks-none-fitted = None fitted
asked-interlocks-in-order = Looked at, none is bridged
asked-interlocks-in-order-words = Which, and how they were tried
asked-interlocks-bridged = One is bridged or held

asked-polarity-back = Are the poles where they are marked? Read L+ to L- with its sign.
asked-polarity-back-short = Polarity
asked-polarity-back-as-marked = As marked
asked-polarity-back-as-marked-words = What was read, with its sign
asked-polarity-back-reversed = Reversed

asked-counted-back = Are instruments, keys, labels and drawings all back in their place?
asked-counted-back-short = Counted back
asked-counted-back-all = All are back
asked-counted-back-missing = Something is missing
asked-counted-back-missing-words = What, and who looks for it

asked-released-by = Who lets the work start? If it is somebody else than the tester, they sign below first.
asked-released-by-short = Let the work start
asked-released-by-tester = Whoever tested lets it start
asked-released-by-another = Another person, who signed

asked-line-at-earth = Is one of the lines at earth? Read each line to PE, before anything is opened.
asked-line-at-earth-short = A line at earth
asked-line-at-earth-none = None: all read alike
asked-line-at-earth-none-words = What was read, L1, L2 and L3 to PE
asked-line-at-earth-not-known = Not known
asked-line-at-earth-not-known-words = Why it could not be read
asked-line-at-earth-one-is = One is: correct the conductors
asked-line-at-earth-corrected = One is, and the conductors are corrected
# A point of a company's own checklist: $of is what the company wrote, a sentence or a few words.
asked-company = { $of }
asked-company-short = { $of }
asked-company-done = Done
asked-company-does-not-apply = Does not apply
asked-company-does-not-apply-words = Why it does not apply
asked-company-not-as-it-should-be = Not as it should be

# What is seen live as a rule, offered in a tap where nobody has said anything like it before; it stands in the record as said.
usual-lamp = Lamp lit
usual-load = Load running
usual-tester = Socket tester lit
