### What an act is about, and what is not there: gone meanwhile, or never.

gone-action = This screen does not know that action.
gone-place = This place does not exist any more.
gone-job = This job is not on this device.
gone-person = This person is not known on this device.
gone-lock = This lock is not on this device.
gone-point = This point is not in this job.
gone-point-of-step = This point is not in this job. Go back to the job's steps.
gone-point-known = This point is not known at this site any more.
gone-part = This part was corrected or crossed out meanwhile. Go back and look again.
gone-proposal = The network changed meanwhile. Look at the proposals again.
gone-source = This source is answered already. Look again.
gone-photo-waiting = The photo is not here any more. Take it again.
gone-photo-unasked = This photo was not asked for any more. Take it again.
gone-photo-not = A photo was asked for. Take it again.
gone-photo-of-nothing = There is nothing here to photograph.
gone-screen = This was typed on a screen that is gone, so it was not saved. Look at the new screen and type it there.
gone-hand = Somebody else has this device now, so what was typed before was not saved.
gone-journal = Stillbar was put aside, and its journal is closed.
gone-codes = What the codes said is no set of entries that hold. Nothing was taken in.
gone-memory = This phone has forgotten what it wrote: treat as live. Go to All jobs and tap "Go on under a new key".
