### The record of a job: what it is, and the way to hand it on.

record-title = Record of this job
record-what = A PDF of all that was recorded: summary, points, locks, photos, proofs, readings and time line.
record-signed = The signed journal of the job is in it: anyone can check that every page follows from it.
# life-critical
record-not-now = It tells what was done and read, not how anything is now. Made before the job ends, it lacks what comes after.
record-photos = Photos
record-handed-back = Handed back
record-not-yet = not yet
record-private = No location and no telephone numbers are in it. Look at photos and notes before you hand it on.
record-made = The record is made and can be checked. What comes later is not in it.
record-share = Share the record
record-share-withheld = Share it without names and signatures
# In whatever language the app speaks.
record-in-english = The record and its pages are in English.
