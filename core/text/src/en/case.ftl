### What is wrong with a case in a file, and what to write instead. The command line puts the place before it.

case-at = line { $line }, column { $column }
case-placed = { $place }: { $says }
case-too-large = it is larger than { $most } bytes, the most that is read; make several cases of it.
case-empty = it is empty; write at least {"{"}"conductors":[{"{"}"name":"L"{"}"},{"{"}"name":"N"{"}"},{"{"}"name":"PE"{"}"}]{"}"}.
# $field stands in quotation marks.
case-twice = the field { $field } is there twice; keep the one that is true.
case-too-deep = lists inside lists go too deep; keep to the format.
case-crowded = this is not JSON (an object has more than { $most } fields); correct it here.
# $why is in the words of the library that reads JSON.
case-not-json = this is not JSON ({ $why }); correct it here.
# $is is one of the kind- messages.
case-wants-object = An object in braces belongs here, not { $is }.
case-wants-list = A list in square brackets belongs here, not { $is }.
case-wants-text = A text in quotation marks belongs here, not { $is }.
case-wants-one-of = One of { $choices } belongs here, not { $is }.
case-wants-volts = A number of volts without a unit, such as 230, belongs here, not { $is }.
case-wants-flag = true or false belongs here, not { $is }; leave it out if it is not known.
kind-null = null
kind-flag = true or false
kind-number = a number
kind-text = a text
kind-list = a list
kind-object = an object in braces
case-unknown-field = the field { $field } is not known here; known are { $known }.
case-needs-conductors = the field "conductors" is missing; list them, such as [{"{"}"name":"L1","role":"line"{"}"},{"{"}"name":"PE"{"}"}].
case-needs-name = the field "name" is missing; give the conductor's designation, such as L1.
case-needs-what = the field "what" is missing; say what may hold a charge, such as "drive U1".
case-needs-pair = the field "pair" is missing; name the two conductors, such as ["L1","N"].
case-too-many = this list has { $count } items and at most { $most } are taken; shorten it.
case-not-seen = a name needs characters that can be seen, and no white space before or after it.
case-too-long = this has { $count } characters and at most { $most } are taken; shorten it.
case-not-one-of = { $word } is not one of { $choices }.
case-negative = { $volts } V is below zero; write the amount without a sign.
case-too-high = this is more than { $most } V, the most that can be saved; correct it.
case-not-seconds = a whole number of seconds from { $least } to { $most } belongs here.
case-not-minutes = a whole number of minutes from { $least } to { $most } belongs here; rules only set less than that, never more.
case-not-hertz = a whole number of hertz from { $least } to { $most } belongs here.
case-two-orders = "own_order" is given too, and only one of them can count; leave one out.
case-few-conductors = a dead test needs at least two conductors; list all that are at the point of work.
case-name-twice = { $name } is the name of conductors[{ $at }] too; give each its own name.
# $usual and $role are roles as files have them.
case-role-of-name = { $name } designates a { $usual } conductor (IEC 60445), not { $role }; correct the role or the name.
case-role-unsaid = the role of { $name } does not follow from its name; give "role": one of { $roles }.
case-neutral-in-tn-c = TN-C has no neutral beside the PEN conductor, and { $neutral } is a neutral; write TN-C-S, or correct the role.
case-pen-elsewhere = { $earthing } has no PEN conductor, and { $pen } is one; write TN-C or TN-C-S, or correct the role.
case-nominal-too-low = a nominal voltage of less than 1 V is not one; leave it out if it is not known.
case-not-low-voltage = above 1000 V AC or 1500 V DC between conductors this is not low voltage; this method and its indicators do not serve.
case-nominals-apart = { $line_line } V line to line does not belong to { $line_neutral } V line to neutral (it is 1.73 times that, or twice with a mid-point); correct one.
case-not-listed = { $name } is not in "conductors"; add it there or correct it.
case-not-a-pair = a pair is two names, such as ["L1","N"].
case-pair-of-one = both are { $name }; a pair is two different conductors.
case-pole-twice = { $name } is there twice; name each pole once.
case-pole-protective = { $name } is a protective or PEN conductor, and no point of isolation opens it; take it out, and look again at what the isolator opens.
case-pair-twice = { $first } and { $then } are there twice; name each pair once.
case-pair-missing = { $first } and { $then } are missing; an own order names every pair once.
case-levels-unordered = the steps of an indicator rise, and the first is above zero; put them in order.
case-no-levels = an indicator has at least one step; leave the field out for the usual ones.
# $limit is limit-too-high.
case-limit = { $limit }; write 0, or the limit of the company's rule.
case-read-elsewhere = "read_at" says between which conductors; put what was read there under "readings".
case-equipment-twice = this is there twice; name each kind once.
case-nothing-read = what was read is missing; give "volts": 230.0, or "level": "none".
case-read-twice = "volts" is given too; keep the one that was read.
# $steps is a list of voltages.
case-no-such-step = the indicator has no such step (it has { $steps } V); write one of them, list its own in indicator.levels_volts, or give "volts".
