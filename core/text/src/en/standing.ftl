### The banner: what stands proved, in one or two sentences under the words of the state- messages, and what stands beside a proof.

# A life rests on this.
standing-handed-back = To { $to }, { $by }. The supply is back: treat as live.
# A life rests on this.
standing-restoring = The work is finished and the supply is being restored.
# A life rests on this.
standing-nothing-proved = Nothing is proved yet.
# A life rests on this.
standing-not-proved-again = Every pair is tested; the indicator is not proved again yet.
# A life rests on this.
standing-untested =
    { $pairs ->
        [one] 1 pair is not tested yet.
       *[other] { $pairs } pairs are not tested yet.
    }
# A life rests on this.
standing-unsigned = Tested under supervision, and not signed yet.
# $why is one of the void-, ended- or trouble- messages.
# A life rests on this.
standing-void = The proof is void. { $why }
# $by is when the indicator was proved again and who did it, $with the indicator.
# A life rests on this.
standing-proved = { $by }, with { $with }, proved before and after.
# Behind standing-proved, in the last half hour.
# A life rests on this.
standing-runs-out = It runs out in { $minutes } min.
# Behind both.
# A life rests on this.
standing-void-when = Void when a lock or a cover comes off, when a source, point, scope or shift changes, or when the work is left or finished.
# Before whatever else there is to say.
# A life rests on this.
standing-forgotten = This phone has forgotten what it wrote: treat as live.
# A life rests on this.
standing-given-up = The isolation was given up, and the supply is being restored. { $why } ({ $by })
# $given_up is standing-given-up, which ends without a full stop; $indication one of the two after this.
# A life rests on this.
standing-given-up-indication = { $given_up }. { $indication }
# A life rests on this.
standing-indication = Indication: { $readings }.
# A life rests on this.
standing-indication-more = Indication: { $readings }; and { $more } more.
# One of them. $at is a pair or a place.
standing-reading = { $at } { $reading }

# Each of these is a line of its own. $by is when it was said, and by whom.
# A life rests on this.
standing-deviation = Deviation at { $step }: { $why } ({ $by })
# A life rests on this.
standing-way-differs = A way that the supply network shows does not count: { $why } ({ $by })
# A life rests on this.
standing-no-lock = { $place } is secured without a lock: { $how }
# $what is one of the undone- messages.
# A life rests on this.
standing-undone = { $what }: withdrawn. { $why } ({ $by })
# $trouble is one of the trouble- messages.
# A life rests on this.
standing-cause-not-found = { $trouble } Cause not found: { $cause } ({ $by })
# $dead are the conductors that were tested, $live what stays live beside them.
# A life rests on this.
standing-still-live = Proved dead: { $dead }. STILL LIVE: { $live }.
# $was is what the conductors had been noted as before somebody corrected them.
standing-corrected = Conductors corrected, before noted as { $was } at { $volts } V: { $why } ({ $by })
# A life rests on this.
standing-stays-live = STILL LIVE: { $what } at { $at }. Screened: { $screened } ({ $by })
# $says is an answer by which not all was shown.
# A life rests on this.
standing-unshown = { $says } ({ $by })
# A life rests on this.
standing-limit = Up to { $ac } V AC and { $dc } V DC count as no indication, by { $rule }

# What was withdrawn, though it once spoke against the proof.
undone-source = { $kind } found ({ $what })
undone-stored = Stored energy found ({ $what })
undone-check = { $instrument } found not fit for use
