//! Strength against published tables and values worked by hand.

use super::*;
use crate::measure::Length;

fn mm(mm: i32) -> Length {
    Length::from_mm(mm)
}

#[track_caller]
fn near(found: f64, expected: f64, within: f64) {
    assert!(
        (found - expected).abs() <= within,
        "{found} is not {expected}, within {within}"
    );
}

/// The day the load comes, for figures that leave creep out.
const NO_CREEP: Creep = Creep {
    board: "any",
    factor: 1.0,
    standing: Standing::HouseGuess,
};

/// A shelf of any depth under a pressure in Pa.
fn under_pressure(e: f64, thickness: i32, span: i32, pressure: f64, creep: &Creep) -> Sag {
    let depth = mm(300);
    let section = Section::board(depth, mm(thickness), e);
    sag(
        section,
        mm(span),
        line_load_of_pressure(pressure, depth),
        creep,
    )
}

fn longest_under_pressure(e: f64, thickness: Length, pressure: f64, limit: &Limit) -> f64 {
    let depth = mm(300);
    let section = Section::board(depth, thickness, e);
    longest_span(
        section,
        line_load_of_pressure(pressure, depth),
        &NO_CREEP,
        limit,
    )
}

fn limit(words: &str) -> &'static Limit {
    LIMITS.iter().find(|limit| limit.words == words).unwrap()
}

fn creep(board: &str) -> &'static Creep {
    CREEPS.iter().find(|creep| creep.board == board).unwrap()
}

// Source: Wood Handbook FPL-GTR-190, eq. 9-2 to 9-4; figures by closed form, agreeing with two beam libraries.
#[test]
fn sag_is_that_of_a_simply_supported_beam() {
    for (e, t, span, pressure, expected) in [
        (1_600.0, 18, 764, 718.2, 4.097_33),
        (2_200.0, 18, 764, 718.2, 2.979_9),
        (1_600.0, 18, 534, 718.2, 0.977_9),
        (1_600.0, 18, 764, 490.33, 2.797_3),
        (12_500.0, 19, 900, 718.2, 0.858_7),
    ] {
        near(
            under_pressure(e, t, span, pressure, &NO_CREEP).now,
            expected,
            6e-5,
        );
    }
}

// Source: ANSI/KCMA A161.1, 5.1 for L/192; spans by closed form.
#[test]
fn longest_span_is_where_the_sag_meets_the_limit() {
    let kcma = limit("L/192, at most 6.4 mm");
    for (e, t, expected) in [
        (1_600.0, 18, 756.6),
        (2_200.0, 18, 841.3),
        (1_600.0, 16, 672.5),
        (1_500.0, 25, 1_028.4),
    ] {
        near(
            longest_under_pressure(e, mm(t), 718.2, kcma),
            expected,
            0.05,
        );
    }
    near(kcma.at(mm(764)), 3.979, 5e-4);
}

#[test]
// A span of a few metres in whole micrometres.
#[allow(clippy::cast_possible_truncation)]
fn a_cap_in_mm_rules_long_spans() {
    let kcma = limit("L/192, at most 6.4 mm");
    near(kcma.at(mm(2_000)), 6.4, 0.0);
    let span = longest_under_pressure(12_500.0, mm(30), 718.2, kcma);
    let long = (0..).map(mm).take_while(|l| l.mm() <= span).last().unwrap();
    let section = Section::board(mm(300), mm(30), 12_500.0);
    let load = line_load_of_pressure(718.2, mm(300));
    near(sag(section, long, load, &NO_CREEP).now, 6.4, 0.03);
}

// Geometry and mechanics: 880 x 420 x 19, E 1600, 25 kg.
#[test]
fn a_long_shelf_fails_and_its_lipping_saves_it() {
    let [span, depth, thickness] = [880, 420, 19].map(mm);
    let load = line_load_of_mass(25.0, span);
    let bare = Section::board(depth, thickness, 1_600.0);
    let house = sag(bare, span, load, creep("furniture board"));
    near(house.now, 5.67, 0.005);
    near(house.later, 11.3, 0.05);
    let stand_in = sag(bare, span, load, creep("furniture board as P5"));
    near(stand_in.later, 18.4, 0.05);

    let hidden = limit("L/200");
    near(hidden.at(span), 4.4, 1e-9);
    near(
        longest_span(bare, load, creep("furniture board"), hidden),
        642.0,
        0.5,
    );

    let strip = |width, height, elasticity| Strip {
        width: mm(width),
        height: mm(height),
        down: Length::ZERO,
        elasticity,
    };
    let lipped = Section::of(&[strip(420, 19, 1_600.0), strip(25, 45, 11_000.0)]);
    let lipped = sag(lipped, span, load, creep("furniture board"));
    near(lipped.now, 0.62, 0.005);
    near(lipped.later, 1.23, 0.005);
    assert!(lipped.later < hidden.at(span) && house.now > hidden.at(span));
}

// Source: EN 1995-1-1, 2.2.3: what is later is what is now times 1 + kdef.
#[test]
fn creep_multiplies_the_sag() {
    let p5 = under_pressure(1_600.0, 18, 764, 718.2, creep("particleboard P5"));
    near(p5.later, 13.316, 1e-3);
    let oak = under_pressure(12_500.0, 19, 900, 718.2, creep("solid wood"));
    near(oak.later, 1.374, 1e-3);
}

#[test]
fn furniture_boards_have_no_published_creep() {
    let marks = ["furniture board", "furniture board as P5"].map(|board| creep(board).standing);
    assert_eq!(marks.map(Standing::words), ["house guess", "stand-in"]);
    assert!(marks.into_iter().all(Standing::is_unproved));
    assert!(!creep("plywood").standing.is_unproved());
}

// Source: EN 312, type P2, and EN 622-5, both as quoted on board makers' sheets.
#[test]
fn elasticity_goes_by_kind_and_thickness() {
    let least = |board, um| elasticity(board, Length::from_um(um)).map(|row| row.least);
    assert_eq!(least("particleboard P2", 18_600), Some(1_600.0));
    assert_eq!(least("particleboard P2", 20_000), Some(1_600.0));
    assert_eq!(least("particleboard P2", 20_001), Some(1_500.0));
    assert_eq!(least("MDF", 12_000), Some(2_500.0));
    assert_eq!(least("MDF", 19_000), Some(2_200.0));
    assert_eq!(least("MDF", 3_000), None);
    assert_eq!(least("glass", 6_000), None);
}

#[test]
fn rows_of_a_kind_leave_no_gap_and_do_not_overlap() {
    for pair in ELASTICITIES
        .windows(2)
        .filter(|pair| pair[0].board == pair[1].board)
    {
        assert_eq!(pair[0].to, pair[1].over, "{}", pair[0].board);
    }
    assert!(
        ELASTICITIES
            .iter()
            .all(|row| row.over < row.to && row.least <= row.most)
    );
}

// rule-tip. Common practice: shelf 440.1 x 500 x 18.6 at 650 kg/m3, pins 25 behind its front edge.
#[test]
fn a_light_shelf_tips_over_24_kg() {
    let [width, thickness] = [440_100, 18_600].map(Length::from_um);
    let mass = mass_kg(width, mm(500), thickness, 650.0);
    near(mass, 2.66, 0.005);
    let tips = tip_load_kg(mass, mm(500), mm(25)).unwrap();
    near(tips, 23.9, 0.05);
    assert!(tips > TIP_LEAST_KG);
    assert_eq!(tip_load_kg(mass, mm(500), Length::ZERO), None);
}

// Derived: width * height * thickness * density; the second is the door of the hinge charts.
#[test]
fn mass_is_volume_times_density() {
    near(mass_kg(mm(547), mm(765), mm(19), 650.0), 5.168, 5e-4);
    near(mass_kg(mm(640), mm(1_000), mm(19), 650.0), 7.90, 5e-3);
    near(mass_kg(mm(467), mm(797), mm(19), 750.0), 5.30, 5e-3);
}

#[test]
fn pins_bear_what_lies_on_them() {
    assert_eq!(load_on_pin(25.0, 3.0, 4), Some(7.0));
    assert_eq!(load_on_pin(25.0, 3.0, 0), None);
}

// Source of 1600: EN 312, type P2. Twice after years is a house guess.
#[test]
fn starter_boards_are_as_stiff_as_the_tables_say() {
    for board in crate::cards::Cards::starter().boards {
        let stiffness = board.stiffness.map(|it| f64::from(it.value));
        let row = elasticity("particleboard P2", board.thickness.value);
        assert_eq!(stiffness, row.map(|row| row.least), "{}", board.id);
        let creep_of_card = board.creep.map(|it| f64::from(it.value) / 100.0);
        assert_eq!(creep_of_card, Some(creep("furniture board").factor));
    }
}

// 880 long: 4.4 by L/200, but 3 mm is less. 5.67 now at 25 kg, twice that after years: 642 by L/200, where it would sag 3.2;
// 880 * (3 / 11.34)^(1/4) = 631 by 3 mm.
#[test]
fn house_keeps_the_stricter_of_its_two_limits() {
    assert_eq!(house_limit(mm(600)).words, "L/200");
    assert_eq!(house_limit(Length::from_um(600_001)).words, "3 mm");
    near(house_limit(mm(500)).at(mm(500)), 2.5, 1e-9);
    near(house_limit(mm(880)).at(mm(880)), 3.0, 1e-9);
    let section = Section::board(mm(420), mm(19), 1_600.0);
    let load = |kg| line_load_of_mass(kg, mm(880));
    let (long, limit) = longest_in_house(section, load(25.0), creep("furniture board"));
    near(long, 631.0, 0.5);
    assert_eq!(limit.words, "3 mm");
    let (short, limit) = longest_in_house(section, load(50.0), creep("furniture board"));
    near(short, 509.5, 0.5);
    assert_eq!(limit.words, "L/200");
}

#[test]
fn said_lengths_are_tenths_and_end_somewhere() {
    assert_eq!(length(3.156_4), Length::from_um(3_200));
    assert_eq!(length(-0.06), Length::from_um(-100));
    assert_eq!(length(f64::INFINITY), Length::from_mm(268_000));
}

#[test]
fn what_would_do_is_never_more_than_it_is() {
    let down = |mm, step| length_down(mm, Length::from_um(step));
    assert_eq!(down(561.999_9, 1_000), Length::from_mm(561));
    assert_eq!(down(562.0, 1_000), Length::from_mm(562));
    assert_eq!(down(38.46, 500), Length::from_um(38_000));
    assert_eq!(down(-0.01, 500), Length::from_um(-500));
    assert_eq!(down(f64::INFINITY, 1_000), Length::from_mm(268_000));
}
