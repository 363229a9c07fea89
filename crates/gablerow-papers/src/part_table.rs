//! The columns of the part table.

use alloc::vec::Vec;

use gablerow_core::job::{Hand, Label};
use gablerow_core::measure::Length;
use gablerow_core::parts::Strength;
use gablerow_core::solve::hinges::{Cup, OverlayFit};
use gablerow_core::sum::Sum;

use crate::Value;
use crate::part_records::PartRecord;
use crate::table::columns;

columns! {
    PartRecord<'_>;
    cabinet "what the cabinet is called"
        = |record| Value::Name(record.cabinet.name.as_str());
    kind "which kind of part it is"
        = |record| Value::Word(record.kind().into());
    name "what it is called at the bench: fronts and what belongs to them"
        = |record| name(record.name());
    part "what it is"
        = |record| Value::Word(record.words().into());
    count "how many in all that is built; runners and their connectors by the pair"
        = |record| number(record.count());
    mirrored "how many of those are for mirrored copies"
        = |record| number(record.mirrored());
    take "hardware: how many to take along"
        = |record| number(record.hardware().map(|line| line.take));
    card "the card of hardware; of a door its hinge, of a box its runner"
        = |record| record.card().map_or(Value::Nothing, Value::Name);
    board "the card of the board"
        = |record| record.piece().map_or(Value::Nothing, |piece| Value::Name(piece.board.as_str()));
    grain "which way its length lies in the cabinet, and the grain with it"
        = |record| record.piece().map_or(Value::Nothing, |piece| Value::Word(piece.grain.word().into()));
    length_mm "finished, along the grain; of a box from front to back; of runners by name"
        = |record| length(record.size().map(first).or(record.hardware().and_then(|line| line.length)));
    width_mm "finished, across the grain; of a box over both sides"
        = |record| length(record.size().map(second));
    thickness_mm "as measured"
        = |record| length(record.piece().and_then(|piece| piece.thickness));
    cut_length_mm "as the saw makes it"
        = |record| length(record.piece().map(|piece| piece.cut_length.total()));
    cut_width_mm "as the saw makes it"
        = |record| length(record.piece().map(|piece| piece.cut_width.total()));
    banded "which edges are banded"
        = |record| record.piece().map_or(Value::Nothing, |piece| Value::Words(piece.banded.edges().into()));
    mass_kg "what a front or a shelf weighs"
        = |record| quantity(record.front().and_then(|front| front.mass_kg).or(strength(record).map(|of| of.mass_kg)));
    holes "the holes of plates, runners or pins; of a plate along the row the lower one"
        = |record| holes(record);
    hinges_asked "doors: how many hinges the card's chart asks for"
        = |record| number(record.hanging().and_then(|hanging| hanging.asked).map(|asked| u32::from(asked.hinges)));
    arm "doors: which arm their hinges have"
        = |record| record.hanging().map_or(Value::Nothing, |hanging| Value::Word(hanging.arm.word().into()));
    overlay_mm "doors: how far they shall lap over the upright; negative inside the opening"
        = |record| length(record.hanging().map(|hanging| hanging.wanted.total()));
    tab_mm "doors: the tab"
        = |record| length(fit(record).map(|fit| fit.tab));
    plate_mm "doors: the height of the plate"
        = |record| length(fit(record).map(|fit| fit.plate));
    residual_mm "doors: how far tab and plate lap over more than wished"
        = |record| length(fit(record).map(|fit| fit.residual));
    cups_mm_from_foot "doors: from the lower edge to the middle of each cup"
        = |record| cups(record, |cup| cup.from_foot.total());
    cups_mm_from_head "doors: from the upper edge to the middle of each cup, in the same order"
        = |record| cups(record, |cup| cup.from_head.total());
    cups_mm_from_edge "doors: from the hinge edge to the middle of the cups"
        = |record| length(fit(record).map(|fit| fit.cup_centre.total()));
    cup_diameter_mm "doors: how wide the cups are"
        = |record| length(record.hanging().map(|hanging| hanging.cup_diameter));
    cup_depth_mm "doors: how deep the cups are"
        = |record| length(record.hanging().map(|hanging| hanging.cup_depth));
    handed "doors: whether they do not fit turned end for end"
        = |record| record.hanging().map_or(Value::Nothing, |hanging| Value::Flag(hanging.cups.handed));
    inside_mm "boxes: clear width inside"
        = |record| length(record.made_box().map(|made| made.inside.total()));
    height_mm "boxes: how high they are"
        = |record| length(record.made_box().map(|made| made.height));
    height_most_mm "boxes: how high they can be"
        = |record| length(record.made_box().map(|made| made.room.total()));
    underside_mm "boxes and shelves: from the carcass underside up to their underside"
        = |record| length(record.made_box().map(|made| made.underside.total()).or(record.shelf().map(|shelf| shelf.underside.total())));
    rise_mm "boxes: from the lower edge of the front up to their underside"
        = |record| length(record.made_box().map(|made| made.rise.total()));
    recess_mm "boxes: how far the bottom stands above the underside of the sides"
        = |record| length(record.made_box().map(|made| made.recess));
    side_gap_mm "boxes: from either side to the wall, or to the spacer on it"
        = |record| length(record.made_box().map(|made| made.side_gap));
    spacer_left_mm "boxes: thickness of the spacer under the runner on the left wall; nothing when there is none"
        = |record| spacer(record, Hand::Left);
    spacer_right_mm "boxes: the same on the right wall"
        = |record| spacer(record, Hand::Right);
    moved_mm "boxes: how far spacers move them to the right; negative to the left"
        = |record| length(record.made_box().map(|made| made.moved));
    clear_below_mm "boxes and shelves: clear height under them"
        = |record| length(record.made_box().map(|made| made.clear_below.total()).or(record.shelf().map(|shelf| shelf.clear_below.total())));
    clear_above_mm "shelves: clear height over them"
        = |record| length(record.shelf().map(|shelf| shelf.clear_above.total()));
    load_kg "shelves: the load they are reckoned with: as typed, else what the house goes by"
        = |record| quantity(strength(record).map(|of| of.load_kg));
    sag_now_mm "shelves: their sag at once, under that load and their own weight"
        = |record| quantity(strength(record).and_then(|of| of.now));
    sag_later_mm "shelves: their sag after years"
        = |record| quantity(strength(record).and_then(|of| of.later));
    longest_mm "shelves: the longest of this board and depth that keeps to L/200 and 3 mm after years under as much on each mm"
        = |record| quantity(strength(record).and_then(|of| of.longest).map(|(longest, _)| longest));
    tip_kg "shelves: the load on the very front edge that tips them"
        = |record| quantity(strength(record).and_then(|of| of.tip_kg));
    pin_kg "shelves: what each pin bears when the load stands evenly"
        = |record| quantity(strength(record).and_then(|of| of.pin_kg));
}

fn name(name: Option<&Label>) -> Value<'_> {
    name.map_or(Value::Nothing, |name| Value::Name(name.as_str()))
}

fn number(number: Option<u32>) -> Value<'static> {
    number.map_or(Value::Nothing, |number| Value::Number(number.into()))
}

fn spacer(record: &PartRecord, hand: Hand) -> Value<'static> {
    let thick = record.made_box().map(|made| made.spacers.on(hand));
    length(thick.filter(|thick| *thick != Length::ZERO))
}

fn length(length: Option<Length>) -> Value<'static> {
    length.map_or(Value::Nothing, Value::Length)
}

fn quantity(quantity: Option<f64>) -> Value<'static> {
    quantity.map_or(Value::Nothing, Value::Quantity)
}

fn first([length, _]: [Sum; 2]) -> Length {
    length.total()
}

fn second([_, width]: [Sum; 2]) -> Length {
    width.total()
}

fn strength(record: &PartRecord) -> Option<Strength> {
    record.shelf()?.strength
}

fn fit(record: &PartRecord) -> Option<OverlayFit> {
    record.hanging()?.fit
}

fn cups(record: &PartRecord, from: fn(&Cup) -> Length) -> Value<'static> {
    let cups = record.hanging().map(|hanging| &hanging.cups.cups);
    cups.map_or(Value::Nothing, |cups| {
        Value::Lengths(cups.iter().map(from).collect())
    })
}

fn holes(record: &PartRecord) -> Value<'static> {
    let holes: Option<Vec<i16>> = None
        .or(record.hanging().map(|hanging| hanging.holes.clone()))
        .or(record.made_box().map(|made| [made.hole].into()))
        .or(record.shelf().map(|shelf| [shelf.hole].into()));
    holes.map_or(Value::Nothing, |holes| {
        Value::Numbers(holes.into_iter().map(i64::from).collect())
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Tabled;
    use crate::fixture::{build_another, drawers, job, two_bays};
    use crate::part_records::CabinetParts;
    use alloc::string::String;
    use gablerow_core::job::{Depth, Job};

    /// What stands in a column, record by record.
    fn column(job: &Job, name: &str) -> Vec<String> {
        let columns = PartRecord::COLUMNS.iter();
        let at = columns
            .clone()
            .position(|column| column.name == name)
            .unwrap();
        let cabinets = CabinetParts::of_job(job);
        let records = cabinets.iter().flat_map(CabinetParts::records);
        let csv = crate::csv_table(&records.collect::<Vec<_>>());
        let mut reader = csv::Reader::from_reader(csv.as_bytes());
        let field = |record: csv::StringRecord| record.get(at).unwrap().into();
        reader.records().map(Result::unwrap).map(field).collect()
    }

    #[test]
    fn columns_are_named_once() {
        let columns = PartRecord::COLUMNS;
        let mut names: Vec<&str> = columns.iter().map(|column| column.name).collect();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), columns.len());
    }

    #[test]
    fn every_record_has_a_kind_and_says_what_it_is() {
        let job = drawers();
        let kinds = column(&job, "kind");
        assert!(
            PartRecord::KINDS
                .iter()
                .all(|kind| *kind == "missing" || kinds.iter().any(|found| found == kind)),
            "{kinds:?}"
        );
        assert!(column(&job, "part").iter().all(|part| !part.is_empty()));
    }

    #[test]
    fn mirrored_copies_are_counted_apart() {
        let mut job = two_bays(Depth::Shop);
        build_another(&mut job, true);
        // Left side, partition, right side, bottom, two stretchers, back.
        assert_eq!(column(&job, "count"), ["2"; 7]);
        assert_eq!(column(&job, "mirrored"), ["1"; 7]);
        assert_eq!(column(&job, "part")[1], "partition 1");
    }

    #[test]
    fn empty_cabinet_has_panels_alone() {
        assert_eq!(
            column(&job(), "part"),
            [
                "left side",
                "right side",
                "bottom",
                "front stretcher",
                "back stretcher",
                "back"
            ]
        );
    }
}
