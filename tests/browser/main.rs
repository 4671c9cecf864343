//! The page in real browsers, driven over WebDriver against the served page.

mod access;
mod beside;
mod bits;
mod budget;
mod building;
mod catalogue;
mod dragging;
mod editing;
mod engines;
mod faults;
mod feel;
mod files;
mod hand;
mod kid;
mod languages;
mod learning;
mod lines;
mod offline;
mod opening;
mod printed;
mod readings;
mod riders;
mod screens;
mod sending;
mod sharing;
mod sheets;
mod speeds;
mod tapping;
mod tasks;
mod trust;
mod verdicts;
mod views;
mod watching;
mod ways;

use browser::{Engine, Ground};
use libtest_mimic::{Arguments, Failed, Trial};
use std::process::ExitCode;
use std::time::Instant;

type Case = fn(&Ground) -> anyhow::Result<()>;

/// Cases by module and name, each with what it is called.
macro_rules! cases {
    ($($module:ident::$case:ident,)*) => {
        &[$((concat!(stringify!($module), "::", stringify!($case)), $module::$case)),*]
    };
}

const CASES: &[(&str, Case)] = cases![
    opening::rides_by_itself,
    opening::moves_from_left_to_right,
    opening::can_be_held_and_scrubbed,
    speeds::are_those_of_the_example,
    speeds::are_the_same_in_feet,
    building::the_way_leads_to_sheets_of_the_plan,
    building::sheets_follow_the_line,
    building::what_is_at_fault_is_named,
    building::stand_without_a_host,
    building::the_orchard_prints,
    building::three_tables_print,
    building::steps_print,
    building::the_page_itself_prints,
    sharing::a_link_opens_the_same_line,
    sharing::a_damaged_link_opens_the_demo,
    sharing::a_reload_keeps_the_line,
    sending::the_panel_comes_and_goes,
    sending::the_code_holds_the_link,
    sending::the_system_is_asked_where_it_can_share,
    sending::pictures_hold_name_speeds_and_caution,
    sending::figures_come_as_a_table,
    sending::a_plan_file_brings_the_line_back,
    readings::pasted_ground_is_ridden,
    readings::bad_rows_are_named_and_nothing_is_lost,
    readings::saved_readings_read_back,
    editing::a_change_rides_at_once,
    editing::what_is_wrong_is_in_sight_on_a_phone,
    editing::what_is_wrong_is_in_sight_at_a_desk,
    editing::a_fault_speaks_at_its_field,
    editing::features_come_and_go,
    riders::a_preset_rides,
    riders::riders_come_and_go,
    riders::fit_under_a_thumb,
    trust::every_speed_has_its_range,
    trust::how_far_digging_may_be_off_is_told,
    trust::a_change_gets_ranges_of_its_own,
    trust::a_link_of_another_model_says_so,
    trust::the_limits_are_one_tap_away,
    verdicts::each_jump_has_its_window,
    verdicts::costs_are_those_of_the_simulator,
    verdicts::a_word_of_the_trade_is_explained_by_a_tap,
    verdicts::a_suggestion_can_be_tried,
    verdicts::the_test_day_is_told,
    verdicts::whether_the_rider_stands_is_told,
    verdicts::the_headline_names_the_least_sure_jump,
    lines::what_was_done_is_undone,
    lines::a_closed_page_loses_nothing,
    lines::a_link_is_looked_at_first,
    lines::two_tabs_keep_both,
    lines::a_first_visit_may_begin_with_nothing,
    lines::the_list_is_true_after_every_action,
    verdicts::words_are_explained_where_they_are_first_met,
    verdicts::what_gives_speed_has_words_of_its_own,
    lines::a_full_device_loses_nothing,
    beside::a_study_that_breaks_down_is_done_again,
    beside::a_study_that_always_breaks_down_is_left_out,
    beside::a_ride_whose_worker_is_ended_is_ridden,
    files::a_fault_of_a_file_names_its_field,
    offline::in_chromium,
    offline::in_firefox,
    offline::from_a_subfolder,
    offline::who_plans_learns_without_a_host,
    offline::a_new_version_is_taken_up_whole,
    offline::half_a_version_is_not_taken,
    offline::can_be_installed,
    budget::little_is_fetched,
    budget::soon_interactive,
    dragging::a_knuckle_is_dragged_and_rides_at_once,
    dragging::a_lip_is_moved_by_key,
    dragging::a_wheel_and_two_keys_come_nearer_and_go_back,
    dragging::two_fingers_that_part_come_nearer,
    dragging::the_table_follows_a_finger_that_rests,
    dragging::a_finger_leaves_the_page_where_it_is,
    dragging::one_drag_is_one_step,
    dragging::the_whole_line_is_dragged_finely,
    dragging::grips_are_large_enough_for_a_thumb,
    lines::a_first_line_follows_from_four_answers,
    access::by_day_on_a_phone,
    access::by_night_at_a_desk,
    access::a_sent_line_and_the_limits,
    access::narrow_and_with_large_type,
    lines::two_lines_are_compared,
    feel::the_load_is_the_traces_own,
    learning::a_test_ride_is_carried_to_the_plan,
    learning::what_contradicts_is_named,
    learning::a_lip_that_is_faster_after_slower_timing_says_why,
    learning::what_endangers_a_jump_is_said_before_it_is_used,
    learning::ranges_hold_what_the_test_ride_left,
    learning::the_planned_ride_is_one_figure_and_advice_that_is_followed_goes,
    catalogue::every_language_says_the_same_things,
    languages::a_german_reader_gets_german_alone,
    languages::german_fits_under_a_thumb,
    languages::numbers_are_typed_with_a_comma,
    languages::other_readers_get_what_they_read_best,
    watching::one_at_a_time_on_a_phone,
    watching::both_at_a_desk,
    watching::slow_motion_sets_in_in_the_air,
    watching::reduced_motion_stops_the_camera,
    watching::run_smoothly_from_the_side,
    watching::run_smoothly_from_the_saddle,
    watching::run_smoothly_at_a_desk,
    kid::each_jump_has_its_card,
    kid::a_card_is_never_softer_than_the_verdict,
    kid::a_tap_shows_what_pumping_gives,
    kid::sound_waits_for_a_touch_and_follows_the_ride,
    kid::a_touch_down_is_felt,
    sheets::child_by_day,
    sheets::child_by_night,
    sheets::adult_by_day,
    sheets::adult_by_night,
    dragging::the_picture_follows_in_the_same_frame,
    dragging::the_picture_follows_promptly_on_a_slow_phone,
    engines::firefox_at_a_desk,
    engines::firefox_on_a_phone,
    engines::webkit_at_a_desk,
    engines::webkit_on_a_phone,
    engines::chromium_on_a_phone,
    bits::in_chromium,
    bits::in_firefox,
    bits::in_webkit,
    screens::phone,
    screens::desk,
    screens::sideways,
    screens::enlarged,
    tapping::a_click_between_two_renewals_counts,
    tapping::a_tap_between_two_renewals_counts,
    tapping::a_grip_that_is_only_touched_lets_the_study_end,
    tapping::what_is_edited_stays_where_it_is,
    tapping::what_is_renewed_is_found_again,
];

/// Cases on a phone that ask nothing of Chromium alone: the other engines have to hold them too.
const ON_PHONES: [&str; 24] = [
    "access::by_day_on_a_phone",
    "dragging::a_lip_is_moved_by_key",
    "dragging::grips_are_large_enough_for_a_thumb",
    "editing::a_fault_speaks_at_its_field",
    "feel::the_load_is_the_traces_own",
    "kid::a_tap_shows_what_pumping_gives",
    "kid::each_jump_has_its_card",
    "learning::a_test_ride_is_carried_to_the_plan",
    "lines::a_closed_page_loses_nothing",
    "lines::a_first_line_follows_from_four_answers",
    "lines::a_link_is_looked_at_first",
    "opening::can_be_held_and_scrubbed",
    "readings::bad_rows_are_named_and_nothing_is_lost",
    "readings::pasted_ground_is_ridden",
    "riders::a_preset_rides",
    "riders::fit_under_a_thumb",
    "sending::the_panel_comes_and_goes",
    "sharing::a_reload_keeps_the_line",
    "tapping::what_is_edited_stays_where_it_is",
    "trust::every_speed_has_its_range",
    "trust::the_limits_are_one_tap_away",
    "verdicts::a_suggestion_can_be_tried",
    "verdicts::the_test_day_is_told",
    "watching::one_at_a_time_on_a_phone",
];

/// Cases that set what the page works against what the machine can: nothing else runs beside them.
const ALONE: [&str; 5] = [
    "budget::soon_interactive",
    "dragging::the_picture_follows_promptly_on_a_slow_phone",
    "watching::run_smoothly_at_a_desk",
    "watching::run_smoothly_from_the_saddle",
    "watching::run_smoothly_from_the_side",
];

/// Every case with its name and the engine it asks for pages, where it asks for none by itself: those of the
/// other engines spread among Chromium's, as each of the others opens one browser at a time.
fn cases() -> Vec<(String, Case, Engine)> {
    let all = || CASES.iter().chain(&ways::CASES).chain(&tasks::CASES);
    let held = || all().filter(|(name, _)| ON_PHONES.contains(name));
    let others = held().flat_map(|&(name, case)| {
        [(Engine::Firefox, "firefox"), (Engine::WebKit, "webkit")]
            .map(|(engine, called)| (format!("{name}_in_{called}"), case, engine))
    });
    let mut others: Vec<_> = others.collect();
    let each = all().count() / others.len();
    let mut cases = Vec::new();
    for (i, &(name, case)) in all().enumerate() {
        cases.push((name.to_owned(), case, Engine::Chromium));
        if i % each == 0 {
            cases.extend(others.pop());
        }
    }
    cases.extend(others);
    let faults = faults::CASES.map(|(name, case)| (name.to_owned(), case, Engine::Chromium));
    cases.extend(faults);
    cases
}

/// Runs a case and says how long it took, for `tests/run.sh` to tell which are the longest.
fn timed<T>(name: &str, case: impl FnOnce() -> T) -> T {
    let begun = Instant::now();
    let done = case();
    println!("  took: {:.1} s, {name}", begun.elapsed().as_secs_f64());
    done
}

fn main() -> ExitCode {
    let mut arguments = Arguments::from_args();
    let ground = match (!arguments.list).then(Ground::start).transpose() {
        Ok(ground) => ground,
        Err(error) => {
            eprintln!("the browser checks cannot start: {error:#}");
            return ExitCode::FAILURE;
        }
    };
    let (alone, together): (Vec<_>, Vec<_>) = cases()
        .into_iter()
        .partition(|(name, ..)| ALONE.contains(&name.as_str()));
    let mut failed = false;
    for (cases, threads) in [(alone, 1), (together, 2)] {
        let trials = cases.into_iter().map(|(name, case, engine)| {
            let ground = ground.as_ref().map(|ground| ground.in_engine(engine));
            Trial::test(name.clone(), move || match ground {
                Some(ground) => timed(&name, || case(&ground))
                    .map_err(|error| Failed::from(format!("{error:#}"))),
                None => Err("only listed".into()),
            })
        });
        arguments.test_threads = Some(threads);
        failed |= libtest_mimic::run(&arguments, trials.collect()).has_failed();
    }
    // Ends the host program and the drivers, which leaving the process would not.
    drop(ground);
    if failed {
        ExitCode::FAILURE
    } else {
        ExitCode::SUCCESS
    }
}
