### What is wrong with a file of a network, and what to write instead.

# $place is one of the place- messages or a path, $why any message of this file.
file-error = { $place }: { $why }
place-line = line { $line }
place-field = line { $line }, { $field }
place-column = line { $line }, column { $column }
place-row = { $table }, row { $row }
remark-kind = { $place }.kind: { $word } is no kind known here ({ $known }), so it is taken for unknown: where it can be reached nothing is shown to be cut.

file-too-large = it is larger than { $most } bytes, the most that is read; leave out what is far from the work.
file-empty-json = it is empty; write at least { $least }.
file-empty-csv = it is empty; its first line names the fields: { $known }.
# $why is what the reader of the format says, in English.
file-no-csv = this is no CSV ({ $why }); save it as comma-separated values in UTF-8.
file-quote-open = a quotation mark in it is not closed; write two for one inside a text.
file-cells = it has { $count } cells and the first line has { $first }; make them as many.
file-field-unknown = the field { $field } is not known here; known are { $known }.
file-field-twice = the field { $field } is there twice; keep the one that is true.
# $fix is one of the fix- messages.
file-field-missing = the field "{ $field }" is missing; { $fix }.
fix-id = give its name, as on the device
fix-node-kind = say source, board, load or junction
fix-link-kind = say switch, cable or another kind
fix-from = name the node at one end
fix-to = name the node at the other end
file-list-missing = the fields "nodes" and "links" must both be there; write [] where there are none yet.
file-no-network = An object in braces belongs here, with "nodes" and "links".
file-no-object = An object in braces belongs here.
file-no-list = A list in square brackets belongs here.
file-too-many = at most { $most } are taken; leave out what is far from the work.
file-too-many-lines = at most { $most } lines are taken; leave out what is far from the work.
file-too-many-parts = at most { $most } parts are taken; leave out what is far from the work.
file-text-empty = a text needs at least one character; leave it out if it is not known.
file-not-one-of = { $word } is not one of { $known }.
file-conductor-count = a whole number from 1 to { $most } belongs here, or the names of the conductors.
# $given is one of the kind- messages.
wants-text = A text in quotation marks belongs here, not { $given }.
wants-flag = true or false belongs here, not { $given }.
wants-list = A list in square brackets belongs here, not { $given }.
file-pandapower = it is not as pandapower writes it; save the network again with pandapower.to_json.
file-pandapower-table = the table is not as pandapower writes it; save the network again with pandapower.to_json.
file-pandapower-column = "{ $column }" is not as pandapower writes it; save the network again with pandapower.to_json.
