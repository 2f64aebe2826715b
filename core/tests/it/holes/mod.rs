//! Ways to a false "proved dead" that were once open; each stays shut. [`CASES`] names the test of each.
//!
//! What no test can show is said in docs/limits.md: that a reading, a photo or a board of so many phases is what somebody entered (1, 28), also
//! where all ten readings come at once and out of order, through the desk's own door and not through its screens.

mod age;
pub mod by_hand;
mod instruments;
mod limit;
mod locks;
mod one_job;
mod people;
mod points;
mod readings;
mod reasons;
mod sources;
mod two_phones;

use std::collections::BTreeSet;
use std::path::Path;

/// What was tried, in a few words, and the test in which it is tried still.
const CASES: &[(&str, &str)] = &[
    // Two phones.
    (
        "N – L2 lit on one phone, the other unaware proves a minute later",
        "holes/two_phones.rs::a_voltage_read_before_the_other_begins_keeps_both_live",
    ),
    (
        "PE – L2 lit on one phone, the other proved a minute before",
        "holes/two_phones.rs::a_voltage_read_after_the_other_proved_keeps_both_live",
    ),
    (
        "reference not earth on one phone, the other proved",
        "holes/two_phones.rs::a_reference_that_fails_after_the_other_proved_keeps_both_live",
    ),
    (
        "indicator fails one phone's second proof, the other proved with it",
        "holes/two_phones.rs::an_indicator_that_fails_after_the_other_proved_with_it_keeps_both_live",
    ),
    (
        "a whole test by who did not know of the indication or its cause",
        "holes/two_phones.rs::an_indication_ends_with_its_cause_and_a_whole_test_by_who_knew",
    ),
    ("an indication in the run that the other ends", "merge.rs::lit_while_proved"),
    ("something that ends a proof, unknown to who proves", "merge.rs::proved_while_it_ended"),
    // Readings.
    (
        "not earth, then a new run at once in which it is",
        "holes/readings.rs::a_failed_proof_of_earth_asks_for_its_cause_before_another_test",
    ),
    (
        "not earth, and the same run goes on",
        "holes/one_job.rs::zero_on_every_pair_without_a_proved_reference_proves_nothing",
    ),
    ("cause not found, one more test", "holes/readings.rs::a_cause_that_was_not_found_asks_for_two_tests"),
    (
        "PE to N shows none where it should be joined, in the app",
        "holes/readings.rs::a_neutral_that_shows_no_continuity_to_earth_is_remarked",
    ),
    (
        "PE to N shows none where it should be joined, on the command line",
        "conditions.rs::a_neutral_that_is_not_joined_to_earth_is_remarked",
    ),
    ("all pairs at 49.9 V under a limit of 49.9 V", "holes/limit.rs::the_limit_stands_on_the_banner_and_the_record"),
    ("1,000 as 1 V, on the screen", "holes/limit.rs::a_mark_before_three_digits_is_asked_about"),
    ("1,000 as 1 V, by itself", "conditions.rs::volts_as_people_type_them"),
    // Points and padlocks.
    (
        "two jobs, one switch, alike: closed under the other's lock",
        "shared_points.rs::nobody_closes_a_point_that_another_job_has_locked_and_every_screen_says_whose_it_is",
    ),
    (
        "two jobs, one switch, alike: the list leaves the other's lock out",
        "shared_points.rs::a_point_that_another_job_knows_is_offered_and_its_locks_are_shown",
    ),
    (
        "two jobs, one switch: closed by a phone that knew of no lock",
        "shared_points.rs::a_point_that_was_closed_for_another_job_is_seen_open_again_and_proved_again",
    ),
    ("two jobs, one switch, one tag", "holes/points.rs::one_tag_makes_points_of_two_jobs_one_point"),
    (
        "one padlock at two points, its label written in five ways",
        "shared_points.rs::a_padlock_that_is_on_elsewhere_is_asked_about_and_every_answer_works",
    ),
    ("generator's point opens N only", "holes/points.rs::a_found_generators_point_opens_every_line_and_its_neutral"),
    ("generator's point opens PE", "holes/points.rs::no_generators_point_opens_the_protective_conductor"),
    ("TT, IT: neutral opened by no point, in the app", "holes/points.rs::a_neutral_that_may_not_be_earth_is_opened"),
    ("TT, IT: neutral opened by no point, on the command line", "conditions.rs::what_the_points_leave_closed_is_told"),
    (
        "lockable switch declared to take no lock, secured by a dot",
        "holes/reasons.rs::a_point_without_a_lock_says_by_what_it_is_secured",
    ),
    // What brings a voltage back.
    ("a further cover off, at work", "holes/sources.rs::a_further_cover_ends_the_proof_during_work"),
    ("a further cover off", "journeys.rs::whatever_changes_ends_the_proof"),
    (
        "control supply found, its terminals in no pair",
        "holes/sources.rs::a_found_control_supply_brings_its_terminals_into_the_pairs",
    ),
    (
        "network shows a generator, nobody named the zone",
        "holes/sources.rs::a_generator_that_the_network_shows_ends_the_proof_of_a_job_without_a_zone",
    ),
    (
        "network arrives, nobody names the zone",
        "holes/sources.rs::a_network_that_arrives_asks_for_the_zone_within_the_hour",
    ),
    ("generator drawn while at work", "holes/sources.rs::a_generator_drawn_while_at_work_stops_it"),
    (
        "a source that the network shows after the zone was named",
        "networks.rs::a_generator_that_is_found_ends_what_was_proved_and_says_whom_it_touches",
    ),
    // Age and clocks.
    ("proof three days old, work begins", "holes/age.rs::a_proof_holds_for_a_shift"),
    ("at work, proof twenty days old", "holes/age.rs::a_proof_that_is_too_old_stops_the_work"),
    (
        "run over a week, 400 days to the second proof",
        "holes/age.rs::between_two_proofs_of_the_indicator_lies_an_hour_at_most",
    ),
    ("long test with a proof in between", "holes/age.rs::a_long_test_goes_on_after_a_proof_in_between"),
    ("waiting time passed by setting the clock", "holes/age.rs::a_clock_set_forward_passes_no_waiting_time"),
    ("waiting time passed by a second phone ahead", "forgotten.rs::a_second_phone_ahead_waits_as_long"),
    // Instruments.
    (
        "indicator failed, used again at once",
        "holes/instruments.rs::an_indicator_that_failed_is_checked_before_it_is_used_again",
    ),
    ("proved on an unnamed live source", "holes/instruments.rs::the_live_source_that_proves_an_indicator_is_named"),
    ("indicator proved on itself", "holes/instruments.rs::an_indicator_is_not_proved_on_itself"),
    ("instruments looked over 400 days before", "holes/instruments.rs::a_check_counts_for_one_shift"),
    (
        "indicator found broken in another job",
        "holes/instruments.rs::an_indicator_found_broken_in_another_job_ends_this_proof",
    ),
    ("indicator found broken, noted twice", "holes/one_job.rs::an_instrument_noted_twice_fails_as_one"),
    (
        "indicator that lights too late, in the app",
        "holes/instruments.rs::an_indicator_that_lights_too_late_begins_no_test",
    ),
    ("indicator that lights too late, on the command line", "conditions.rs::lamps_that_begin_too_late_prove_nothing"),
    // Reasons.
    ("reasons of dots, dashes, blanks of no width", "holes/reasons.rs::a_reason_is_at_least_a_word_of_letters"),
    (
        "found generator and its point withdrawn with a dot",
        "holes/reasons.rs::a_found_source_that_was_withdrawn_is_said_until_it_is_answered_anew",
    ),
    ("none found, looked at a dot", "holes/reasons.rs::none_found_says_where_somebody_looked"),
    (
        "failed check withdrawn with a dot",
        "holes/reasons.rs::a_failed_check_that_was_withdrawn_is_said_until_it_is_checked_anew",
    ),
    (
        "who is not on the job passes over and withdraws",
        "holes/reasons.rs::who_is_not_on_the_job_neither_skips_nor_withdraws",
    ),
    ("who left the job passes over and withdraws", "holes/reasons.rs::who_left_the_job_neither_skips_nor_withdraws"),
    // People, names and the locks of others.
    (
        "learner proves and begins work alone",
        "holes/people.rs::a_learners_test_is_signed_and_a_learner_does_not_begin_work",
    ),
    ("lookalike names", "holes/people.rs::two_people_are_not_told_apart_by_blanks_or_look_alike_letters"),
    ("title of 1990 characters", "holes/people.rs::a_title_fits_above_the_banner"),
    (
        "forced removal, key in a box under another's lock",
        "holes/locks.rs::a_lock_whose_key_is_in_a_box_stays_while_another_has_a_lock_on_the_box",
    ),
    ("forced removal answered with dots", "holes/locks.rs::a_forced_removal_is_answered_in_words"),
    (
        "forced removal by a learner or the owner",
        "holes/locks.rs::neither_a_learner_nor_the_owner_answers_for_a_forced_removal",
    ),
    (
        "forced removal by an apprentice not on the job",
        "holes/locks.rs::who_learns_on_another_job_answers_for_no_forced_removal",
    ),
    (
        "forced-off owner taken off the job, never told",
        "holes/locks.rs::an_owner_who_was_taken_off_the_job_is_told_all_the_same",
    ),
    (
        "another's lock taken off without their PIN",
        "holes/locks.rs::a_lock_that_came_off_without_a_pin_is_told_as_that",
    ),
    (
        "a lock kept under the name of who was refused before",
        "shared_points.rs::the_owner_in_a_form_is_whoever_has_the_device_or_is_named",
    ),
    ("Drive 1 and Drive 10", "shared_points.rs::two_drives_of_like_names_are_each_read"),
    // Restoring.
    (
        "presence passed over, then read wrong",
        "restoring.rs::what_is_read_after_a_step_was_passed_over_is_answered_for",
    ),
    ("rotation the other way round", "restoring.rs::rotation_that_changed_is_answered_for"),
    (
        "normal supply and generator both asked to be closed",
        "restoring.rs::two_supplies_go_on_together_only_with_a_reason",
    ),
    ("changeover to the generator as the main button", "restoring.rs::what_was_found_off_is_never_asked_for"),
    ("isolation given up after an indication", "restoring.rs::an_isolation_is_given_up_after_an_indication"),
    // Copies and phones that are off.
    ("folder put back from a copy, no office", "forgotten.rs::put_back_with_nobody_beside"),
    ("own lost locks heard back", "holes/two_phones.rs::own_locks_that_a_copy_forgot_are_on_again_once_heard"),
    (
        "folder put back, office holds the later entry",
        "holes/two_phones.rs::a_proof_does_not_stand_where_the_office_holds_a_later_entry",
    ),
    ("phone two days ahead shows its locks", "forgotten.rs::two_days_ahead"),
    // The desk.
    ("another user through loopback", "../desk/tests/it/door.rs::every_route_needs_the_key"),
    ("another user reads the files", "../desk/tests/it/private.rs::all_that_is_written_is_for_its_owner"),
    (
        "draft of tab A lands where tab B is",
        "../desk/tests/it/windows.rs::a_draft_stays_on_the_screen_that_it_was_typed_on",
    ),
    ("tab A shows what tab B ended", "../desk/tests/it/windows.rs::every_act_is_a_change_and_nothing_else_is"),
    ("an act without turn", "../desk/tests/it/server.rs::an_act_without_a_turn_is_refused"),
    // Photos: poor ones are warned of; that one file is kept for two points nobody is told.
    ("black photo, photo of one pixel", "evidence.rs::a_poor_picture_is_kept_and_warned_of"),
];

/// This file, and tests of what belongs together before it was told as cases.
const OTHERS: [&str; 2] = ["mod.rs", "one_job.rs"];

/// Every case has its test, and every test in this folder is one of a case.
#[test]
fn every_case_has_a_test() {
    let core = Path::new(env!("CARGO_MANIFEST_DIR"));
    let read = |path: &Path| std::fs::read_to_string(path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    let mut named = BTreeSet::new();
    for (attack, test) in CASES {
        let (file, name) = test.split_once("::").unwrap();
        let path = if file.starts_with("../") { core.join(file) } else { core.join("tests/it").join(file) };
        let declared = format!("#[test]\nfn {name}(");
        assert!(read(&path).contains(&declared), "{attack}: {test} is not there");
        assert!(named.insert(*test), "{test} stands twice");
    }
    for file in std::fs::read_dir(core.join("tests/it/holes")).unwrap().map(|file| file.unwrap().path()) {
        let short = file.file_name().unwrap().to_string_lossy().into_owned();
        for test in read(&file).split("#[test]\nfn ").skip(1).filter(|_| !OTHERS.contains(&&*short)) {
            let test = format!("holes/{short}::{}", test.split('(').next().unwrap());
            assert!(named.contains(test.as_str()), "{test} is of no case");
        }
    }
}
