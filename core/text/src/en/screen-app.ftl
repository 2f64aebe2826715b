### Notices of the app itself: what an act came to, clocks, scanning, photos, being put in the background, the device's key.

app-moved-on = The screen changed before that tap. Nothing was done: look again.
# After an act that has nothing else to say.
app-saved = Saved.
# In the place of a job's title and of a place.
app-job-elsewhere = A job that is not on this phone
app-place-elsewhere = a point not known here
# $here and $there are what two clocks show.
# life-critical
app-clock-office = This phone's clock reads { $here }, the office's { $there }. Set the phone's clock, then exchange with the office.
# $long is by how much, $when what the other phone's clock showed.
# life-critical
app-clock-behind = Proof age unknown: this phone's clock was { $long } behind another phone's ({ $when }). Compare both with a third clock. Set this one, or confirm it under All jobs.
# life-critical
app-clock-ahead = Proof age unknown: this phone's clock was { $long } ahead of another phone's ({ $when }). Compare both with a third clock. Set this one, or confirm it under All jobs.
# What was saved touches the points or the network of other jobs; $touched says which.
# life-critical
app-touches-other-work = This touches other work. { $touched }

app-scan-type-instead = { $why } Type what is printed beside the tag.
app-scan-size = The camera's picture has a size that cannot be read.
app-scan-none = No tag found in this picture. Go closer, or type what is printed beside it.
app-scan-foreign = This code is not a Stillbar tag. Nothing was opened. It says: { $text }
app-scan-several = Several tags are in the picture. Go closer to one of them.
app-scan-hint = Hold the tag in the middle of the picture.
# $doubt is one of the photo- messages.
app-photo-waits = { $doubt } Take it again, or write below why you keep it.
app-photo-saved = The photo is saved.
app-photo-hint = Lock, label, tag and switch position in one picture.
app-was-aside = Stillbar was in the background, and its journal is closed. Nothing was done, and what you typed is still here: look again.
app-other-journal = The journal in { $folder } is not the one that was open before. Nothing was changed: put that one back and try again, or close Stillbar and start it again.

# The device's key, with which everything is signed: device.key is its file.
app-key-no-chance = The system gave no random bytes, so no device key could be made.
app-key-unusable = The device key (device.key) cannot be used: { $why }
app-key-wrong = The device key (device.key) that signed this journal is missing or is another one. Nothing was changed: put the key back from your copy, or begin a new data folder and keep this one.

# Making a record at the command line. $listed is a line for each job.
app-record-no-key = The device key (device.key) is missing, so nothing can be signed. Put it back from your copy.
app-record-no-job = There is no job in this folder.
app-record-not-called = No job here is called "{ $named }". Name one of these by its digits:{ $listed }
app-record-several = Several jobs are called "{ $named }". Name one of these by its digits:{ $listed }

# A screen as text, for a message to another person.
# life-critical
app-as-known = As known to this phone at { $now }. These are words, not the signed record: whoever relies on them asks on site.
app-cut-short = No more fits a message: the record has all of it.

# The way up from a screen, at its head.
app-up-jobs = All jobs
app-up-job = The job
app-up-back = Back
# A line on top of every screen of a job: $name is who is signed on.
app-context = { $name }: { $job }, { $place }
app-nobody = nobody signed on
# In the place of a screen whose job is gone.
app-no-job = This job is not on this phone

# The banner in a line: $word is one of the state- messages, $says one of the standing- messages.
# life-critical
app-standing = { $word }. { $says }
# Both are times.
# life-critical
app-clock-back = This phone's clock reads { $now }, but its last entry is of { $wrote }. The order stands, the times are in doubt. Set the clock.

app-back-to-jobs = Back to the jobs
app-share = Share this as a message

# The state of a row, in a word.
# A voltage was met.
# life-critical
app-word-stop = stop
