//! What people read when a file is wrong.

use gablerow_core::job::{Job, Label};

use super::{JobFileError, read, read_cabinet, write};

fn plain() -> String {
    write(&Job::plain(Label::new("Glaze store").unwrap()))
}

#[track_caller]
fn error_of(text: &str) -> JobFileError {
    read(text.as_bytes()).expect_err("a fault")
}

/// What is said when a piece of the plain job's file is replaced.
#[track_caller]
fn check(piece: &str, replacement: &str, expected: &str) {
    let text = plain();
    assert!(text.contains(piece), "{piece}");
    let text = text.replacen(piece, replacement, 1);
    assert_eq!(error_of(&text).to_string(), expected);
}

#[test]
fn a_report_points_at_the_place() {
    let text = plain().replacen("\"height\": 704", "\"height\": 20000", 1);
    let expected = "\
error: cabinets[0].size.height: carcass height: 20000, but it is 100 to 4000 mm
   --> glaze-store.json:222:40
    |
222 |       \"size\": {\"width\": 600, \"height\": 20000, \"depth\": 560},
    |                                        ^
";
    assert_eq!(error_of(&text).report("glaze-store.json"), expected);
}

#[test]
fn columns_count_characters() {
    let text = plain().replacen(
        "\"name\": \"1\"",
        "\"name\": \"⌀⌀⌀⌀\", \"mirrored\": maybe",
        1,
    );
    let expected = "\
error: cabinets[0].copies[0].mirrored: maybe stands here without quotes
   --> glaze-store.json:232:48
    |
232 |         {\"key\": 2, \"name\": \"⌀⌀⌀⌀\", \"mirrored\": maybe}
    |                                                ^
";
    assert_eq!(error_of(&text).report("glaze-store.json"), expected);
}

#[test]
fn a_long_line_is_shown_around_the_place_only() {
    let line = format!("{{\"key\": 1, \"name\": \"{}\u{1b}\"}}", "x".repeat(300));
    let error = read_cabinet(&line).unwrap_err();
    let report = error.report("\u{1b}[2J.json");
    assert!(
        report.lines().all(|line| line.chars().count() < 150),
        "{report}"
    );
    assert!(!report.contains('\u{1b}'), "{report}");
}

#[test]
fn what_is_no_job_at_all() {
    let said = |text: &str| error_of(text).to_string();
    assert_eq!(said(""), "line 1, column 1: the file is empty");
    assert_eq!(said("\u{feff}\n"), "line 2, column 1: the file is empty");
    let foreign = "line 1, column 1: this is no gablerow job: it does not begin with {";
    assert_eq!(said("PK\u{3}\u{4}"), foreign);
    assert_eq!(said("[]"), foreign);
    assert_eq!(
        said("{\"title\": \"Glaze store\"}"),
        "line 1, column 1: this is no gablerow job: it has no field \"format\""
    );
    assert_eq!(
        said("{\"format\": \"gablerow job\"}"),
        "line 1, column 1: the field \"version\" is missing"
    );
}

#[test]
fn bytes_that_are_no_text() {
    let error = read(b"{\n\"format\": \"gable\xff").unwrap_err();
    let expected =
        "line 2, column 17: this byte belongs to no character: the file is no UTF-8 text";
    assert_eq!(error.to_string(), expected);
}

#[test]
fn a_byte_order_mark_is_passed_over() {
    assert!(read(format!("\u{feff}{}", plain()).as_bytes()).is_ok());
}

#[test]
fn a_file_past_every_job_is_not_read() {
    let error = read(&vec![b' '; super::BYTES_MOST + 1]).unwrap_err();
    let expected = "line 1, column 1: the file has 67108865 bytes, but a job has at most 67108864";
    assert_eq!(error.to_string(), expected);
}

/// The plain job with so many openings within openings.
fn nested(times: usize) -> String {
    let mut opening = "\"bay\": {}".to_string();
    for key in 100..100 + times {
        opening =
            format!("\"stacked\": {{\"first\": {{\"key\": {key}, {opening}}}, \"rest\": []}}");
    }
    plain().replacen("\"bay\": {}", &opening, 1)
}

#[test]
fn openings_lie_in_each_other_only_so_deep() {
    assert!(read(nested(11).as_bytes()).is_ok());
    let deep = error_of(&nested(12));
    assert_eq!(deep.message, "openings lie in each other more than 12 deep");
    assert_eq!(deep.line, 230);
    let hostile = error_of(&nested(5_000));
    assert_eq!(hostile.message, "more than 127 brackets lie in each other");
}

#[test]
fn a_name_that_no_field_has() {
    check(
        r#""height": 704"#,
        r#""hight": 704"#,
        r#"line 222, column 30: cabinets[0].size.hight: there is no field "hight" here; there are: width, height, depth"#,
    );
}

#[test]
fn a_field_left_out() {
    check(
        r#""height": 704, "#,
        r#""#,
        r#"line 222, column 15: cabinets[0].size: the field "height" is missing"#,
    );
}

#[test]
fn a_field_there_twice() {
    check(
        r#""height": 704"#,
        r#""height": 704, "height": 704"#,
        r#"line 222, column 45: cabinets[0].size.height: the field "height" stands here twice"#,
    );
}

#[test]
fn a_length_out_of_range() {
    check(
        r#""height": 704"#,
        r#""height": 20000"#,
        "line 222, column 40: cabinets[0].size.height: carcass height: 20000, but it is 100 to 4000 mm",
    );
}

#[test]
fn a_length_too_fine() {
    check(
        r#""height": 704"#,
        r#""height": 704.0001"#,
        "line 222, column 40: cabinets[0].size.height: 704.0001, but the smallest step of a length is 0.000125 mm",
    );
}

#[test]
fn a_length_with_an_exponent() {
    check(
        r#""height": 704"#,
        r#""height": 7.04e2"#,
        "line 222, column 40: cabinets[0].size.height: 7.04e2, but a length is written out, such as 704 or 18.6",
    );
}

#[test]
fn a_length_in_quotes() {
    check(
        r#""height": 704"#,
        r#""height": "704""#,
        r#"line 222, column 40: cabinets[0].size.height: "704", but it is a length in mm without quotes, such as 704 or 18.6"#,
    );
}

#[test]
fn a_list_for_an_object() {
    check(
        r#"{"width": 600, "height": 704, "depth": 560}"#,
        r#"[600, 704, 560]"#,
        "line 222, column 15: cabinets[0].size: a list [ ], but it is an object { } of: width, height, depth",
    );
}

#[test]
fn a_word_that_is_not_meant() {
    check(
        r#""fit": "between""#,
        r#""fit": "beneath""#,
        r#"line 226, column 48: cabinets[0].carcass.bottom.fit: "beneath", but it is one of: between, across"#,
    );
}

#[test]
fn a_word_without_its_value() {
    check(
        r#"{"groove": {"to_front_wall": 20, "cut": 8}}"#,
        r#""groove""#,
        "line 228, column 17: cabinets[0].carcass.back: this word does not stand alone: write { }, and in it the word, a colon and its value",
    );
}

#[test]
fn a_name_of_nothing() {
    check(
        r#""name": "A1""#,
        r#""name": " ""#,
        "line 221, column 15: cabinets[0].name: a name needs at least one character",
    );
}

#[test]
fn a_name_that_commands_the_terminal() {
    check(
        r#""name": "A1""#,
        r#""name": "A\u001b[2J""#,
        "line 221, column 15: cabinets[0].name: the character U+001B is not shown in names; leave it out",
    );
}

#[test]
fn a_key_below_zero() {
    check(
        r#""key": 1, "bay""#,
        r#""key": -1, "bay""#,
        "line 230, column 26: cabinets[0].opening.key: -1, but it is a whole number from 0 to 4294967295",
    );
}

#[test]
fn an_opening_of_two_kinds() {
    check(
        r#""bay": {}"#,
        r#""bay": {}, "stacked": {"first": {"key": 9, "bay": {}}, "rest": []}"#,
        r#"line 230, column 18: cabinets[0].opening: an opening has one of the fields "bay", "side_by_side" and "stacked", no more and no less"#,
    );
}

#[test]
fn a_card_that_is_not_there() {
    check(
        r#""sides": {"board": "board-18"}"#,
        r#""sides": {"board": "board-17"}"#,
        "line 225, column 28: cabinets[0].carcass.sides.board: board-17, but the job has no board card of that id",
    );
}

#[test]
fn a_hole_counted_from_nowhere() {
    check(
        r#""bay": {}"#,
        r#""bay": {"zones": [{"key": 3, "first": "foot 3", "last": "knee 9", "depth": "shop"}]}"#,
        r#"line 230, column 85: cabinets[0].opening.bay.zones[0].last: "knee 9", but it is a hole such as "foot 3", "head 4" or "middle -2""#,
    );
}

#[test]
fn a_depth_of_no_meaning() {
    check(
        r#""bay": {}"#,
        r#""bay": {"zones": [{"key": 3, "first": "foot 3", "last": "foot 9", "depth": "deep"}]}"#,
        r#"line 230, column 104: cabinets[0].opening.bay.zones[0].depth: "deep", but it is "shop", "through", or a depth in mm such as 12"#,
    );
}

#[test]
fn a_value_without_its_origin() {
    check(
        r#"[650, "house guess"]"#,
        r#"[650]"#,
        r#"line 35, column 20: cards.boards[0].density: a list of 1, but it is a value and its origin, such as [18.2, "data sheet"]"#,
    );
}

#[test]
fn a_value_with_more_than_its_origin() {
    check(
        r#"[650, "house guess"]"#,
        r#"[650, "house guess", 3]"#,
        "line 35, column 39: cards.boards[0].density: a comma, but it is the end of a list of 2",
    );
}

#[test]
fn a_number_for_yes_or_no() {
    check(
        r#""name": "1""#,
        r#""name": "1", "mirrored": 1"#,
        "line 232, column 45: cabinets[0].copies[0].mirrored: 1, but it is true or false",
    );
}

#[test]
fn a_comma_forgotten() {
    check(
        r#""head": 16},"#,
        r#""head": 16}"#,
        "line 224, column 7: cabinets[0]: a comma or the end of this object is missing here",
    );
}

#[test]
fn a_comma_too_many() {
    check(
        r#"{"key": 2, "name": "1"}"#,
        r#"{"key": 2, "name": "1"},"#,
        "line 233, column 7: cabinets[0].copies[1]: a closing bracket, but it is an object { } of: key, name, mirrored, as_cut",
    );
}

#[test]
fn more_after_the_end() {
    check(
        r#"  ]
}
"#,
        r#"  ]
}
{}"#,
        "line 237, column 1: more stands here after the end",
    );
}

#[test]
fn a_cabinet_without_copies() {
    check(
        r#"[
        {"key": 2, "name": "1"}
      ]"#,
        r#"[]"#,
        "line 231, column 17: cabinets[0].copies: none, but a cabinet is built at least once",
    );
}

#[test]
fn a_newer_version() {
    check(
        r#""version": 1"#,
        r#""version": 2"#,
        "line 3, column 14: version: this file is of version 2; this program reads version 1: take a newer program",
    );
}

#[test]
fn a_version_of_zero() {
    check(
        r#""version": 1"#,
        r#""version": 0"#,
        "line 3, column 14: version: a version is a whole number from 1 up",
    );
}

#[test]
fn a_version_past_every_number() {
    check(
        r#""version": 1"#,
        r#""version": 4294967297"#,
        "line 3, column 14: version: this file is of version 4294967297; this program reads version 1: take a newer program",
    );
}

#[test]
fn another_format() {
    check(
        r#""gablerow job""#,
        r#""shopping list""#,
        r#"line 2, column 13: format: this is no gablerow job: its format is not "gablerow job""#,
    );
}
