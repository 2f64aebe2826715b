### Tags: scanning one, what this phone knows of it, and the tags of a point.

tags-scan-title = Scan a tag
tags-scan-what = The tag says whose lock is on, who holds the key, and since when.
tags-look-up = Look it up
tags-scan = Scan with the camera
tags-typed = Or the tag as printed
tags-typed-hint = 16 characters, in groups of four
tags-title = Tag { $tag }
# $caution is locks-no-clearance, here and below.
# life-critical
tags-unknown = This phone knows nothing of this tag. { $caution }
tags-scan-another = Scan another tag
tags-hangs-at = Hangs at
tags-place = { $point }, { $place }
# life-critical
tags-given-up = This tag was given up: { $why }. Do not go by it: look at the point itself.
# life-critical
tags-no-lock = This phone knows of no lock on this point, for any job. { $caution }
tags-jobs = Jobs
tags-hung = Tag hung { $when }
tags-hung-at = Tag hung at { $point } { $when }
# $id tells jobs of one title apart.
tags-job = { $job } ({ $id })
tags-same-point = The same point, as far as is known: { $point }, { $place }
# How old what is shown is.
# life-critical
tags-as-known = As known to this phone at { $now }. Office last reached { $when }; other phones may know of more locks.
# life-critical
tags-as-known-alone = As known to this phone at { $now }. It has not reached an office; other phones may know of more locks.
tags-lock-on = Lock of { $owner } on { $point }
tags-key-holder = Key holder
tags-since = Since
tags-of-job = Job
tags-of-job-is = { $job }, { $place }
tags-lock = Lock { $lock }
tags-about-lock = All about this lock
tags-telephone = Telephone
tags-telephone-none = not given
tags-ring = Ring { $owner }
tags-photo = { $job }, photo of { $by }
tags-pictures = Pictures

# The tags of a point.
tags-none-yet = No tag yet
tags-read-by = { $tag }, read { $by }
tags-not-read = { $tag }, not read in this job
tags-of-point = Tag of { $point }
tags-no-point = This point is not in this job
# life-critical
tags-known-elsewhere = Tag { $tag } is known as that of { $known }, not of { $point }. Look which switch you stand at.
tags-moved-why = If it really hangs here now: why
tags-moved-why-hint = Such as: the switch was replaced
tags-hangs-here-now = The tag hangs at { $point } now
tags-blank = Tag { $tag } is blank: this phone knows of no place where it hangs.
tags-hangs-here = It hangs at { $point }
tags-stick = Stick a blank tag beside the switch, where it stays when a cover comes off. Then scan it.
tags-hangs-since = hangs here since { $by }
tags-read = Read
tags-use-this = Use this tag
tags-lost = If a tag is gone: what became of it
tags-lost-hint = Lost, damaged, taken down
tags-gone = Tag { $tag } is gone
tags-scan-here = Scan the tag here
tags-was-given-up = The tag is given up. Stick a new one and scan it.
tags-this-is = This is { $point }, by its tag.
tags-is-blank = A blank tag. Say where it hangs.
tags-at-other-site = { $point } at another site
# life-critical
tags-belongs = This tag belongs to { $known }, not to { $point }.
