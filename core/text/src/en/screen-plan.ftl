### The screens of the plan.

# Nobody may take "not asked" for "not there".
# life-critical
sources-caution = Go and look. A source that nobody looked for is to be treated as live.
sources-looked-for = Looked for and NOT found: tap each
sources-stored = Stored energy
where-looked = Where you looked
where-looked-hint = Rooms, boards, labels, persons asked
sources-save-none = Save: not found
sources-found = Found one
sources-kind = Kind of source
sources-what = What you found
as-labelled = As it is labelled
sources-at = Where it comes in
sources-at-hint = Board, terminal or cable
sources-save = Save this source
counts-second-feeder = Changeover switches, ties, a feed from another board or another transformer.
counts-generator = Standby sets, and inlets for a mobile set.
counts-ups = Central ones and small ones in cabinets and under desks, and their bypass.
counts-pv = Panels and inverters. Panels give voltage as long as there is light.
counts-battery = Battery stores, and vehicle chargers that feed back.
counts-control = Control voltage, heaters, lighting or metering that comes from another board.

duty-in-charge = In charge of the isolation
duty-working = Working on it
duty-learning = Under supervision

site = Site
equipment = Equipment
scope = Scope of the work
conductors-and-rules = Conductors and rules

cover-off-last = This cover is off, no other
cover-off-more = This cover is off

still-to-do = Still to do
may-stay-empty = May stay empty
and-more = and { $count } more

# Readings of nothing say nothing while the earth is not shown to be earth.
# life-critical
earth-first = With a broken earth a live board can read nothing on every pair. Prove the earth first.
