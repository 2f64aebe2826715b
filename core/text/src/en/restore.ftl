### Restoring: what stays open, and what is asked about readings with the supply back.

close-not-open = { $at } is not open in this job: there is nothing to close.
close-found-off = { $at } was found off: it stays off.
# $first is a list of points.
close-after = { $at } goes back on after the supply: first { $first }.
# $own is a supply, $others one or more.
close-beside = { $at } brings { $own } beside { $others }. Write why both go on together, or leave it open.
rotation-before-late = A point was opened already: the rotation before that stays as it was noted, and cannot be read now.
rotation-unguarded = The rotation was not read before: uncouple what turns, or watch a short bump, then say which you did.
answer-of-nothing = Choose which of the readings that stand out this is about.
answer-was-wrong = Write what was wrong.
answer-mended = Write what was mended.
answer-left-off = Write what is left off.
answer-kept-off = Write how it is kept off.
answer-accepts = Write who was told and accepts it.
answer-accepts-why = Write how they were told, and why they accept it.
missing-accepted = Nobody accepts a missing line or neutral: have it mended, or leave off what it feeds.
rotation-turned = The rotation is { $now }, and was { $before } before: motors run backwards. Isolate again, then change two lines over.

supply-normal = the normal supply
supply-unlisted = a source that is no longer listed
supply-unnamed = a source
