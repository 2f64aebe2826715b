### A site's supply network: what is drawn of it, its parts, and a job beside it.

supply-of = Supply of { $site }
supply-unknown-site = a site that is not on this phone
supply-nothing-drawn = Nothing is drawn yet. Begin with the source, then each board with what feeds it.
supply-add-link = Add a switch or cable
supply-nodes = Sources, boards and loads
supply-stops = Stops: { $what }
supply-not-traced = Not traced: { $what }
supply-links = Switches and cables
# $kind is what the link is.
supply-link = { $from } to { $to }, { $kind }
supply-add-node = Add a source, board or load

# What a part is.
supply-part-source-unsaid = A source, nobody said which
supply-part-source = Source: { $sort }
supply-part-source-other = Another source
supply-part-board = Board
supply-part-load = Load
supply-part-junction = Joint or terminals
# life-critical
supply-part-unknown = Nobody knows what it is: it may be a source
supply-part-takes-lock = takes a lock
supply-part-takes-no-lock = takes no lock
supply-part-normally-open = normally open
supply-part-normally-closed = normally closed
supply-part-link-switch = Switch, breaker or fuses
supply-part-link-cable = Cable
supply-part-link-changeover = Way of a changeover switch
supply-part-link-tie = Tie between two supplies
supply-part-link-inverter = Inverter that can feed by itself
supply-part-link-inlet = Inlet for a mobile set
supply-part-link-transformer = Transformer
supply-part-link-unknown = Not traced

# The form for a part.
supply-part-new-node = A source, board or load
supply-part-fed-by = What feeds it, if you know
supply-part-from = From
supply-part-to = To
supply-part-save = Save this part
supply-part-new-link = A switch or cable
supply-part-joins = It joins two parts. Add the first source, board or load before it.
# $what is what the part is.
supply-part-title = { $part }, { $what }
supply-part-noted = Noted
supply-part-save-correction = Save the correction
supply-part-last = Last
supply-part-seen-open = I see it open
supply-part-seen-closed = I see it closed
supply-part-changed = This part was corrected or crossed out meanwhile
supply-part-not-there = It is not there
supply-part-gone = How you know
supply-part-gone-hint = Traced to its end and taken out
supply-part-cross-out = Cross it out
supply-part-name = Name, as it is labelled
supply-part-name-hint = Short and its own, such as: DB4
supply-part-what = What it is
supply-part-written = What else is written on it
supply-part-where = Where it is
supply-part-where-hint = Room and board
supply-part-what-stops = What stops when it has no supply
supply-part-what-stops-hint = Such as: lights of the finishing hall
supply-part-tell = Who to tell first, one in a line
supply-part-untraced = Something else here that nobody has traced
# life-critical
supply-part-untraced-hint = Such as: a cable into the wall behind it. While it stands here nothing is shown to be cut.
supply-part-link-name = Name of the switch or cable
supply-part-link-name-hint = As it is labelled, such as: Q4
supply-part-link-kind = Kind of link
supply-part-link-written = What else is written on the switch
supply-part-link-where = Where the switch is
supply-part-lockable = Can it be locked open?
supply-part-lockable-yes = It takes a lock
supply-part-lockable-no = It takes no lock
supply-part-closed = Closed
supply-part-open = Open
supply-part-normally = In normal service it is
supply-part-conductors = Conductors that have to be opened here
supply-part-poles = Conductors that it opens
# $seen is seen-open or seen-closed.
supply-part-seen = Saved: { $link } { $seen }.

# A job beside the network.
supply-cut-not-drawn = Not drawn for this site.
supply-cut-say-zone = Drawn. Say what is worked on.
# $zone is a list of parts of the network.
# life-critical
supply-cut-all = Every way to { $zone } is cut or answered for, as far as it is drawn.
# life-critical
supply-cut-some =
    { $count ->
        [one] 1 way to { $zone } is not cut by the points of this job.
       *[other] { $count } ways to { $zone } are not cut by the points of this job.
    }
supply-cut-title = Supply network
supply-cut-no-site = This job has no site, so no network belongs to it.
supply-cut-nothing-drawn = Nothing is drawn of this site's supply. A drawing shows which ways lead to the work, and which points cut them.
supply-cut-draw = Draw the network
supply-cut-whole = The whole network
# life-critical
supply-cut-zone-gone = { $zone } is not in the supply network any more. Say again what is worked on.
supply-cut-now = With what is locked now
supply-cut-planned = With the points of this job locked
# $check is what a look at the network found.
# life-critical
supply-cut-now-says = With what is locked now: { $check }
# life-critical
supply-cut-planned-says = With the points of this job locked: { $check }
# life-critical
supply-cut-now-answered = With what is locked now: { $check } A person answers for each of these ways.
# life-critical
supply-cut-planned-answered = With the points of this job locked: { $check } A person answers for each of these ways.
supply-cut-more = And { $count } more.
supply-cut-shared = { $link } is shared
supply-cut-shared-lock = Lock { $lock } of { $owner } is on it, for { $job }.
supply-cut-does-not-count = Does not count
supply-cut-does-not-count-why = { $why } ({ $by })
supply-cut-zone = What is worked on
supply-cut-link-itself = { $link } itself
supply-cut-zone-parts = Parts of the network that are worked on
supply-cut-save-zone = Save the work zone
supply-cut-points = Points that would cut it
supply-cut-lock = Lock { $points }
supply-cut-points-here = These are points of this job.
supply-cut-plan = Plan { $points }
supply-cut-proposals = These are proposals: you decide. Plan other points if you like; what they leave open is shown here.
# $worth is what speaks for a proposal.
supply-cut-worth = { $worth }.
supply-cut-nothing-lost = No circuit is lost.
supply-cut-stops = Stops: { $circuits }.
supply-cut-tell = Tell: { $people }.
supply-cut-if-not = If a way does not count
# life-critical
supply-cut-if-not-says = This is saved in your name and shown with every proof. Local rules may forbid it: ask who is in charge of the isolation.
supply-cut-which = Which of them
supply-cut-why = Why it does not count
supply-cut-why-hint = Such as: taken out, ends seen and insulated
supply-cut-answer = Answer for it in my name
supply-cut-zone-saved = Saved. The ways that lead there are shown.
supply-cut-planned-points = Planned: { $points }.
supply-cut-tell-people = Tell { $people }.
supply-cut-poles-unknown = Nobody noted which conductors { $link } opens. Look, and mark them here.
