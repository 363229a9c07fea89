//! Proof of the search, against every hole and every box compared with every other.

use std::collections::BTreeSet;

use proptest::prelude::*;

use super::*;

fn mm(mm: i32) -> Length {
    Length::from_mm(mm)
}

fn span(from: i32, to: i32) -> Span {
    Span::new(mm(from), mm(to))
}

/// A row at 100 mm up, as deep as a board is thick.
fn row(x: i32, count: i32, diameter: i32) -> Holes {
    Holes {
        x: mm(x),
        low: mm(100),
        count,
        diameter: mm(diameter),
        u: span(0, 18),
    }
}

fn space(x: (i32, i32), z: (i32, i32)) -> Space {
    Space {
        x: span(x.0, x.1),
        z: span(z.0, z.1),
        u: span(0, 18),
    }
}

/// One thing of a face: a hole by its row and number, or a box.
type Thing = (Option<i32>, usize);

/// Every two things that a search finds; it fails when one is found twice.
fn found(holes: &[Holes], spaces: &[Space]) -> BTreeSet<(Thing, Thing)> {
    let mut pairs = BTreeSet::new();
    Search::default().each(holes, spaces, |meeting| {
        let all: Vec<(Thing, Thing)> = match meeting {
            Meeting::Holes {
                one,
                other,
                first,
                last,
                shift,
            } => {
                assert!(one < other || one == other && shift > 0);
                (first..=last)
                    .map(|at| ((Some(at), one), (Some(at + shift), other)))
                    .collect()
            }
            Meeting::HolesAndSpace {
                holes,
                space,
                first,
                last,
            } => (first..=last)
                .map(|at| ((Some(at), holes), (None, space)))
                .collect(),
            Meeting::Spaces { one, other } => {
                assert!(one < other);
                vec![((None, one), (None, other))]
            }
        };
        assert!(!all.is_empty());
        for pair in all {
            assert!(pairs.insert(pair), "{pair:?} twice");
        }
    });
    pairs
}

/// The same, by comparing all with all, in wide numbers.
fn compared(holes: &[Holes], spaces: &[Space]) -> BTreeSet<(Thing, Thing)> {
    let wide = |length: Length| i128::from(length.counts());
    let takes_same = |a: Span, b: Span| wide(a.from).max(wide(b.from)) < wide(a.to).min(wide(b.to));
    let numbered = |row: &Holes| (0..row.count).collect::<Vec<_>>();
    let centre = |row: &Holes, at: i32| (wide(row.x), wide(row.low) + 256_000 * i128::from(at));
    let mut pairs = BTreeSet::new();
    for (a, one) in holes.iter().enumerate() {
        for i in numbered(one) {
            let (x, z) = centre(one, i);
            for (b, other) in holes.iter().enumerate() {
                for j in numbered(other) {
                    let (x, z) = (x - centre(other, j).0, z - centre(other, j).1);
                    let sum = wide(one.diameter) + wide(other.diameter);
                    if (a, i) < (b, j)
                        && 4 * (x * x + z * z) < sum * sum
                        && takes_same(one.u, other.u)
                    {
                        pairs.insert(((Some(i), a), (Some(j), b)));
                    }
                }
            }
            for (b, space) in spaces.iter().enumerate() {
                let near = |at: i128, span: Span| at.clamp(wide(span.from), wide(span.to)) - at;
                let (x, z) = (near(x, space.x), near(z, space.z));
                if 4 * (x * x + z * z) < wide(one.diameter).pow(2) && takes_same(one.u, space.u) {
                    pairs.insert(((Some(i), a), (None, b)));
                }
            }
        }
    }
    for (a, one) in spaces.iter().enumerate() {
        for (b, other) in spaces.iter().enumerate().skip(a + 1) {
            let all = [(one.x, other.x), (one.z, other.z), (one.u, other.u)];
            if all.iter().all(|&(a, b)| takes_same(a, b)) {
                pairs.insert(((None, a), (None, b)));
            }
        }
    }
    pairs
}

#[test]
fn what_touches_does_not_meet() {
    let aside = |x| [row(37, 5, 5), row(37 + x, 5, 5)];
    assert_eq!(found(&aside(5), &[]).len(), 0);
    assert_eq!(found(&aside(4), &[]).len(), 5);
    // 3, 4, 5: a hole 3 aside and 4 above is 5 away.
    let slanted = |low| {
        [
            row(37, 5, 5),
            Holes {
                low: mm(low),
                ..row(40, 5, 5)
            },
        ]
    };
    assert_eq!(found(&slanted(104), &[]).len(), 0);
    assert_eq!(found(&slanted(103), &[]).len(), 5);
    let boxes = |x| [space((0, 50), (0, 90)), space((x, 90), (0, 90))];
    assert_eq!(found(&[], &boxes(50)).len(), 0);
    assert_eq!(found(&[], &boxes(49)).len(), 1);
    // The lowest hole reaches from 97.5 to 102.5.
    let below = |to| {
        [Space {
            z: Span::new(mm(0), Length::from_um(to)),
            ..space((0, 50), (0, 0))
        }]
    };
    assert_eq!(found(&[row(37, 5, 5)], &below(97_500)).len(), 0);
    assert_eq!(found(&[row(37, 5, 5)], &below(97_501)).len(), 1);
}

#[test]
fn row_of_holes_wider_than_the_pitch_meets_itself() {
    assert_eq!(found(&[row(37, 5, 32)], &[]).len(), 0);
    assert_eq!(found(&[row(37, 5, 33)], &[]).len(), 4);
    assert_eq!(found(&[row(37, 5, 65)], &[]).len(), 4 + 3);
    assert_eq!(found(&[row(37, 3, 65)], &[]).len(), 2 + 1);
}

#[test]
fn what_lies_at_other_depths_does_not_meet() {
    let deep = |from, to| {
        [
            row(37, 5, 5),
            Holes {
                u: span(from, to),
                ..row(37, 5, 5)
            },
        ]
    };
    assert_eq!(found(&deep(18, 20), &[]).len(), 0);
    assert_eq!(found(&deep(17, 20), &[]).len(), 5);
    assert_eq!(found(&deep(9, 9), &[]).len(), 0);
}

#[test]
fn empty_box_meets_a_hole_and_no_box() {
    let line = space((37, 37), (0, 200));
    assert_eq!(found(&[row(37, 5, 5)], &[line]).len(), 4);
    assert_eq!(found(&[], &[line, space((0, 50), (0, 200))]).len(), 0);
}

#[test]
fn crowds_meet_as_their_things_do() {
    let rows: Vec<Holes> = (0..120)
        .map(|at| Holes {
            low: mm(7 * at),
            ..row(37, 4, 8)
        })
        .collect();
    assert_eq!(found(&rows, &[]), compared(&rows, &[]));
    let short: Vec<Holes> = (0..600)
        .map(|at| Holes {
            low: mm(9 * at),
            ..row(at % 5, 2, 8)
        })
        .collect();
    assert_eq!(found(&short, &[]), compared(&short, &[]));
    let boxes = (0..1_100).map(|at| space((at % 130, at % 130 + 70), (at, at + at % 9)));
    let boxes: Vec<Space> = boxes.collect();
    assert_eq!(found(&rows[..3], &boxes), compared(&rows[..3], &boxes));
}

#[test]
fn a_search_forgets_the_face_before() {
    let mut search = Search::default();
    let count = |search: &mut Search, holes: &[Holes], spaces: &[Space]| {
        let mut count = 0;
        search.each(holes, spaces, |_| count += 1);
        count
    };
    let (rows, boxes) = (
        [row(37, 9, 5), row(37, 2, 5)],
        [space((0, 50), (0, 900)); 2],
    );
    assert_eq!(count(&mut search, &rows, &boxes), 1 + 2 * (1 + 2) + 1);
    assert_eq!(count(&mut search, &[], &[]), 0);
    assert_eq!(count(&mut search, &rows[..1], &[]), 0);
}

/// Rows of a face: most on the grid and at a few setbacks, as they are built; some anywhere.
fn any_holes() -> impl Strategy<Value = Holes> {
    let x = prop_oneof![3 => prop::sample::select(vec![37, 42, 69, 101]).prop_map(mm), 1 => (0..600_000).prop_map(Length::from_counts)];
    let low = prop_oneof![3 => (0..20).prop_map(|at| mm(10 + 32 * at)), 1 => (0..4_000_000).prop_map(Length::from_counts)];
    let diameter =
        prop_oneof![3 => (3..40).prop_map(mm), 1 => (1..500_000).prop_map(Length::from_counts)];
    (x, low, 1..20_i32, diameter, any_depth()).prop_map(|(x, low, count, diameter, u)| Holes {
        x,
        low,
        count,
        diameter,
        u,
    })
}

fn any_space() -> impl Strategy<Value = Space> {
    let span =
        |most| (0..most, 0..200).prop_map(|(from, long): (i32, i32)| span(from, from + long));
    (span(100), span(700), any_depth()).prop_map(|(x, z, u)| Space { x, z, u })
}

fn any_depth() -> impl Strategy<Value = Span> {
    (0..18, 0..18).prop_map(|(from, deep)| span(from, from + deep))
}

proptest! {
    #[test]
    fn search_finds_what_comparing_all_with_all_finds(
        holes in prop::collection::vec(any_holes(), 0..12),
        spaces in prop::collection::vec(any_space(), 0..12),
    ) {
        prop_assert_eq!(found(&holes, &spaces), compared(&holes, &spaces));
    }

    #[test]
    fn crowd_finds_what_comparing_all_with_all_finds(
        holes in prop::collection::vec(any_holes(), 0..12),
        spaces in prop::collection::vec(any_space(), 0..12),
    ) {
        // Rows that meet nothing else, and make it a crowd.
        let far = Holes { u: span(500, 500), ..row(37, 4, 40) };
        let mut crowded = holes.clone();
        crowded.extend([far; CROWD_OF_ROWS + 1]);
        prop_assert_eq!(found(&crowded, &spaces), compared(&holes, &spaces));
    }
}
