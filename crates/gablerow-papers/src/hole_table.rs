//! The hole table: what to read in the shop, and the same as comma-separated values.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::layout::{Hole, Use};
use gablerow_core::measure::{Length, Unit};

use crate::table::columns;
use crate::text::{push_indented, push_line, push_unit_key};
use crate::{HoleRecord, Signs, Value};

columns! {
    HoleRecord<'_>;
    cabinet "what the cabinet is called"
        = |record| Value::Name(record.cabinet.as_str());
    copy "what the copy is called"
        = |record| Value::Name(record.copy.as_str());
    panel "the upright, as the copy has it"
        = |record| Value::Word(record.name.panel.to_string().into());
    face "the face it is bored from"
        = |record| Value::Word(record.name.word.into());
    row "its row; nothing for a bore that meets no row"
        = |record| record.hole.row.map_or(Value::Nothing, |row| Value::Word(row.word().into()));
    mm_from_front "from the panel's front edge to the centre"
        = |record| Value::Length(record.from_front);
    mm_from_back "from the panel's back edge to the centre"
        = |record| Value::Length(record.from_back);
    hole "its number on the grid of the cabinet, from the foot; nothing off the grid"
        = |record| record.hole.number.map_or(Value::Nothing, |number| Value::Number(number.into()));
    mm_from_foot "from the panel's foot to the centre"
        = |record| Value::Length(record.from_foot);
    mm_from_head "from the panel's head to the centre"
        = |record| Value::Length(record.from_head);
    diameter_mm "how wide"
        = |record| Value::Length(record.hole.diameter);
    depth_mm "how deep; nothing for through"
        = |record| record.hole.depth.map_or(Value::Nothing, Value::Length);
    uses "what it is for"
        = |record| Value::Words(uses(&record.hole));
}

/// What a hole is for, each use once.
pub(crate) fn uses(hole: &Hole) -> Vec<&'static str> {
    let used = |one: &Use| hole.users.iter().any(|(use_, _)| use_ == one);
    Use::ALL.into_iter().filter(used).map(Use::word).collect()
}

/// The hole table to be read, at most 80 columns wide: each face of each copy; on it each row of holes of one bore; its holes
/// from the foot up.
///
/// ```text
/// G1, copy 1, left side, inside (mm)
///   front row, front 37.0, back 523.0, D5.0 x 12.0
///     hole     foot     head
///        3     80.0    624.0  plate
/// ```
#[must_use]
pub fn hole_text(records: &[HoleRecord], unit: Unit, signs: &Signs) -> String {
    let mut out = String::new();
    let face = |record: &HoleRecord| (record.cabinet.clone(), record.copy.clone(), record.face);
    for on_face in records.chunk_by(|a, b| face(a) == face(b)) {
        if let Some(HoleRecord {
            cabinet,
            copy,
            name,
            ..
        }) = on_face.first()
        {
            let gap = if out.is_empty() { "" } else { "\n" };
            out.push_str(&format!(
                "{gap}{cabinet}, copy {copy}, {name} ({})\n",
                unit.word()
            ));
        }
        let bore = |record: &HoleRecord| {
            let hole = &record.hole;
            (hole.row, hole.x, hole.diameter, hole.depth)
        };
        for alike in on_face.chunk_by(|a, b| bore(a) == bore(b)) {
            push_row(&mut out, alike, unit, signs);
        }
    }
    push_unit_key(&mut out, unit);
    out
}

/// Neighbouring holes of one row and one bore.
fn push_row(out: &mut String, holes: &[HoleRecord], unit: Unit, signs: &Signs) {
    let show = |length: Length| length.show(unit).to_string();
    if let Some(HoleRecord {
        hole,
        from_front,
        from_back,
        ..
    }) = holes.first()
    {
        let row = hole
            .row
            .map_or("single bores".into(), |row| format!("{} row", row.word()));
        let bore = bore(hole, unit, signs);
        let heading = format!(
            "{row}, front {}, back {}, {bore}",
            show(*from_front),
            show(*from_back)
        );
        push_indented(out, "  ", "    ", &heading);
    }
    // Inches with what is left over are up to 17 letters: 31 17/32" (~-0.4).
    let wide = match unit {
        Unit::Millimetre => 8,
        Unit::Inch => 17,
    };
    let mut line = |hole: &str, foot: &str, head: &str, uses: &str| {
        push_line(
            out,
            "",
            &format!("    {hole:>4} {foot:>wide$} {head:>wide$}  {uses}"),
        );
    };
    line("hole", "foot", "head", "");
    for HoleRecord {
        hole,
        from_foot,
        from_head,
        ..
    } in holes
    {
        let number = hole.number.map_or("-".into(), |number| number.to_string());
        line(
            &number,
            &show(*from_foot),
            &show(*from_head),
            &uses(hole).join(", "),
        );
    }
}

/// Width and depth of a hole: `D5.0 x 12.0`, `D5.0 through`.
pub(crate) fn bore(hole: &Hole, unit: Unit, signs: &Signs) -> String {
    let diameter = hole.diameter.bit(unit);
    match hole.depth {
        Some(depth) => format!("{}{diameter} x {}", signs.diameter, depth.show(unit)),
        None => format!("{}{diameter} through", signs.diameter),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{SIGNS, job, two_bays};
    use crate::{Tabled, csv_table};
    use gablerow_core::job::{Depth, Label};

    #[test]
    fn columns_are_named_once() {
        let columns = HoleRecord::COLUMNS;
        let mut names: Vec<&str> = columns.iter().map(|column| column.name).collect();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), columns.len());
    }

    #[test]
    fn csv_names_its_columns_and_says_every_hole() {
        let job = job();
        let csv = csv_table(&HoleRecord::of_job(&job));
        let lines: Vec<&str> = csv.split("\r\n").collect();
        assert_eq!(
            lines[0],
            "cabinet,copy,panel,face,row,mm_from_front,mm_from_back,hole,mm_from_foot,mm_from_head,diameter_mm,depth_mm,uses"
        );
        // Hole 9 is 16 + 8 * 32 = 272 above the foot of a side 704 high and 560 deep.
        assert_eq!(
            lines[1],
            "A1,1,left side,inside,front,37,523,9,272,432,5,12,pin"
        );
        assert_eq!(lines.last(), Some(&""));
    }

    #[test]
    fn through_holes_have_no_depth() {
        let job = two_bays(Depth::Through);
        let csv = csv_table(&HoleRecord::of_job(&job));
        assert!(
            csv.lines().skip(1).all(|line| line.ends_with(",5,,pin")),
            "{csv}"
        );
    }

    #[test]
    fn a_name_cannot_be_a_formula() {
        let mut job = job();
        job.cabinets[0].name = Label::new("=1,2").unwrap();
        assert!(csv_table(&HoleRecord::of_job(&job)).contains("\r\n\"'=1,2\",1,left side,"));
    }

    #[test]
    fn text_has_a_heading_for_each_face_and_each_row() {
        let job = job();
        let text = hole_text(&HoleRecord::of_job(&job), Unit::Millimetre, &SIGNS);
        let head: Vec<&str> = text.lines().take(6).collect();
        assert_eq!(
            head,
            [
                "A1, copy 1, left side, inside (mm)",
                "  front row, front 37.0, back 523.0, D5.0 x 12.0",
                "    hole     foot     head",
                "       9    272.0    432.0  pin",
                "      10    304.0    400.0  pin",
                "  back row, front 503.0, back 57.0, D5.0 x 12.0",
            ]
        );
        assert_eq!(text.matches("A1, copy 1").count(), 2);
    }

    #[test]
    fn text_in_inches_is_no_wider_than_the_sheet() {
        let job = two_bays(Depth::Through);
        let text = hole_text(&HoleRecord::of_job(&job), Unit::Inch, &SIGNS);
        assert!(text.lines().all(|line| line.len() <= 80), "{text}");
        // A bit of 5 is one of 5, whatever else is measured in.
        assert!(text.contains("D5.0 mm through\n"), "{text}");
    }
}
