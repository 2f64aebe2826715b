### Entries about a job that are put aside: what came from other phones and is not believed, until somebody has looked at the spot.

# The row that leads there.
aside-row =
    { $count ->
        [one] 1 entry put aside
       *[other] { $count } entries put aside
    }
aside-all-seen = All looked at.
aside-to-look-at = { $count } to look at, at the spot.
aside-title = Entries put aside
aside-none = Nothing about this job is put aside.
# life-critical
aside-count = These are not in the journal. Each one counts until somebody has looked at the spot: a lock in it is on.
# $why is the reason why it is not believed.
aside-why = Put aside: { $why }.
# $by is when and by whom.
aside-looked-at-by = Looked at: { $by }
aside-looked-at = looked at
aside-to-do = to do
aside-more = And { $count } more, shown as these are answered.
aside-one = Look at the spot
aside-says = It says
aside-recorded = Recorded
aside-device = By device
# $device is the beginning of what the device is known by.
aside-device-is = { $device }, entry { $number }
aside-because = Put aside because
# life-critical
aside-go-there = Go to { $place }. Lock { $lock } counts as on until you have seen that it is not.
aside-how = How it is at the spot
aside-how-hint = Who was asked, and what is there: another person has to understand it.
aside-leave-open = Leave it open
aside-answer = Save: I looked at the spot
aside-answered = In entries put aside, looked at
aside-lock = { $owner } on { $place }: { $lock }, from an entry put aside
aside-counts = Counts as on: { $why }.
aside-saved = Saved. The entry stays put aside, and no longer keeps a proof from standing.
