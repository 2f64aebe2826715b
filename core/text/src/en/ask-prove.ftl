### What is asked while it is proved dead.

ask-prove-cover = Say which cover comes off.
ask-prove-no-covers = Say why no cover has to come off.
ask-prove-indicator = Choose the voltage indicator.
ask-prove-on = Choose what the indicator was proved on.
ask-prove-source = Name the live source that it was proved on, such as: socket of bay 2.
ask-prove-indicator-first = Prove the indicator first.
ask-prove-reading = No reading is entered yet. Enter what the indicator showed for each pair.
ask-prove-seen = Choose the pair that gave an indication.
ask-prove-level = Choose the level that was lit.
ask-prove-direct = Write the direct voltage that was read, such as 0.
ask-prove-reference = Say how the reference was tested.
ask-prove-cause = Write what the cause was, and what was done about it.
ask-prove-cause-sought = Write where you looked for the cause, and what you did.
