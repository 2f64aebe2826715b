### The single-line diagram. What begins with label- stands in the drawing itself and has to be short.

label-part = { $drawn } of { $all } parts, those nearest to the work
label-locked-open = locked open
label-lock-no-use = lock no use
label-closed = closed
label-open = open
# $state is one of the four before.
label-kind =
    { $kind ->
        [changeover] changeover
        [tie] tie
        [inlet] inlet
       *[inverter] inverter
    }, { $state }
# What a part of the network is, where nothing more is known of it.
label-node =
    { $kind ->
        [source] source
        [board] board
        [load] load
        [junction] junction
       *[unknown] unknown
    }
label-transformer = transformer
label-takes-no-lock = takes no lock
label-uncovered = uncovered
label-work-zone = work zone
label-reaches-zone = reaches the zone
label-not-traced = not traced
label-not-drawn =
    { $links ->
        [one] 1 link
       *[other] { $links } links
    } not drawn

drawing = Single-line diagram.
drawing-in-part = { $drawn } of { $all } parts are drawn.
drawing-more = { $more } more parts are drawn and not named here.
# $about is a list: what the part is, what is written on it, where it is, what is to say of it.
drawn-part = { $id }: { $about }.
# $ways is drawn-by or drawn-over, or several.
drawn-part-ways = { $id }: { $about }; { $ways }.
drawn-source = source, { $sort }
drawn-by = to { $to } by { $id } ({ $about })
drawn-over = to { $to } over { $id } ({ $about })
drawn-lock-counts-not = locked, and the lock does not count
drawn-uncovered = on an uncovered path
