### What the supply network has to say against something. Where a message takes $says, that is one or more sentences of the network's own.

not-of-site = This is not about a site.
link-named = { $id } is the name of a link already. Give another name.
node-named = { $id } is the name of a board, source or load already. Give another name.
network-too-many = A site's network takes at most { $most } parts of each kind. Leave out what is far from the work.
part-not-there = { $id } is not in this network.
part-gone-unsaid = Write how you know that it is not there.
part-locked = A lock of { $owner } is on { $part }, { $job }: it cannot be crossed out while it is.
rules-too-wide = A site sets less, not more: 1 to { $between } min between two proofs, 1 to { $holds } min for a proof.
not-in-network = { $id } is not in the supply network.
network-not-drawn = No supply network is drawn for this site yet.
point-already = { $link } is a point of this job already.
network-way = The supply network shows a way that no lock cuts. { $says } Lock it, or say under Supply network why it does not count.
point-held = { $at } stays open: lock { $lock } of { $owner } is on it, for { $job }.
point-not-yet = { $at } stays open. { $says }
