### Two phones beside each other, with no signal: each shows codes, and the other scans them.

near-title = Pass locks to a phone beside you
near-what-it-is = Two phones show each other their jobs and locks as codes. No signal, no office. All that comes is checked.
# What the facts near-first, near-second and near-third are counted by.
near-one = 1
near-two = 2
near-three = 3
near-first = You show your code. The other phone scans it.
near-second = The other phone shows what yours does not have. You scan it.
near-third = Then swap.
near-scan = Scan the other phone
near-show = Show my code
near-shows-has = Your code. The other phone scans it.
# $count entries.
near-shows-entries =
    { $count ->
        [one] 1 entry that the other phone does not have. It scans this.
       *[other] { $count } entries that the other phone does not have. It scans this.
    }
near-part = Part { $part } of { $of }. Parts change by themselves: hold both phones still.
near-drawing = Code { $part } of { $of }, for the other phone to scan.
near-stop = Stop showing

# Notices while codes are scanned.
near-unread = Code not read whole. Hold the other phone still: it starts again.
near-parts-here = { $here } of { $of } parts are here. Hold until all are.
near-has-all = The other phone has all that this one has.
near-lacks =
    { $count ->
        [one] The other phone lacks 1 entry. It scans the code that is shown now.
       *[other] The other phone lacks { $count } entries. It scans the codes that are shown now.
    }
near-nothing-new = Everything that was shown is here already.
near-taken-in =
    { $count ->
        [one] Here now, and checked: 1 entry of the other phone.
       *[other] Here now, and checked: { $count } entries of the other phone.
    }
near-some-aside = Some were put aside: see the jobs that they are about.
