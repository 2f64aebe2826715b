### What the plan of a dead test demands and a case does not show: a sentence each.

unmet-indicator-before = It is not shown that the indicator worked before the tests.
unmet-indicator-after = It is not shown that the indicator worked after the tests.
# $current is AC or DC, $lowest where the indicator begins, $by where it has to.
unmet-lights-never = The indicator does not show { $current }; here it has to by { $by } V. That it showed nothing proves nothing: take one that begins earlier, or read in figures.
unmet-lights-late = The indicator begins at { $lowest } V { $current }; here it has to by { $by } V. That it showed nothing proves nothing: take one that begins earlier, or read in figures.
unmet-lights-unsaid = Where the indicator begins is not said for { $current } and taken as { $lowest } V; here it has to by { $by } V. That it showed nothing proves nothing: take one that begins earlier, or read in figures.
unmet-limit-too-high =
    A limit for dead has to be below { $bound } V { $current } here: below { $current ->
        [DC] 120
       *[AC] 50
    } V (EN 61243-3), and below half of the lowest voltage that a source puts on a line or pole.
unmet-no-earth = There is no protective conductor among the conductors: nothing was read to earth.
unmet-earth-not-proved = The reference was not shown to be earth: if it is broken, live conductors can read zero on every pair.
# $it: whether the supply is known not to be earthed.
unmet-known-line =
    A known live line proves no earth here: { $it ->
        [yes] in IT a live line may show nothing to earth
       *[no] the earthing is not known, and in IT a live line may show nothing to earth
    }. Measure to the main earthing terminal, or to a second earth.
unmet-line-closed = { $line } is not opened by any point: open every line and pole, and lock it.
unmet-neutral-closed = { $neutral } is not opened, and has to be ({ $earthing }): it may be off earth. Open it too.
unmet-neutral-closed-unknown = { $neutral } is not opened, and has to be (the earthing is not known): it may be off earth. Open it too.
# $pairs is a list of pairs; $more counts those that are not named.
unmet-not-read = Not read yet: { $pairs }.
unmet-not-read-more = Not read yet: { $pairs } and { $more } more.
unmet-pair-dc = { $pair } (DC)
unmet-not-waited = { $what }: its label says { $label } s, and { $waited } s were waited.
unmet-wait-unsaid = { $what }: its label says { $label } s, and how long was waited is not said.
unmet-charge-not-read = No DC reading of { $pair } at { $what }: time alone proves nothing.
unmet-charge-not-read-own = No DC reading at the terminals of { $what }: time alone proves nothing.

# What holds a charge, where nobody named it.
holder-drive = the drive
holder-ups = the UPS
holder-inverter = the inverter
