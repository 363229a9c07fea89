//! What a person sees: every screen at three sizes, as text beside the tests, and its colours.
//!
//! `GABLEROW_WRITE=1` writes the files anew; what changed is then in the diff.

use std::fmt::Write as _;
use std::path::Path;

use gablerow::theme::{Charset, Depth, Role, Theme};
use vt100::Color;

use crate::key_script::{assert_screen, golden, presses, send};
use crate::pty::{Program, Session};

const SIZES: [(u16, u16); 3] = [(80, 24), (120, 40), (200, 60)];

fn program((columns, rows): (u16, u16)) -> Program {
    Program::new(Path::new(env!("CARGO_BIN_EXE_gablerow"))).size(columns, rows)
}

/// The program on the demo, with these keys pressed.
fn after(program: Program, script: &str) -> Session {
    let folder = tempfile::tempdir().unwrap();
    let mut session = program.folder(folder.path()).start();
    session.wait_text("G1 glaze store 1/6");
    send(&mut session, &presses(script));
    session.keeping(folder)
}

/// The screen that the keys lead to is the committed one, and shows some text, at every size.
fn is_committed(name: &str, script: &str, shows: &str) {
    for size in SIZES {
        let session = after(program(size), script);
        session.wait_text(shows);
        assert_screen(
            &session,
            &format!("tests/screens/{name}_{}x{}.txt", size.0, size.1),
        );
    }
}

#[test]
fn a_face() {
    is_committed("face", "", "left side, inside");
}

#[test]
fn both_walls_as_a_book() {
    is_committed("book", "m", "right side, inside");
}

#[test]
fn a_refused_size_stays_as_typed_beside_its_complaint() {
    is_committed(
        "size_refused",
        "e 9 9 9 9 Enter",
        "9999, but it is 100 to 4000 mm",
    );
}

#[test]
fn the_cabinets_of_the_job() {
    is_committed("job", "j Down", "3 cabinets");
}

#[test]
fn a_free_row_on_an_outside() {
    is_committed(
        "outside",
        "o Space Up Up Up b 6 0 Space b Enter",
        "free row 60 from the back on holes 3-6",
    );
}

#[test]
fn the_sizes_of_a_free_hole() {
    let script = "o g 5 0 Space a t Space 1 0 0 Space h e a d Enter e";
    is_committed("free_hole", script, "from end");
}

#[test]
fn the_load_and_the_clear_height_of_a_loose_shelf() {
    let script = "1 1 Enter e 3 5 . 5 Space k g Enter Down 3 2 0 Enter";
    is_committed("shelf", script, "shelf: clear above 320.0");
}

#[test]
fn the_contents_of_a_drawer() {
    let script = "n n v e Down Down Down Down 3 0 Space k g Enter";
    is_committed("contents", script, "D1: contents 30 kg");
}

#[test]
fn a_set_up_at_the_bench() {
    is_committed("bench", "B", "set-up 1 of");
}

#[test]
fn a_set_up_with_trouble_on_its_panel() {
    let script = "j B Space x t h e Space b i t Space w a n d e r s Enter Esc";
    is_committed("bench_trouble", script, "trouble: the bit wanders");
}

#[test]
fn a_hole_too_far_by_what_was_measured() {
    // A dead key between two of a kind, which would be one of a worn key.
    let script = "j B Space z Space z Space z Space z Space m 5 1 2 Enter";
    is_committed("bench_measured", script, "miscounted");
}

#[test]
fn cabinets_that_are_bored_in_part_or_for_another_state() {
    let bored = "Space z ".repeat(8);
    let script = format!("B {bored} Esc Esc Up Up Up Up Up Up Up x j");
    is_committed("job_bored", &script, "bored and not wanted");
}

#[test]
fn the_papers() {
    is_committed("papers", "P", "glaze-store_bench.pdf");
}

#[test]
fn a_paper_of_text_of_one_cabinet() {
    is_committed("papers_text", "P c Down f", "G1_holes_rev1");
}

#[test]
fn a_sheet_on_all_of_the_screen() {
    is_committed("papers_whole", "P Down Down Down v Right", "sheet 2/2");
}

#[test]
fn what_is_built_of_a_cabinet() {
    is_committed("copies", "j + m", "G1 x3: 1, 2, 3 mirrored");
}

#[test]
fn the_checks_of_a_cabinet_with_stops() {
    is_committed("checks", "p p k Down", "2 of 4");
}

#[test]
fn what_would_mend_a_finding_is_drawn_before_it_is_taken() {
    is_committed("mend", "p p k Down z Down", "hinge plate to hole 24");
}

#[test]
fn the_keys_of_the_checks_come_with_every_rule() {
    is_committed("rules", "k ?", "What is a stop");
}

#[test]
fn an_overruled_stop_says_by_which_sentence() {
    let script = "p p k a A n n Space b o r e s Space i t Enter";
    is_committed(
        "overruled",
        script,
        "plate-on-pin-hole, overruled: Ann bores it",
    );
}

#[test]
fn a_hole_that_is_barred_says_why() {
    // The back row stands 7 behind that of the runners.
    let script = format!("{TWO_ROWS} 1 0 Enter Left Left Left");
    is_committed("barred", &script, "pin: stop near-miss-rows");
}

#[test]
fn the_house_defaults_and_the_cards() {
    is_committed("cards", "C Enter Down", "house defaults of this job");
}

#[test]
fn a_card_with_an_origin_from_the_data_sheet() {
    is_committed(
        "card_origin",
        "C Down Down Enter Down Down o Up Down o",
        "thickness measured data sheet",
    );
}

#[test]
fn a_length_near_the_pitch_is_asked_about() {
    is_committed("card_typed", "C Enter Down 3 1 . 8", "1 1/4 in is 31.75");
}

#[test]
fn on_a_small_screen_the_values_of_a_card_have_it_alone() {
    for (name, script) in [
        ("cards_list", "C Down Down"),
        ("cards_values", "C Down Enter Down Down Down"),
    ] {
        let session = after(program((60, 12)), script);
        assert_screen(&session, &format!("tests/screens/{name}_60x12.txt"));
    }
}

#[test]
fn what_the_shop_keeps_is_offered_to_a_job_that_has_it_otherwise() {
    let shop = tempfile::tempdir().unwrap();
    let begin = || program((80, 24)).variable("XDG_CONFIG_HOME", shop.path().to_str().unwrap());
    // The demo's 18 board measures 18.2; the shop's measures 18.4, and is kept.
    let session = after(begin(), "C Down Enter Down Down 1 8 . 4 Enter k");
    session.wait_text("kept for every job");
    drop(session);
    assert!(shop.path().join("gablerow/shop.json").exists());
    let session = after(begin(), "C t");
    session.wait_text("board board-18");
    assert_screen(&session, "tests/screens/from_shop_80x24.txt");
}

#[test]
fn a_broken_shop_file_is_said_and_holds_nobody_up() {
    let shop = tempfile::tempdir().unwrap();
    let folder = shop.path().join("gablerow");
    std::fs::create_dir(&folder).unwrap();
    std::fs::write(folder.join("shop.json"), "{\"format\": \"gablerow job\"}").unwrap();
    let start = program((200, 60)).variable("XDG_CONFIG_HOME", shop.path().to_str().unwrap());
    let session = after(start, "");
    session.wait_text("this is no gablerow shop: its format is not \"gablerow shop\"");
}

#[test]
fn where_the_numbers_come_from() {
    is_committed("why", "1 1 Enter w", "hole 11 above the foot of the panel");
}

#[test]
fn the_keys() {
    is_committed("help", "?", "On a face");
}

#[test]
fn a_tall_panel_from_its_foot() {
    is_committed("tall_foot", "p p f", "HOLE 1 ");
}

#[test]
fn a_tall_panel_from_its_head() {
    is_committed("tall_head", "p p t", "HOLE 39 ");
}

#[test]
fn a_deep_panel_is_drawn_smaller_and_says_so() {
    is_committed("deep", "e Down Down 1 6 0 0 Enter Esc", "column");
}

/// The back row 80 from the groove, which is 20 from the back edge, stands at 460; the last row of a runner at 453. Both fall
/// into the column from 448 to 464.
const TWO_ROWS: &str = "p p p e Up Up Up Up 8 0 Enter Esc 5 s";

#[test]
fn two_rows_in_one_column_stand_side_by_side() {
    is_committed("two_rows", TWO_ROWS, "100.0 from back ●3-7");
}

#[test]
fn without_colour_nothing_is_lost() {
    let plain = after(program((80, 24)).variable("NO_COLOR", "1"), "p p k");
    assert_screen(&plain, "tests/screens/plain_80x24.txt");
    let coloured = after(program((80, 24)), "p p k");
    assert_screen(&coloured, "tests/screens/plain_80x24.txt");
    let cells = (0..24).flat_map(|row| (0..80).map(move |column| (column, row)));
    for (column, row) in cells {
        let cell = plain.cell(column, row);
        assert_eq!(
            (cell.fgcolor(), cell.bgcolor()),
            (Color::Default, Color::Default),
            "a colour at {column}, {row}"
        );
    }
}

#[test]
fn an_ascii_terminal_gets_ascii_only() {
    for (name, script) in [
        ("ascii_face", "p p"),
        ("ascii_book", "m"),
        ("ascii_help", "?"),
        ("ascii_bench", "B Space"),
        ("ascii_papers", "P"),
    ] {
        let session = after(program((80, 24)).variable("LANG", "C"), script);
        assert_screen(&session, &format!("tests/screens/{name}_80x24.txt"));
        assert!(session.text().is_ascii(), "{}", session.text());
    }
}

/// Fronts of every kind, with these keys pressed.
fn after_fronts(program: Program, script: &str) -> Session {
    let job = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/jobs/glaze_fronts.json");
    let folder = tempfile::tempdir().unwrap();
    std::fs::copy(job, folder.path().join("glaze_fronts.json")).unwrap();
    let program = program.argument("glaze_fronts.json").folder(folder.path());
    let mut session = program.start();
    session.wait_text("F1 glaze fronts 1/12");
    send(&mut session, &presses(script));
    session.keeping(folder)
}

#[test]
fn cabinets_from_the_front() {
    for (name, script, shows) in [
        ("front_door", "v", "D1 door, hung left"),
        ("front_drawers", "v Right b", "W2 drawer"),
        ("front_behind", "v n Space", "BAY 1 behind P1"),
        ("front_open", "v n Up Left Left", "BAY 2 open"),
        ("front_inset", "v n n", "D1 door, hung right"),
        ("front_false", "v p Up Up", "B1 false front"),
        ("front_why", "v w", "width of D1"),
    ] {
        for size in SIZES {
            let session = after_fronts(program(size), script);
            session.wait_text(shows);
            let path = format!("tests/screens/{name}_{}x{}.txt", size.0, size.1);
            assert_screen(&session, &path);
        }
    }
}

#[test]
fn a_front_leads_to_the_wall_it_hangs_on_and_back() {
    let mut session = after_fronts(program((80, 24)), "v n Enter");
    session.wait_text("HOLE 3   front row");
    send(&mut session, &presses("v"));
    session.wait_text("P1 pair of doors");
}

#[test]
fn a_front_without_colour_or_unicode_loses_nothing() {
    let plain = after_fronts(program((80, 24)).variable("NO_COLOR", "1"), "v Right");
    plain.wait_text("W2 drawer");
    assert_screen(&plain, "tests/screens/front_plain_80x24.txt");
    // The ring around what one stands on is there without colour too.
    let ring = cell_of(&plain, "W2 221.0", -3);
    assert!(ring.inverse() && !cell_of(&plain, "W2 221.0", 0).inverse());
    let ascii = after_fronts(program((80, 24)).variable("LANG", "C"), "v Right b");
    ascii.wait_text("W2 drawer");
    assert_screen(&ascii, "tests/screens/ascii_front_80x24.txt");
    assert!(ascii.text().is_ascii(), "{}", ascii.text());
}

#[test]
fn a_front_in_its_colours() {
    let session = after_fronts(true_colour(), "v n");
    session.wait_text("P1 pair of doors");
    assert_styles(&session, "tests/screens/front_pair_80x24.styles.txt");
}

fn true_colour() -> Program {
    program((80, 24)).variable("COLORTERM", "truecolor")
}

#[test]
fn the_papers_in_their_colours() {
    let session = after(true_colour(), "P");
    assert_screen(&session, "tests/screens/papers_80x24.txt");
    assert_styles(&session, "tests/screens/papers_80x24.styles.txt");
}

#[test]
fn a_face_in_its_colours() {
    let session = after(true_colour(), "p p t");
    session.wait_text("HOLE 39 ");
    // The text first: only then is the frame whole.
    assert_screen(&session, "tests/screens/tall_head_80x24.txt");
    assert_styles(&session, "tests/screens/tall_head_80x24.styles.txt");
}

/// Waits until the colours of the screen are the committed ones; a frame may arrive in pieces.
fn assert_styles(session: &Session, path: &str) {
    if std::env::var_os("GABLEROW_WRITE").is_some() {
        std::thread::sleep(std::time::Duration::from_millis(300));
    }
    let expected = golden(path, &styles(&session.screen()));
    session.wait(path, |screen| (styles(screen) == expected).then_some(()));
}

/// Each line as runs of one style: `row columns ink/ground attributes 'text'`; blanks on the bare bench are left out.
fn styles(screen: &vt100::Screen) -> String {
    let (rows, columns) = screen.size();
    let (rows, columns) = (rows.get(), columns.get());
    let style = |row, column| {
        let cell = screen.cell(row, column).unwrap();
        let attributes = [
            (cell.bold(), " bold"),
            (cell.dim(), " dim"),
            (cell.italic(), " italic"),
            (cell.underline(), " underline"),
            (cell.inverse(), " inverse"),
        ];
        let set = attributes.into_iter().filter(|(is_set, _)| *is_set);
        let words: String = set.map(|(_, word)| word).collect();
        format!("{}/{}{words}", hex(cell.fgcolor()), hex(cell.bgcolor()))
    };
    let mut listing = String::new();
    for row in 0..rows {
        let mut start = 0;
        while start < columns {
            let here = style(row, start);
            let end = (start..columns)
                .find(|&column| style(row, column) != here)
                .unwrap_or(columns);
            let text = screen.contents_between(row, start, row, end);
            if !text.trim().is_empty() || here != style(rows - 1, columns - 1) {
                writeln!(
                    listing,
                    "{row:>2} {start:>2}-{:<2} {here} '{text}'",
                    end - 1
                )
                .unwrap();
            }
            start = end;
        }
    }
    listing
}

fn hex(color: Color) -> String {
    match color {
        Color::Default => "default".to_owned(),
        Color::Idx(index) => index.to_string(),
        Color::Rgb(red, green, blue) => format!("{red:02x}{green:02x}{blue:02x}"),
    }
}

/// The cell at the first place of a text on the screen, counted on by some columns.
fn cell_of(session: &Session, text: &str, on: i16) -> vt100::Cell {
    let screen = session.screen();
    let columns = screen.size().1.get();
    let (row, line) = (0..)
        .zip(screen.rows(0, columns))
        .find(|(_, line)| line.contains(text))
        .unwrap_or_else(|| panic!("no {text} in\n{}", screen.contents()));
    let before = line.split(text).next().unwrap().chars().count();
    session.cell(
        u16::try_from(before).unwrap().saturating_add_signed(on),
        row,
    )
}

fn assert_role(cell: &vt100::Cell, role: Role) {
    let style = Theme::new(Depth::True, Charset::Unicode).style(role);
    let rgb = |color| match color {
        Some(ratatui::style::Color::Rgb(red, green, blue)) => Color::Rgb(red, green, blue),
        other => panic!("{role:?} has {other:?}"),
    };
    assert_eq!(cell.bgcolor(), rgb(style.bg), "ground of {role:?}");
    // A blank shows no ink.
    if cell.contents().trim().is_empty() {
        return;
    }
    assert_eq!(cell.fgcolor(), rgb(style.fg), "ink of {role:?}");
}

#[test]
fn board_holes_and_stops_have_the_colours_of_their_roles() {
    let session = after(true_colour(), "f");
    session.wait_text("HOLE 1 ");
    // A line of the board: its front edge, two blanks, the hole.
    assert_role(&cell_of(&session, "14  432.0", 11), Role::Board);
    assert_role(&cell_of(&session, "14  432.0", 13), Role::PinHole);
    assert_role(&cell_of(&session, " 4  112.0", 13), Role::PlateHole);
    assert_role(&cell_of(&session, " 4  112.0", 11), Role::KeepOut);
    let session = after(true_colour(), "p f");
    session.wait_text("2 stop");
    assert_role(&cell_of(&session, "2 stop", 0), Role::Stop);
}
