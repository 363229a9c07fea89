//! Pages of the trade: heights of fronts, their gaps and reveals.

use gablerow_core::job::{
    Division, FixedShelf, FrontKind, HolePlace, Inset, Job, Joint, Key, ShelfHeight, Shop, Stacked,
};
use gablerow_core::measure::Length;

use crate::case::{Case, Disagreement, Mark, Source};
use crate::fixture::{all_boards, closed, divide, fronts, inset_reveal, job, layout, mm};

static FRONTS: Source = Source {
    author: "two shops that build by the grid",
    title: "32mm door and drawer heights",
    year: "undated",
    clause: "davelers.com/32mm/4988.html; dalrun.com/32mm/Drawers",
    mark: Mark::Pages,
};

static STACK: Source = Source {
    author: "a shelving maker",
    title: "heights of gables, drawers and doors",
    year: "undated",
    clause: "96 + 11 + 4*221 + 4*3 + 1181 + 11 = 2195",
    mark: Mark::Page,
};

static REVEALS: Source = Source {
    author: "a shop that builds by the grid",
    title: "32mm, Panels, Shared",
    year: "undated",
    clause: "dalrun.com/32mm/Panels/Shared: half overlay t/2 + gap/2, inset t + gap, railed inset face 32n - t - 2*gap",
    mark: Mark::Page,
};

static GAPS: Source = Source {
    author: "a forum of cabinetmakers",
    title: "Frameless Cabinet Door Dimensions",
    year: "undated",
    clause: "woodweb: 3 between doors, 1.5 a side; others 4; 3.2 as told of a standard of architectural woodwork, which was not read",
    mark: Mark::Page,
};

pub(crate) fn cases() -> Vec<Case> {
    let mut all = front_heights();
    all.extend(reveals());
    all
}

fn front_heights() -> Vec<Case> {
    let family = "fronts";
    let mut all = Vec::new();
    for (modules, height) in [
        (4, 125.0),
        (5, 157.0),
        (6, 189.0),
        (7, 221.0),
        (8, 253.0),
        (9, 285.0),
        (10, 317.0),
        (12, 381.0),
        (24, 765.0),
        (37, 1_181.0),
    ] {
        // One front more below it takes what is left, so that the height is that of the modules and not what remains.
        let laid = layout(&job(|job| {
            job.cabinets[0].size.height = mm(32 * (i32::from(modules) + 6));
            job.cabinets[0].opening.fronts = fronts(&[6, modules]);
        }));
        let found = laid.fronts[1].height.total();
        all.push(Case::new(
            family,
            format!("{modules} modules"),
            &FRONTS,
            height,
            found.mm(),
        ));
    }
    let laid = layout(&job(|job| {
        job.cabinets[0].size.height = mm(2_195 - 96);
        (job.shop.fronts.reveal_foot, job.shop.fronts.reveal_head) = (mm(11), mm(11));
        job.cabinets[0].opening.fronts = fronts(&[37, 7, 7, 7, 7]);
    }));
    for (name, height, at) in [
        ("door of a stack of 2195", 1_181.0, 0),
        ("its drawers", 221.0, 4),
    ] {
        let found = laid.fronts[at].height.total();
        all.push(Case::new(family, name, &STACK, height, found.mm()));
    }
    let whole = laid.fronts[4].head() + mm(11) + mm(96);
    all.push(Case::new(
        family,
        "the whole stack",
        &STACK,
        2_195.0,
        whole.mm(),
    ));
    all
}

/// Reveals of boards of 19 with gaps of 3, and an inset face between rails 7 pitches apart.
fn reveals() -> Vec<Case> {
    let family = "fronts";
    let laid = |change: &dyn Fn(&mut Job)| {
        layout(&job(|job| {
            all_boards(job, mm(19));
            (job.shop.fronts.gap, job.shop.fronts.gap_inset) = (mm(3), mm(3));
            change(job);
        }))
    };
    let inset = Some(Inset {
        front: Some(mm(19)),
        set_in: Length::ZERO,
    });
    let shared = laid(&divide);
    let half = mm(19) - shared.fronts[0].lap_right.total();
    let railed = laid(&|job| {
        let rail = |key, hole| FixedShelf {
            key: Key(key),
            board: job.shop.board.clone(),
            at: ShelfHeight::Hole(HolePlace::foot(hole)),
            recess: Length::ZERO,
            joint: Joint::default(),
        };
        let mut between = closed(80, FrontKind::False);
        if let Division::Bay(bay) = &mut between.division {
            bay.inset = inset;
        }
        job.cabinets[0].opening.division = Division::Stacked(Box::new(Stacked {
            first: closed(70, FrontKind::False),
            rest: vec![
                (rail(31, 5), between),
                (rail(32, 12), closed(90, FrontKind::False)),
            ],
        }));
    });
    let face = railed
        .fronts
        .iter()
        .find(|front| front.key == Key(81))
        .unwrap();
    let rules = Shop::starter().fronts;
    let case = |name: &str, source, printed, found: Length| {
        Case::new(family, name, source, printed, found.mm())
    };
    vec![
        case("reveal of half overlay at 19", &REVEALS, 11.0, half),
        case(
            "reveal of an inset door at 19",
            &REVEALS,
            22.0,
            inset_reveal(19),
        ),
        case(
            "inset face between rails",
            &REVEALS,
            32.0 * 7.0 - 19.0 - 2.0 * 3.0,
            face.height.total(),
        ),
        case("gap between fronts", &GAPS, 3.0, rules.gap).table(),
        case("reveal at a side", &GAPS, 1.5, rules.reveal_side).table(),
    ]
}

pub(crate) fn disagreements() -> Vec<Disagreement> {
    let gap = |printed, what| Disagreement {
        what,
        source: &GAPS,
        printed,
        computed: Shop::starter().fronts.gap.mm(),
        stated: 3.0,
        reason: "3 is what most pages print; a value of the shop",
    };
    vec![
        gap(4.0, "gap between fronts, as others have it"),
        gap(3.2, "gap between fronts, as told of a standard"),
    ]
}
