//! The record of a job.

says! {
    in_english => "record-in-english",
    title => "record-title",
    what => "record-what",
    signed => "record-signed",
    not_now => "record-not-now",
    photos => "record-photos",
    handed_back => "record-handed-back",
    not_yet => "record-not-yet",
    private => "record-private",
    made => "record-made",
    share => "record-share",
    share_withheld => "record-share-withheld",
}
