### What is asked about a job as a whole: its set-up, its entries, the work, the shift.

ask-job-title = Write what the job is, such as: replace contactor K3.
ask-job-site = Write the name of the site.
ask-job-place = Write where on the site it is.
ask-job-equipment = Write which equipment is to be isolated, as it is labelled.
ask-job-system = Choose which conductors there are at the point of work.
ask-job-rules = Choose by whose rules the job is done, or that they are the site's own.
ask-job-system-why = Write what was wrong about the conductors.
ask-job-own = List your conductors with commas, two at least: L1, L2, N1=neutral, PE, and of another supply S+=dc-plus@String A. Roles: line, neutral, pen, protective, mid-point, dc-plus, dc-minus, control.
ask-job-earth = Write the number on the earth, and where it is fitted.
ask-job-stays-live = Write what stays live, where it is, and how it is screened.
ask-job-earthing = Choose the earthing arrangement, or that it is not known.
ask-job-order = Choose the order of the dead test.
ask-job-volts = Write the nominal voltage: line to neutral, for three wire line to line.
ask-job-tolerance = Choose the tolerance of the supply.
ask-job-reason = Give the reason.
ask-job-entry-wrong = Say what was wrong with the entry.
ask-job-at-the-spot = Write how it is at the spot.
ask-job-give-up-why = Write why the isolation is given up.
ask-job-give-up-clear = Write how you saw that everybody is clear.
ask-job-prove-first = Nothing is proved dead yet. Prove it first.
ask-job-clear = Write how you saw that people, tools and earths are clear.
ask-job-met-at = Write where the voltage was met.
ask-job-left-why = Write why the work is left.
ask-job-source-kind = Choose what kind of source it is.
ask-job-source-what = Write what the source is.
ask-job-source-at = Write where the source comes in.
ask-job-scope-new = Write what will be worked on now.
ask-job-scope-why = Write why the scope changes.
ask-job-neutral-parted = Write which neutral was disconnected, and where.
ask-job-shift-to = Choose who takes the shift.
ask-job-shift-told = Write what you told them.
ask-job-shift-offered = The shift is not on offer. The outgoing person offers it first.
