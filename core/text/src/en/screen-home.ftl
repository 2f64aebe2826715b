### Outside any job: the jobs, who is signed on, a new job, every lock that is on.

# The jobs.
home-title = Jobs
home-sign-on-first = Nobody is signed on. Tap your name first: all is saved in your name.
# life-critical
home-forgot = Put back from a copy, or its key is used elsewhere: nothing is saved. Go on under a new key, then prove dead again.
home-forgot-comes-back = What others hold of it comes back by itself.
# life-critical
home-aside-full = Too many entries are put aside: locks of others may be missing here. Go by the locks at the points. Ask who sends the entries.
# life-critical
home-clocks-differ = The clocks of two phones differ. Compare this one's with a third clock. If it is wrong, set it.
home-clock-right = This phone's clock is right
# life-critical
home-clock-right-done = This phone's clock counts. What the other phone proved is not believed here until its clock is set.
home-open-jobs = Open jobs
home-no-open-job = No job is open on this phone.
# Two jobs or two people of one name: $id tells them apart.
home-one-of-a-name = { $name } ({ $id })
# How far a job is. $stage is one of the stage- messages, $step one of the step- messages.
home-turn = { $stage }. Next: { $step }
home-this-phone = This phone
home-signed-on = Signed on: { $name }
home-signed-on-tap = All is saved in this name. Tap to change it.
# life-critical
home-owed =
    { $count ->
        [one] 1 owner is not told yet that their lock was forced off.
       *[other] { $count } owners are not told yet that their locks were forced off.
    }
home-locks-on = Locks on now: { $count }
home-finished-jobs = Finished jobs
# The state of a job, in a word.
home-handed-back = handed back
home-new-key = Go on under a new key
# life-critical
home-new-key-done = This phone goes on under a new key. Prove dead again before any work.
home-new-job = New job

# Who is signed on, and new people.
people-title = Who is signed on
people-tap = Tap your name when you take the phone. From then on all is saved in your name.
people-pin-anew = PIN set anew { $when }, witness: { $who }
# The state of a person, in a word.
people-is-signed-on = signed on
people-not-listed = Somebody who is not listed
people-name = Name
people-name-hint = First name and surname
people-qualification = Qualification
people-qualification-hint = As on the card or certificate. This app does not judge it.
people-telephone = Telephone
people-telephone-hint = Where to reach them about their lock
people-add = Add this person
people-added = { $name } is on the list now.

# A new job.
new-job-sign-on = Nobody is signed on. Tap your name before you open a job.
new-job-what = What the job is
new-job-what-hint = Such as: replace contactor K3
# $sites is a list of names.
new-job-known-sites = Known here: { $sites }
new-job-place = Place on the site
new-job-place-hint = Building, floor, room
new-job-equipment = Equipment to isolate
new-job-scope-hint = What you work on, and where it ends. Empty: what the job is. Beyond it, look at the isolation again.
# What follows is a country.
new-job-rules = Rules of
new-job-order = Order of the dead test
new-job-order-of-site = Orders differ between documents. Take the one that your site wants.
# How far the voltage of the supply may be from the nominal one.
new-job-tolerance = Tolerance of the supply
new-job-open = Open this job
new-job-opened = Job opened. { $name } is in charge of the isolation.

# Every lock that is on, of all jobs.
board-title = Locks on now
# $caution is locks-no-clearance.
# life-critical
board-knows = Only what this phone knows. { $caution }
# life-critical
board-none = This phone knows of no lock that is on.
board-owed = Forced off, owner not told
# life-critical
board-tell = Tell each owner before they resume work.
board-near = By codes, with no signal.
