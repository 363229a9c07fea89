//! How a shop works at the bench, and what it measured there before it bored.

use crate::measure::Length;

/// How a shop works at the bench.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct BenchRules {
    /// What each thing takes.
    pub times: Times,
    /// What comes first.
    pub order: WorkOrder,
    /// What a setting is held by.
    pub gauge: Gauge,
    /// How deep the test hole came out that shall be as deep as blind holes are; `None` until it was bored.
    pub test_depth: Option<Length>,
    /// How far the bit is off the middle of the router's base, along the rail; `None` until it was tried.
    pub base_off: Option<Length>,
}

/// What each thing takes, in seconds; house figures, every one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Times {
    /// A change of the bit.
    pub bit: u32,
    /// A change of the depth.
    pub depth: u32,
    /// A change of the stop.
    pub stop: u32,
    /// A change of the setting.
    pub setting: u32,
    /// A panel lifted on the bench, or turned over.
    pub load: u32,
    /// The rail laid on the panel.
    pub placement: u32,
    /// A hole.
    pub hole: u32,
}

impl Default for Times {
    fn default() -> Self {
        Self {
            bit: 180,
            depth: 45,
            stop: 60,
            setting: 30,
            load: 40,
            placement: 25,
            hole: 4,
        }
    }
}

/// What is worked through first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum WorkOrder {
    /// Whatever takes least time.
    #[default]
    Least,
    /// A panel, all of its settings.
    PanelFirst,
    /// A setting, all of its panels.
    SettingFirst,
}

impl WorkOrder {
    /// All three, in the order a user steps through them.
    pub const ALL: [Self; 3] = [Self::Least, Self::PanelFirst, Self::SettingFirst];

    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Least => "least time",
            Self::PanelFirst => "panel by panel",
            Self::SettingFirst => "setting by setting",
        }
    }
}

/// What a setting is held by.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Gauge {
    /// A stop on the arms, or a block.
    #[default]
    Stop,
    /// A pencil line, by eye.
    Eye,
}

impl Gauge {
    /// Both, in the order a user steps through them.
    pub const ALL: [Self; 2] = [Self::Stop, Self::Eye];

    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Stop => "by a stop",
            Self::Eye => "by eye",
        }
    }
}
