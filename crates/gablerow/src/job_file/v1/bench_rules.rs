//! Twins of how a shop works at the bench.

use gablerow_core::job;

use super::measure::Mm;
use super::twin::{plain, record, words};

record! {
    /// How a shop works at the bench.
    BenchRules = job::BenchRules {
        /// What each thing takes, in seconds.
        times: Times,
        /// What comes first.
        order: WorkOrder,
        /// What a setting is held by.
        gauge: Gauge,
        /// How deep the test hole came out, in mm; left out until it was bored.
        #[serde(default, skip_serializing_if = "plain")]
        test_depth: Option<Mm>,
        /// How far the bit is off the middle of the router's base, along the rail, in mm; left out until it was tried.
        #[serde(default, skip_serializing_if = "plain")]
        base_off: Option<Mm>,
    }
}

record! {
    /// What each thing takes, in seconds.
    Times = job::Times {
        /// A change of the bit.
        bit: u32,
        /// A change of the depth.
        depth: u32,
        /// A change of the stop.
        stop: u32,
        /// A change of the setting.
        setting: u32,
        /// A panel lifted on the bench, or turned over.
        load: u32,
        /// The rail laid on the panel.
        placement: u32,
        /// A hole.
        hole: u32,
    }
}

words! {
    /// What is worked through first.
    WorkOrder = job::WorkOrder {
        /// Whatever takes least time.
        Least = "least time",
        /// A panel, all of its settings.
        PanelFirst = "panel first",
        /// A setting, all of its panels.
        SettingFirst = "setting first",
    }
}

words! {
    /// What a setting is held by.
    Gauge = job::Gauge {
        /// A stop on the arms, or a block.
        Stop = "stop",
        /// A pencil line, by eye.
        Eye = "eye",
    }
}
