//! The one table of rules: the check that looks for it, name, level, what it is about.

use alloc::vec::Vec;

use super::context::Context;
use super::{
    Finding, Level, as_cut, at_bench, balance, boxes, carried, depth, doors, exposed, fixed,
    fronts, hinges, house, idle, inset, joint, keep_outs, miscounted, near, open_points, opposed,
    outline, rails, record, rise, runners, sag, share, shelves, zones,
};

/// Looks at one cabinet and adds what it finds.
pub(super) type Check = fn(&Context, &mut Vec<Finding>);

/// What is known of a rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RuleInfo {
    /// The rule.
    pub rule: Rule,
    /// Its name: small letters and hyphens. Acceptances keep it, so it never changes.
    pub name: &'static str,
    /// The level of its findings.
    pub level: Level,
    /// What it is about, in one sentence.
    pub help: &'static str,
}

/// A check, and the rules it looks for: `check { Rule "name" Level "help"; }`.
macro_rules! rules {
    ($($check:path { $($rule:ident $name:literal $level:ident $help:literal;)+ })+) => {
        /// A rule; its line is in [`RULES`].
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Rule {
            $($(#[doc = $help] $rule,)+)+
        }

        /// Every rule, in the order they are tested.
        pub const RULES: &[RuleInfo] = &[
            $($(RuleInfo { rule: Rule::$rule, name: $name, level: Level::$level, help: $help },)+)+
        ];

        /// Every check, in the order of [`RULES`], with the rules it looks for and nobody else does.
        pub(super) const CHECKS: &[(Check, &[Rule])] = &[
            $(($check, &[$(Rule::$rule),+]),)+
        ];
    };
}

rules! {
    outline::hole_off_panel {
        HoleOffPanel "hole-off-panel" Stop
            "A hole must lie on its panel, at a number the grid has.";
    }
    outline::hole_near_edge {
        HoleNearEdge "hole-near-edge" Stop
            "A hole's centre keeps its least distance to the ends and to the long edges of the panel.";
    }
    outline::toe_notch_eats_row {
        ToeNotchEatsRow "toe-notch-eats-row" Stop
            "A toe notch is outline too: a hole's centre keeps its least distance to it.";
    }
    outline::back_row_in_groove {
        BackRowInGroove "back-row-in-groove" Stop
            "A hole's centre keeps its least distance to the groove or rabbet of the back.";
    }
    joint::hole_in_joint {
        HoleInJoint "hole-in-joint" Warn
            "A hole should not open into the end of a bottom, a top, a stretcher or a fixed shelf.";
    }
    share::shared_holes {
        PlateOnPinHole "plate-on-pin-hole" Stop
            "A hinge plate and a shelf pin cannot share a hole.";
        PinAndRunnerShare "pin-and-runner-share" Stop
            "A shelf pin and a drawer runner cannot share a hole.";
        SharedHole "shared-hole" Stop
            "One hole of one face serves one fitting; only pins of one bay share.";
    }
    near::near_miss_rows {
        NearMissRows "near-miss-rows" Stop
            "Two holes of one face are either one hole or far enough apart.";
    }
    depth::depth_short_for_screw {
        DepthShortForScrew "depth-short-for-screw" Stop
            "A blind hole is deeper than the fastener that goes in.";
    }
    depth::depth_breaks_through {
        DepthBreaksThrough "depth-breaks-through" Stop
            "A blind hole leaves enough board under it for the bit it is bored with.";
    }
    opposed::opposed_holes_meet {
        OpposedHolesMeet "opposed-holes-meet" Stop
            "Blind holes bored from both faces at one place leave a web between them.";
    }
    opposed::opposed_fasteners_meet {
        OpposedFastenersMeet "opposed-fasteners-meet" Stop
            "Fasteners driven from both faces at one place do not reach each other.";
        OpposedPlates "opposed-plates" Stop
            "Hinge plates on the two faces of a partition share no hole that their screws meet in.";
    }
    opposed::through_into_free_bay {
        ThroughIntoFreeBay "through-into-free-bay" Warn
            "A through hole that only one face asks for is seen in the bay behind.";
    }
    exposed::bored_on_show_face {
        BoredOnShowFace "bored-on-show-face" Stop
            "The outside of an exposed side has no hole.";
    }
    exposed::exposed_end {
        ExposedEnd "exposed-end" Stop
            "Holes behind the outside of an exposed side are blind and leave 3 mm of board.";
    }
    keep_outs::keep_outs {
        PlateOnFixedPanel "plate-on-fixed-panel" Stop
            "A hinge needs its space free of bottom, top, stretcher and fixed shelf.";
        ShelfAtHinge "shelf-at-hinge" Warn
            "A loose shelf should clear the plate and arm of a hinge.";
        InnerDrawerFouls "inner-drawer-fouls" Stop
            "A drawer, its runners and what packs them out keep clear of hinges and open doors on their wall.";
        KeepOutsMeet "keep-outs-meet" Stop
            "No two fittings need the same space.";
        KeepOutsClose "keep-outs-close" Note
            "Two fittings leave little room between them.";
    }
    balance::unbalanced {
        Unbalanced "unbalanced" Note
            "Holes counted from foot and head fall in different places, so every row must be bored from the foot.";
    }
    balance::unbalanced_turned {
        UnbalancedTurned "unbalanced-turned" Stop
            "Rows that rest on different ends need a panel whose ends agree.";
    }
    balance::height_multiple_only {
        HeightMultipleOnly "height-multiple-only" Stop
            "A height of whole pitches is balanced only with offsets that suit it.";
    }
    zones::zone_off_centre {
        ZoneOffCentre "zone-off-centre" Note
            "A zone counted from the middle sits in the middle only when both counts are odd or both even.";
    }
    runners::runner_too_long {
        RunnerTooLong "runner-too-long" Stop
            "A runner fits between the fronts and the back panel.";
    }
    boxes::box_behind_blocked {
        BoxBehindBlocked "box-behind-blocked" Stop
            "A runner fits before what stands at the back, at the height of its box.";
    }
    runners::runner_row_flush {
        RunnerRowFlush "runner-row-flush" Warn
            "A runner stands back from the front edge, or the front does not pull up tight.";
    }
    runners::runner_rows_whole {
        RunnerRowsWhole "runner-rows-whole" Note
            "Runners need single holes, and no whole rows.";
    }
    boxes::runner_overloaded {
        RunnerOverloaded "runner-overloaded" Warn
            "A drawer, its front and its contents weigh at most 80 % of what its runners carry.";
    }
    boxes::box_width {
        BoxWidth "box-width" Stop
            "A drawer box has a width between its runners, and sides that fit them.";
    }
    boxes::top_box_blocked {
        TopBoxBlocked "top-box-blocked" Stop
            "There is room for a drawer box between its runners and what is above it.";
    }
    boxes::bottom_box_low {
        BottomBoxLow "bottom-box-low" Warn
            "The lowest drawer box stands clear of the floor under it.";
    }
    boxes::stretcher_in_box {
        StretcherInBox "stretcher-in-box" Warn
            "A stretcher on edge takes height from the drawer under it that a flat one leaves.";
    }
    open_points::open_points {
        NotYet "not-yet" Note
            "The job keeps it, but it is not laid out yet.";
        WidthsDoNotAddUp "widths-do-not-add-up" Stop
            "The parts of an opening and its partitions fill it exactly.";
        HeightsDoNotAddUp "heights-do-not-add-up" Warn
            "The fronts of an opening and their gaps fill its height exactly.";
        NoSpace "no-space" Stop
            "An opening has a width and a height.";
        NoCard "no-card" Stop
            "Every card that is named exists.";
    }
    open_points::sides_end_on_bottom {
        SidesEndOnBottom "sides-end-on-bottom" Warn
            "Sides do not run below a bottom that lies under them.";
    }
    fixed::shelf_through_board {
        ShelfThroughBoard "shelf-through-board" Stop
            "A fixed shelf runs into no other board, nor past the walls it stands between.";
    }
    carried::cup_off_door {
        CupOffDoor "cup-off-door" Stop
            "A hinge cup lies on its door, whole.";
    }
    fronts::front_not_carried {
        FrontNotCarried "front-not-carried" Note
            "A door hangs on two hinge plates at least, and a drawer runs on a pair of runners.";
    }
    rise::runner_line_ignored {
        RunnerLineIgnored "runner-line-ignored" Stop
            "The hole of a runner is its line above the box, not at the lower edge of the front.";
    }
    rise::box_off_front {
        BoxOffFront "box-off-front" Warn
            "A drawer's box stands as far above the foot of its front as the shop has it.";
    }
    rise::fronts_off_grid {
        FrontsOffGrid "fronts-off-grid" Note
            "The boxes of a stack of drawers stand alike behind their fronts: one drilling for all.";
    }
    hinges::overlay_unreachable {
        OverlayUnreachable "overlay-unreachable" Stop
            "A tab and a plate of the hinge's card bring the door where it shall lap, but for what it adjusts.";
        HalfOverlayArm "half-overlay-arm" Stop
            "The arm of a door that shares the edge of a partition lets it lap over no more than its half.";
    }
    hinges::inset_on_overlay_row {
        InsetOnOverlayRow "inset-on-overlay-row" Stop
            "The front row stands where the door asks for it: behind a door that stands inside, else at the front.";
    }
    hinges::reveal_too_small {
        RevealTooSmall "reveal-too-small" Warn
            "The hinge edge of a door has as much beside it as it needs to swing past.";
    }
    hinges::hinges_too_few {
        HingesTooFew "hinges-too-few" Warn
            "A door hangs on as many hinges as the chart of its card asks for.";
    }
    hinges::hinges_too_close {
        HingesTooClose "hinges-too-close" Warn
            "The first and the last hinge of a door are 0.8 of its width apart, or more.";
    }
    doors::door_handed {
        DoorHanded "door-handed" Note
            "A door whose cups stand alike from foot and head fits either way up.";
    }
    doors::door_side_change {
        DoorSideChange "door-side-change" Note
            "A door that could hang on either hand needs its plate holes in both walls.";
    }
    house::inset_overlay_mixed {
        InsetOverlayMixed "inset-overlay-mixed" Warn
            "The front rows of a job stand at one setback, that of its first cabinet with hinges or pins.";
    }
    house::partition_nominal_thickness {
        PartitionNominalThickness "partition-nominal-thickness" Warn
            "The board a partition stands on is measured: its thickness moves every hole of the partition.";
    }
    house::units_mixed {
        UnitsMixed "units-mixed" Warn
            "The lengths of a runner card are whole inches or whole tens of mm, not some of either.";
    }
    idle::idle_hardware {
        IdleHardware "idle-hardware" Warn
            "A hinge plate carries a door, and a pair of runners a drawer.";
    }
    fronts::front_too_small {
        FrontTooSmall "front-too-small" Warn
            "A front has a size, and a door is wider than its hinge reaches.";
    }
    inset::inset_before_edge {
        InsetBeforeEdge "inset-before-edge" Warn
            "A front that stands inside an opening has the edges around it beside it, not behind it.";
    }
    fronts::front_behind_front {
        FrontBehindFront "front-behind-front" Warn
            "No front that is seen stands behind another one.";
    }
    fronts::drawer_over_bays {
        DrawerOverBays "drawer-over-bays" Warn
            "A drawer is in one bay: its box runs between two walls.";
    }
    fronts::inner_without_door {
        InnerWithoutDoor "inner-without-door" Note
            "A drawer behind a door has a door to stand behind.";
    }
    sag::shelf_sags {
        ShelfSags "shelf-sags" Warn
            "A loose shelf sags at most L/200 of its length after years, and at most 3 mm.";
    }
    shelves::shelf_tips {
        ShelfTips "shelf-tips" Warn
            "A loose shelf bears 20 kg on its front edge before it tips.";
    }
    shelves::shelf_length {
        ShelfLength "shelf-length" Warn
            "A loose shelf is 2 mm shorter than its bay, and rests 4 mm on its far pins when pushed to one side.";
    }
    shelves::clear_opening_short {
        ClearOpeningShort "clear-opening-short" Warn
            "As much is clear over a loose shelf as was asked for.";
    }
    shelves::no_lift_room {
        NoLiftRoom "no-lift-room" Note
            "A loose shelf has 25 mm over it to be lifted in, and so has one on the highest hole of a zone.";
    }
    as_cut::as_cut_length {
        AsCutLength "as-cut-length" Stop
            "A panel is at most 1 mm longer or shorter than planned; that much is made up for at the bench.";
    }
    as_cut::pair_lengths_differ {
        PairLengthsDiffer "pair-lengths-differ" Warn
            "The two sides of a copy are cut alike, within 0.5 mm.";
    }
    as_cut::as_cut_thickness {
        AsCutThickness "as-cut-thickness" Warn
            "A panel is as thick as its board's card says, within 0.3 mm.";
    }
    as_cut::foot_end_not_square {
        FootEndNotSquare "foot-end-not-square" Warn
            "Rows of one panel stand level: its ends are square enough for 0.5 mm.";
    }
    as_cut::shelf_rocks {
        ShelfRocks "shelf-rocks" Warn
            "A shelf rocks at most 0.5 mm, whatever the saw did and whichever end its rows rest on.";
        ShelfRocksMuch "shelf-rocks-much" Stop
            "A shelf that would rock by more than 1 mm is not bored so: all from the foot, or its panels are cut again.";
    }
    rails::rail_re_index {
        RailReIndex "rail-re-index" Warn
            "A rail covers the rows of a panel where it lies, or it is moved on, which drifts.";
    }
    rails::arm_reach {
        ArmReach "arm-reach" Warn
            "The arms of the rail reach a row from one of its edges, with panel enough under the rail.";
    }
    rails::end_stop_value {
        EndStopValue "end-stop-value" Warn
            "The stop of the rail has the offset that a panel rests on.";
    }
    at_bench::band_after_boring {
        BandAfterBoring "band-after-boring" Warn
            "Settings from a front edge that is not banded yet are smaller by the band.";
    }
    at_bench::bit_wrong_for_hole {
        BitWrongForHole "bit-wrong-for-hole" Warn
            "Blind holes are bored with a flat bit, holes right through with a pointed one.";
    }
    miscounted::miscounted_hole {
        MiscountedHole "miscounted-hole" Warn
            "No distance measured on a bored face is longer or shorter than it should be by whole holes.";
    }
    miscounted::measured_off {
        MeasuredOff "measured-off" Warn
            "No distance measured on a bored face is otherwise off by more than 1.0 mm.";
    }
    record::sheet_out_of_date {
        SheetOutOfDate "sheet-out-of-date" Warn
            "What was bored is still wanted: nothing changed since the sheet that is in use.";
    }
    record::back_type_changed {
        BackTypeChanged "back-type-changed" Warn
            "Back rows that were bored still stand where the back wants them.";
    }
    at_bench::depth_zero_unproved {
        DepthZeroUnproved "depth-zero-unproved" Warn
            "The test hole is as deep as blind holes shall be, within 0.3 mm.";
    }
    at_bench::base_off_centre {
        BaseOffCentre "base-off-centre" Warn
            "The bit is in the middle of the router's base, within 0.1 mm, or rows lie one way round.";
    }
    at_bench::gauge_by_eye {
        GaugeByEye "gauge-by-eye" Note
            "Rows of plates and runners are set to a stop, not to a pencil line.";
    }
    at_bench::changeovers_scattered {
        ChangeoversScattered "changeovers-scattered" Note
            "The order of work takes no longer than the best that was found.";
    }
}

impl Rule {
    /// Whether it is about holes that meet through the panel, and so about both of its faces.
    #[must_use]
    pub fn is_back_to_back(self) -> bool {
        matches!(
            self,
            Self::OpposedHolesMeet | Self::OpposedFastenersMeet | Self::OpposedPlates
        )
    }

    /// Its line in [`RULES`].
    #[must_use]
    pub fn info(self) -> &'static RuleInfo {
        // The table and the enum are made from one list, in one order.
        &RULES[self as usize]
    }

    /// The rule of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        RULES
            .iter()
            .find(|info| info.name == name)
            .map(|info| info.rule)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_rule_leads_to_its_own_line_and_back() {
        for info in RULES {
            assert_eq!(info.rule.info(), info);
            assert_eq!(Rule::named(info.name), Some(info.rule));
        }
        assert_eq!(Rule::named("no-such-rule"), None);
    }

    #[test]
    fn names_and_sentences_are_unique() {
        let names: BTreeSet<_> = RULES.iter().map(|info| info.name).collect();
        let helps: BTreeSet<_> = RULES.iter().map(|info| info.help).collect();
        assert_eq!((names.len(), helps.len()), (RULES.len(), RULES.len()));
    }

    #[test]
    fn names_are_small_letters_and_hyphens_and_sentences_end() {
        for info in RULES {
            let plain = |c: char| c.is_ascii_lowercase() || c == '-';
            assert!(info.name.chars().all(plain), "{}", info.name);
            assert!(
                info.help.ends_with('.') && info.help.len() <= 110,
                "{}",
                info.help
            );
        }
    }
}
