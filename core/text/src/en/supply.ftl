### What the supply network answers. Ids, labels and kinds stand in it as the network has them.

other-sources = This knows only what is in the network. Look for other sources where the work is, and prove dead.
answer-cut = cut
answer-not-cut = not cut
answer-not-shown = not shown
# $zone is a list of parts.
check-cut = No path in this network reaches { $zone }.
check-not-shown = It is not shown that { $zone } is cut: treat as live.
check-not-cut =
    Not cut: { $sources ->
        [one] one source reaches
       *[other] { $sources } sources reach
    } { $zone }. Treat as live.

# $more is what is written on the part, or what it is.
named = { $id } ({ $more })

doubt-lock-untraced = { $link } is locked, but nobody knows what it is: go and look what it parts.
doubt-lock-parts-nothing = { $link } is { $kind }, which parts nothing: lock the switch at its end.
doubt-takes-no-lock = { $link } is given as locked, but the network says that it takes no lock.
# $left is one of the left- messages.
doubt-leaves-joined = { $link } is locked, but { $left }.
doubt-lock-on-node =
    { $id } is given as locked, but it is { $kind ->
        [source] a source
        [board] a board
        [load] a load
        [junction] a junction
       *[unknown] a part that nobody knows
    }, and locks are on links.
doubt-lock-nowhere = { $id } is given as locked, but it is not in the network.
doubt-node-unknown = Nobody knows what { $node } is: it may be a source.
doubt-node-undescribed = { $node } is named by a link, and nobody described it: it may be a source.
doubt-node-untraced = At { $node } something was not traced: { $what }.
doubt-link-untraced = Nobody traced { $link } from { $from } to { $to }.
left-unnoted = nobody noted which conductors it opens
left-named = it does not open { $names }
left-fewer = it opens { $opens } of { $of } conductors

path-in-zone = { $source } is a source, and it is in the work zone itself.
path-bare = { $source } reaches { $to } with nothing between them that parts the conductors.
# $over is a list of links, each with where it stands.
path-through = { $source } reaches { $to } through { $over }.
path-through-more = { $source } reaches { $to } through { $over }, and { $more } more.
over-untraced = { $link } (not traced)
over-switch = { $link } ({ $stands }, { $lock })
over-kind = { $link } ({ $kind }, { $stands }, { $lock })
normally-open = normally open
normally-closed = normally closed
over-lock-counts-not = the lock on it does not count
over-lock-takes-none = takes no lock
over-lock-not-open = not locked open
over-lock-not = not locked
zone-gone = { $zone } is not in the supply network any more.

# $path is one of the path- messages.
proposals-bare = Nothing that takes a lock cuts { $zone } off. { $path }
proposals-no-source = No source in this network reaches { $zone }, so there is nothing to lock. Look for what feeds it.
# $parts is one of the doubt- messages, or several.
proposals-not-shown = With none of these is it shown that { $zone } is cut: { $parts }
proposals-not-all = The network is large: between the first and the last of these there may be others, and the first may need fewer locks.
proposal-loses-none = Lock { $links }: no circuit is lost.
proposal =
    Lock { $links }: { $lost ->
        [one] 1 circuit is lost
       *[other] { $lost } circuits are lost
    }.
worth-best = fewest circuits lost and fewest locks
worth-fewest-lost = fewest circuits lost
worth-fewest-locks = fewest locks
worth-between = between the two

stays-locked = { $link } still has a lock that { $job } counts on.
stays-fed-already = { $job } already has a supply where its locks are on. { $path }
stays-fed = { $job } then has a supply where its locks are on. { $path }
caution-joins = Both sides have a supply, from { $first } and from { $then }: close it only if they may be joined.
caution-no-supply = Neither side has a supply yet.
touched-cut = { $job }: { $zone } is no longer cut. { $why } Treat as live.
touched-not-cut = { $job }: { $zone } was not cut, and now less so. { $why } Treat as live.

# What is no network. These begin with a small letter: a place stands before them.
network-too-large = it has { $nodes } nodes and { $links } links, and at most { $most } of each are taken; leave out what is far from the work.
network-inlet-alone = an inlet needs a source at one end: the set that is plugged in; add it as a node of the kind source.
network-no-zone = no work zone was named; name the board or part to be worked on.
network-not-there = { $id } is not in it; name a node or a link as the network does.
network-no-link = { $id } is no link of it; name a switch as the network does.
network-not-switched = { $id } is { $kind }, which nobody opens or closes.
# $first is a place in the file.
network-id-twice = { $id } is the id of { $first } too; give each its own id.
network-ends-alike = { $id } is the other end too; a link joins two different nodes.
list-too-long = this list has { $count } items and at most { $most } are taken; shorten it.
network-tell-empty = a name in it is empty; say who must be told, or leave it out.
network-sort-of-none = only a source has a sort, and this is of the kind { $kind }; correct one.
network-not-lockable = { $kind } does not part conductors so that it could be locked open; draw the switch at its end as a link of its own.
network-id-empty = an id needs at least one character.
network-id-comma = { $id } has a comma, which parts ids in lists; write it without.
network-unseen = a text needs characters that can be seen, and no white space before or after it.
network-too-long = this has { $count } characters and at most { $most } are taken; shorten it.
network-conductor-count = 1 to { $most } conductors belong here, not { $count }.
network-conductor-twice = { $name } is empty or there twice; name each conductor once.
