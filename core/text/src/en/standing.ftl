### The banner: what stands proved, in one or two sentences under the words of the state- messages, and what stands beside a proof.

# life-critical
standing-handed-back = To { $to }, { $by }. The supply is back: treat as live.
# life-critical
standing-restoring = The work is finished and the supply is being restored.
# life-critical
standing-nothing-proved = Nothing is proved yet.
# life-critical
standing-not-proved-again = Every pair is tested; the indicator is not proved again yet.
# life-critical
standing-untested =
    { $pairs ->
        [one] 1 pair is not tested yet.
       *[other] { $pairs } pairs are not tested yet.
    }
# life-critical
standing-unsigned = Tested under supervision, and not signed yet.
# $why is one of the void-, ended- or trouble- messages.
# life-critical
standing-void = The proof is void. { $why }
# $by is when the indicator was proved again and who did it, $with the indicator.
# life-critical
standing-proved = { $by }, with { $with }, proved before and after.
# Behind standing-proved, in the last half hour.
# life-critical
standing-runs-out = It runs out in { $minutes } min.
# Behind both.
# life-critical
standing-void-when = Void when a lock or a cover comes off, when a source, point, scope or shift changes, or when the work is left or finished.
# Before whatever else there is to say.
# life-critical
standing-forgotten = This phone has forgotten what it wrote: treat as live.
# life-critical
standing-given-up = The isolation was given up, and the supply is being restored. { $why } ({ $by })
# $given_up is standing-given-up, which ends without a full stop; $indication one of the two after this.
# life-critical
standing-given-up-indication = { $given_up }. { $indication }
# life-critical
standing-indication = Indication: { $readings }.
# life-critical
standing-indication-more = Indication: { $readings }; and { $more } more.
# One of them. $at is a pair or a place.
standing-reading = { $at } { $reading }

# Each of these is a line of its own. $by is when it was said, and by whom.
# life-critical
standing-deviation = Deviation at { $step }: { $why } ({ $by })
# life-critical
standing-way-differs = A way that the supply network shows does not count: { $why } ({ $by })
# life-critical
standing-no-lock = { $place } is secured without a lock: { $how }
# $what is one of the undone- messages.
# life-critical
standing-undone = { $what }: withdrawn. { $why } ({ $by })
# $trouble is one of the trouble- messages.
# life-critical
standing-cause-not-found = { $trouble } Cause not found: { $cause } ({ $by })
# $dead are the conductors that were tested, $live what stays live beside them.
# life-critical
standing-still-live = Proved dead: { $dead }. STILL LIVE: { $live }.
# $was is what the conductors had been noted as before somebody corrected them.
standing-corrected = Conductors corrected, before noted as { $was } at { $volts } V: { $why } ({ $by })
# life-critical
standing-stays-live = STILL LIVE: { $what } at { $at }. Screened: { $screened } ({ $by })
# $says is an answer by which not all was shown.
# life-critical
standing-unshown = { $says } ({ $by })
# life-critical
standing-limit = Up to { $ac } V AC and { $dc } V DC count as no indication, by { $rule }

# What was withdrawn, though it once spoke against the proof.
undone-source = { $kind } found ({ $what })
undone-stored = Stored energy found ({ $what })
undone-check = { $instrument } found not fit for use
