//! A cabinet from the front on lines and columns.

use gablerow_core::job::{Division, HolePlace};
use gablerow_core::job::{
    Front, FrontHeight, FrontKind, Inset, Job, Label, PanelId, Shelf, TopKind,
};
use gablerow_core::layout::Layout;
use proptest::prelude::*;
use unicode_width::UnicodeWidthChar;

use super::*;
use crate::FrontSigns;
use crate::fixture::{job, mm, two_bays};

fn front(key: u32, kind: FrontKind, height: FrontHeight) -> Front {
    Front {
        height,
        ..Front::plain(Key(key), Label::new("D1").unwrap(), kind)
    }
}

fn elevation(job: &Job) -> (Elevation, Length) {
    let layout = Layout::of(&job.cabinets[0], job);
    (Elevation::of(&job.cabinets[0], &layout), layout.grid.first)
}

fn projected(job: &Job, room: (u16, u16)) -> Projection {
    let (elevation, first) = elevation(job);
    Projection::of(&elevation, first, room)
}

/// The drawing as text, from the head down.
fn text(projection: &Projection) -> Vec<String> {
    let sign = |cell: &Cell| FrontSigns::ASCII.of_cell(*cell);
    (0..projection.lines)
        .rev()
        .map(|line| projection.line(line).iter().map(sign).collect())
        .collect()
}

/// Doors and drawers over the two bays of the fixture, with a shelf in the left one.
fn fronts() -> Job {
    let mut job = two_bays(gablerow_core::job::Depth::Shop);
    let cabinet = &mut job.cabinets[0];
    cabinet.carcass.top.kind = TopKind::FlatStretchers(mm(100));
    let door = front(40, FrontKind::Door(Hand::Left), FrontHeight::Ratio(1));
    let drawers = [8, 7, 7].map(|modules| {
        let key = 33 + u32::from(modules);
        front(key, FrontKind::Drawer, FrontHeight::Modules(modules))
    });
    let mut fronts = [vec![door], drawers.into()].into_iter();
    cabinet.opening.each_mut(&mut |opening| {
        if let Division::Bay(bay) = &mut opening.division {
            opening.fronts = fronts.next().unwrap();
            if opening.key == Key(10) {
                bay.shelves.push(Shelf {
                    key: Key(20),
                    hole: HolePlace::foot(9),
                    board: job.shop.board.clone(),
                    setback_front: mm(12),
                    shorter: mm(2),
                    load_grams: None,
                    clear: None,
                });
            }
        }
    });
    job
}

#[test]
fn a_cabinet_of_600_by_704_is_22_lines_of_37_columns() {
    let projection = projected(&job(), (60, 30));
    assert_eq!((projection.lines, projection.columns), (22, 37));
    assert_eq!((projection.ratio, projection.lowest), (1, 1));
    assert_eq!(projection.hole(21), 22);
}

#[test]
fn what_does_not_fit_is_drawn_at_the_next_whole_ratio_in_its_true_shape() {
    let projection = projected(&job(), (36, 30));
    assert_eq!((projection.lines, projection.columns), (11, 19));
    assert_eq!((projection.ratio, projection.column()), (2, mm(32)));
    assert_eq!((projection.hole(0), projection.hole(10)), (1, 21));
    // 704 is 7 lines of 96 and a third of one.
    assert_eq!(projected(&job(), (60, 7)).ratio, 3);
}

#[test]
fn a_door_shows_its_hand_and_what_is_behind_it() {
    let text = text(&projected(&fronts(), (60, 30)));
    // Hung on the left: a heavy edge there, a grip at the other, hole 9 is line 9 from the foot.
    assert_eq!(text[22 - 9], "# - - - - - - - - ||________________|");
    assert_eq!(text[22 - 12], "#                ]||                |");
    assert_eq!(text[22 - 1], "#_________________||________________|");
}

#[test]
fn drawers_of_8_7_and_7_modules_end_on_lines_of_the_grid() {
    let text = text(&projected(&fronts(), (60, 30)));
    let gaps: Vec<usize> = (1..=22)
        .filter(|line| text[22 - line].ends_with("________________|"))
        .collect();
    assert_eq!(gaps, [1, 9, 16]);
}

#[test]
fn fronts_with_a_gap_less_than_half_a_line_touch() {
    let projection = projected(&fronts(), (30, 30));
    assert_eq!(projection.ratio, 2);
    let is_drawer =
        |area: &&Area| matches!(area.what, What::Front(leaf) if leaf.look == Look::Drawer);
    let drawers: Vec<Cells> = projection
        .areas
        .iter()
        .filter(is_drawer)
        .map(|area| area.lines)
        .collect();
    let touch = drawers.windows(2).all(|pair| pair[0].to == pair[1].from);
    assert!(touch, "{drawers:?}");
    assert_eq!(drawers.last().map(|cells| cells.to), Some(projection.lines));
}

#[test]
fn a_front_that_stands_inside_leaves_the_edges_of_the_boards_free() {
    let mut job = job();
    let opening = &mut job.cabinets[0].opening;
    opening.fronts = vec![front(
        40,
        FrontKind::Door(Hand::Right),
        FrontHeight::Ratio(1),
    )];
    if let Division::Bay(bay) = &mut opening.division {
        bay.inset = Some(Inset::default());
    }
    let text = text(&projected(&job, (60, 30)));
    assert!(text[22 - 5].starts_with("#|"), "{}", text[22 - 5]);
    assert!(text[22 - 5].ends_with("##"), "{}", text[22 - 5]);
    assert_eq!(text[22 - 1], format!("#{}#", "#".repeat(35)));
}

#[test]
fn a_front_that_does_not_open_is_hatched() {
    let mut job = job();
    job.cabinets[0].opening.fronts = vec![front(40, FrontKind::False, FrontHeight::Ratio(1))];
    let text = text(&projected(&job, (60, 30)));
    assert!(text[5].contains("\\ \\ \\ \\"), "{}", text[5]);
}

#[test]
fn a_drawer_behind_a_door_is_dotted() {
    let mut job = job();
    job.cabinets[0].opening.fronts = vec![
        front(40, FrontKind::Door(Hand::Left), FrontHeight::Ratio(1)),
        front(41, FrontKind::Inner, FrontHeight::Modules(7)),
    ];
    let text = text(&projected(&job, (60, 30)));
    assert!(text[22 - 4].starts_with("#."), "{}", text[22 - 4]);
    assert!(text[22 - 8].contains(". . . ."), "{}", text[22 - 8]);
}

/// What of a cell shows that an area is there.
fn shows(cell: Cell, what: What) -> bool {
    match what {
        What::Front(_) => cell.ground == Ground::Front,
        _ => cell.ground != Ground::Outside,
    }
}

/// A span of the cabinets there are, now and then one turned round.
fn span() -> impl Strategy<Value = Span> {
    (-200_000..5_000_000_i32, -20_000..4_000_000_i32)
        .prop_map(|(from, long)| Span::new(Length::from_um(from), Length::from_um(from + long)))
}

fn any_what() -> impl Strategy<Value = What> {
    let hand = prop::sample::select(vec![Hand::Left, Hand::Right]);
    (0..10_u8, 0..3_u32, hand).prop_map(|(kind, key, hand)| {
        let (opening, key) = (Key(9), Key(key));
        let leaf = |look| What::Front(Leaf { key, opening, look });
        match kind {
            0 => What::Bay(key),
            1 => What::Panel(Item::FixedShelf, Some(key)),
            2 => What::Panel(Item::BackRail, None),
            3 => What::Upright(PanelId::Partition(key)),
            4 => What::Shelf(key),
            5 => What::Behind(key),
            6 => leaf(Look::Hung(hand)),
            7 => leaf(Look::False),
            8 => What::Box(key),
            _ => What::Plate(key, hand),
        }
    })
}

prop_compose! {
    fn any_elevation()(
        shapes in prop::collection::vec((any_what(), span(), span()), 0..12)
    ) -> Elevation {
        let shapes = shapes.into_iter().map(|(what, across, z)| Shape { what, across, z });
        let shapes: Vec<Shape> = shapes.collect();
        let one = Span::new(Length::ZERO, mm(600));
        let whole = |of: fn(&Shape) -> Span| shapes.iter().map(of).fold(one, Span::with);
        Elevation { across: whole(|shape| shape.across), z: whole(|shape| shape.z), shapes }
    }
}

proptest! {
    #[test]
    fn whatever_there_is_fits_the_room_and_fills_its_lines(
        elevation in any_elevation(), first in 0..40, room in (0..200_u16, 0..80_u16)
    ) {
        let projection = Projection::of(&elevation, mm(first), room);
        prop_assert!(projection.columns <= room.0.max(1));
        prop_assert!(projection.lines <= room.1.max(1));
        for line in 0..projection.lines {
            prop_assert_eq!(projection.line(line).len(), usize::from(projection.columns));
        }
        for area in &projection.areas {
            prop_assert!(area.columns.from < area.columns.to && area.columns.to <= projection.columns);
            prop_assert!(area.lines.from < area.lines.to && area.lines.to <= projection.lines);
        }
    }

    #[test]
    fn every_upright_and_front_is_seen_alone_in_its_middle(
        what in any_what().prop_filter("solid", |what| matches!(what, What::Upright(_) | What::Front(_))),
        across in span().prop_filter("long", |across| across.to > across.from),
        z in span().prop_filter("high", |z| z.to > z.from),
        room in (1..200_u16, 1..80_u16)
    ) {
        let shape = Shape { what, across, z };
        let projection = Projection::of(&Elevation { across, z, shapes: vec![shape] }, mm(16), room);
        let area = projection.areas[0];
        let cells = projection.line(area.lines.middle());
        prop_assert!(shows(cells[usize::from(area.columns.middle())], what));
    }
}

#[test]
fn every_upright_and_front_of_a_cabinet_is_seen_at_any_size() {
    let (elevation, first) = elevation(&fronts());
    for room in (8..70).flat_map(|columns| (4..30).map(move |lines| (columns, lines))) {
        let projection = Projection::of(&elevation, first, room);
        let solid = |area: &&Area| matches!(area.what, What::Front(_));
        for area in projection.areas.iter().filter(solid) {
            let cells = projection.line(area.lines.middle());
            let middle = cells[usize::from(area.columns.middle())];
            assert_eq!(middle.ground, Ground::Front, "{area:?} in {room:?}");
        }
        // Both fronts end over the partition, so that its line is the line between them.
        let partition = projection
            .areas
            .iter()
            .find(|area| matches!(area.what, What::Upright(PanelId::Partition(_))))
            .unwrap();
        let cells = projection.line(projection.lines / 2);
        let near = partition.columns.from.saturating_sub(1)..=partition.columns.to;
        let edges = near.filter(|&at| {
            let ink = cells[usize::from(at)].ink;
            matches!(ink, Ink::Edge | Ink::HungEdge | Ink::Upright)
        });
        assert!(edges.count() > 0, "{room:?}");
    }
}

#[test]
fn all_signs_are_one_column_wide_and_differ() {
    for signs in [FrontSigns::UNICODE, FrontSigns::ASCII] {
        // Taken apart by name, so that a new sign does not compile until it stands here too.
        let FrontSigns {
            upright,
            panel,
            shelf,
            edge,
            gap,
            hatch,
            dots,
            grips: [grip_left, grip_right],
            corners: [corner_left, corner_right],
            plate,
            runner,
        } = signs;
        let mut all = vec![
            upright,
            shelf,
            edge,
            gap,
            hatch,
            dots,
            grip_left,
            grip_right,
            corner_left,
            plate,
            runner,
        ];
        // ASCII has one sign for all edges of boards, and one for both corners.
        let ascii = upright.is_ascii();
        if !ascii {
            all.extend([panel, corner_right]);
        }
        for sign in &all {
            assert_eq!(sign.width(), Some(1), "{sign}");
            assert!(!ascii || sign.is_ascii_graphic(), "{sign}");
        }
        let count = all.len();
        all.sort_unstable();
        all.dedup();
        assert_eq!(all.len(), count, "{signs:?}");
    }
}
