//! Sentences about parts, for lists of text and for sheets of paper alike.

use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::job::{FrontKind, Hand, Label, Names};
use gablerow_core::measure::{Length, Unit};
use gablerow_core::parts::{
    BagLine, BoxPart, Built, FrontPart, Hanging, Missing, Piece, ShelfPart, Strength,
};
use gablerow_core::solve::hinges::{Cup, chart_of};
use gablerow_core::strength::{SHELF_TESTS, length_down};

use crate::part_records::CabinetParts;

/// Several measures with a cross between.
pub(crate) fn by(lengths: &[Length], unit: Unit) -> String {
    let show = |length: &Length| length.show(unit).to_string();
    let lengths: Vec<String> = lengths.iter().map(show).collect();
    lengths.join(" x ")
}

/// What a part is behind its name, if it has one, with no word said twice: `D2 door, hung left`, `door 1, hung left`.
pub(crate) fn named(name: Option<&Label>, part: &str) -> String {
    let Some(name) = name else {
        return part.to_owned();
    };
    let first = |text: &str| text.split([' ', ',']).next().map_or(0, str::len);
    let (kind, rest) = part.split_at(first(part));
    match name.as_str()[..first(name.as_str())].eq_ignore_ascii_case(kind) {
        true => format!("{name}{rest}"),
        false => format!("{name} {part}"),
    }
}

/// `G2 rev 7 OTTER, 1000.0 x 704.0 x 560.0 (mm), 2 copies; counts are for all`
pub(crate) fn cabinet_words(of: &CabinetParts, unit: Unit) -> String {
    let (name, built, stamp) = (&of.cabinet.name, of.parts.built, of.stamp);
    let copies = match (built.total(), built.mirrored) {
        (1, 0) => "1 copy".to_owned(),
        (1, _) => "1 copy, mirrored".to_owned(),
        (many, 0) => format!("{many} copies; counts are for all"),
        (many, mirrored) => format!("{many} copies, {mirrored} mirrored; counts are for all"),
    };
    let size = of.cabinet.size;
    let size = by(&[size.width, size.height, size.depth], unit);
    format!("{name} {stamp}, {size} ({}), {copies}", unit.word())
}

/// `D2: hinges on holes 14, 20; 2 asked for by ...; tab 3.5, plate 0.0, laps over 16.5 where 16.7 is wished`
pub(crate) fn hinge_words(front: &FrontPart, hanging: &Hanging, unit: Unit) -> String {
    let asked = hanging.asked.map_or(String::new(), |asked| {
        let chart = hanging.chart.words();
        let standing = chart_of(hanging.chart).standing.words();
        format!("; {} asked for {chart} ({standing})", asked.hinges)
    });
    let fit = hanging.fit.map_or("no plate in stock".to_owned(), |fit| {
        format!(
            "tab {}, plate {}, laps over {} where {} is wished",
            fit.tab.show(unit),
            fit.plate.show(unit),
            fit.overlay.total().show(unit),
            hanging.wanted.total().show(unit),
        )
    });
    format!(
        "{}: hinges on {}{asked}; {}, {} arm, {fit}",
        leaf_words(front),
        holes(&hanging.holes),
        hanging.card,
        hanging.arm.word(),
    )
}

/// `D2: cups 94.5, 606.5 from the foot, 606.5, 94.5 from the head: not handed; 21.0 from the hinge edge, 35.0 wide, 13.0 deep`
pub(crate) fn cup_words(front: &FrontPart, hanging: &Hanging, unit: Unit) -> String {
    let each = |from: fn(&Cup) -> Length| {
        let cups = hanging.cups.cups.iter();
        let cups: Vec<String> = cups.map(|cup| from(cup).show(unit).to_string()).collect();
        cups.join(", ")
    };
    let centre = hanging.fit.map_or(String::new(), |fit| {
        format!(
            "{} from the hinge edge, ",
            fit.cup_centre.total().show(unit)
        )
    });
    let handed = if hanging.cups.handed {
        "HANDED"
    } else {
        "not handed"
    };
    format!(
        "{}: cups {} from the foot, {} from the head: {handed}; {centre}{} wide, {} deep",
        leaf_words(front),
        each(|cup| cup.from_foot.total()),
        each(|cup| cup.from_head.total()),
        hanging.cup_diameter.bit(unit),
        hanging.cup_depth.show(unit),
    )
}

/// `D2`, or of a pair `P1 left`: the hand a leaf is hung on tells the two apart.
fn leaf_words(front: &FrontPart) -> String {
    match (front.kind, front.hung) {
        (FrontKind::Pair, Some(hand)) => format!("{} {}", front.name, hand.word()),
        _ => front.name.to_string(),
    }
}

/// How far the lower edge of a front is below the underside of its box; a drawer behind a door has no front.
pub(crate) fn rise_words(made: &BoxPart, unit: Unit) -> String {
    match made.inner {
        true => "-".to_owned(),
        false => made.rise.total().show(unit).to_string(),
    }
}

/// The bay of a loose shelf, by its number: `2`.
pub(crate) fn bay_words(shelf: &ShelfPart, of: &CabinetParts) -> String {
    let names = Names::of(&of.cabinet.opening);
    let bay = names.opening(shelf.bay).map(|name| name.to_string());
    bay.unwrap_or_default().replace("bay ", "")
}

/// `D1: 2 sides 490.0 x 224.0, 2 ends 430.7 x 224.0, ply-15 15.0; 1 bottom 445.7 x 475.0, recess 13.0; ...`
pub(crate) fn box_words(made: &BoxPart, built: Built, unit: Unit) -> String {
    let of = |piece: &Piece| by(&[piece.length.total(), piece.width.total()], unit);
    let [width, length] = made.bottom;
    let thickness = made.side.thickness.map_or(String::new(), |thickness| {
        format!(" {}", thickness.show(unit))
    });
    let moved = if made.moved == Length::ZERO {
        String::new()
    } else {
        let hand = if made.moved > Length::ZERO {
            "right"
        } else {
            "left"
        };
        format!(", moved {} to the {hand}", made.moved.abs().show(unit))
    };
    let spacer = |hand| match made.spacers.on(hand) {
        Length::ZERO => None,
        thick => Some(format!("{} on the {}", thick.show(unit), hand.word())),
    };
    let spacers: Vec<String> = [Hand::Left, Hand::Right]
        .into_iter()
        .filter_map(spacer)
        .collect();
    let spacers = match (spacers.is_empty(), built.mirrored) {
        (true, _) => String::new(),
        (false, 0) => format!(", spacer {}", spacers.join(" and ")),
        (false, _) => format!(
            ", spacer {}, in mirrored copies the other hand",
            spacers.join(" and ")
        ),
    };
    let (each, pair) = (built.total(), 2 * built.total());
    format!(
        "{}: {pair} sides {}, {pair} ends {}, {}{thickness}; {each} bottom {}, recess {}; gap at each side {}{spacers}{moved}; {} {}",
        made.name,
        of(&made.side),
        of(&made.end),
        made.side.board,
        by(&[width.total(), length.total()], unit),
        made.recess.show(unit),
        made.side_gap.show(unit),
        made.card,
        made.runner_length.show(unit),
    )
}

/// `runners 3 pr of 500.0`, `pins 8 (take 9)`
pub(crate) fn bag_words(line: &BagLine, unit: Unit) -> String {
    let mut text = format!("{} {}", line.kind.words(), line.count);
    if line.kind.in_pairs() {
        text += " pr";
    }
    if let Some(length) = line.length {
        text += &format!(" of {}", length.show(unit));
    }
    if line.take > line.count {
        text += &format!(" (take {})", line.take);
    }
    text
}

/// `D2: drawer without runners`
pub(crate) fn missing_words(missing: &Missing, of: &CabinetParts) -> String {
    let opening = &of.cabinet.opening;
    let front = missing.front().and_then(|key| opening.front(key));
    let name = match missing {
        Missing::Card { card } => card.as_str(),
        _ => front.map_or("", |front| front.name.as_str()),
    };
    format!("{name}: {}", missing.words())
}

/// `3.5 kg and 25.0 kg on it: sags 1.6 mm, 3.2 mm after years; up to 540.0 mm long within L/200; ...`
pub(crate) fn strength_words(strength: &Strength) -> String {
    let mut text = kg(strength.mass_kg);
    let guess = if strength.load_is_typed {
        ""
    } else {
        " (house guess)"
    };
    text += &format!(" and {} on it{guess}", kg(strength.load_kg));
    text += &match (strength.now, strength.later) {
        (Some(now), Some(later)) => format!(": sags {now:.1} mm, {later:.1} mm after years"),
        (Some(now), None) => format!(": sags {now:.1} mm, and more after years"),
        _ => ", stiffness not known".to_owned(),
    };
    if let Some((longest, limit)) = strength.longest {
        let longest = length_down(longest, Length::from_mm(1)).show(Unit::Millimetre);
        text += &format!("; up to {longest} mm long within {}", limit.words);
    }
    if let Some(pin) = strength.pin_kg {
        text += &format!("; {} on each pin", kg(pin));
    }
    if let Some(tip) = strength.tip_kg {
        text += &format!("; tips at {} on its front edge", kg(tip));
    }
    text
}

/// `published tests, at once: 1.2 mm of 2.9 mm under 15 lb/ft2 (ANSI/KCMA A161.1); ...`; `None` when the
/// stiffness of its board is not known.
pub(crate) fn shelf_test_words(shelf: &ShelfPart) -> Option<String> {
    let sags = shelf.strength.as_ref()?.tests?;
    let length = shelf.piece.length.total();
    let tests = SHELF_TESTS.iter().zip(sags).map(|(test, sag)| {
        let (load, limit) = (test.load, test.limit);
        format!(
            "{sag:.1} mm of {:.1} mm under {} ({})",
            limit.at(length),
            load.words,
            limit.standing.words()
        )
    });
    let tests: Vec<String> = tests.collect();
    Some(format!("published tests, at once: {}", tests.join("; ")))
}

/// Holes with a comma between each two: `hole 3`, `holes 3, 19`.
fn holes(holes: &[i16]) -> String {
    let numbers: Vec<String> = holes.iter().map(ToString::to_string).collect();
    let word = if holes.len() == 1 { "hole" } else { "holes" };
    format!("{word} {}", numbers.join(", "))
}

pub(crate) fn kg(mass: f64) -> String {
    format!("{mass:.1} kg")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_that_says_what_it_is_has_it_said_once() {
        let words = |name: &str, part: &str| named(Some(&Label::new(name).unwrap()), part);
        assert_eq!(words("door 1", "door, hung left"), "door 1, hung left");
        assert_eq!(words("Drawer", "drawer front"), "Drawer front");
        assert_eq!(words("D2", "door, hung left"), "D2 door, hung left");
        assert_eq!(words("doors", "door"), "doors door");
        assert_eq!(named(None, "left side"), "left side");
    }
}
