//! What is stepped through rather than typed.

use crate::cards::{
    Across, Along, ConnectorBore, Corner, CountChart, PlateShape, RailKind, RunnerKind,
};
use crate::job::{BackRule, BandState, Bit, FrontRules, Gauge, Reference, RevealScheme, WorkOrder};

/// One of a few ways.
pub(super) trait Ways {
    /// The words of the way it is now.
    fn words(&self) -> &'static str;

    /// Goes to the next way, the first after the last.
    fn step(&mut self);
}

/// Declares the ways of a type in their order, with the words of each.
macro_rules! ways {
    ($($of:ty: $($way:ident $words:expr),+;)+) => {
        $(impl Ways for $of {
            fn words(&self) -> &'static str {
                match self {
                    $(Self::$way => $words,)+
                }
            }

            fn step(&mut self) {
                let all = [$(Self::$way),+];
                let at = all.iter().position(|way| way == self).unwrap_or(0);
                *self = all[(at + 1) % all.len()];
            }
        })+
    };
}

ways! {
    PlateShape: AlongRow "along the row", InLine "in line";
    RunnerKind: Undermount "under the box", SideMount "beside the box";
    CountChart: HeightAndMass Self::HeightAndMass.words(), Inches Self::Inches.words(),
        MassAndWidth Self::MassAndWidth.words();
    ConnectorBore: Blind Self::Blind.words(), Through Self::Through.words();
    RailKind: IndexedRail Self::IndexedRail.words(), HandJig Self::HandJig.words(),
        MachineBed Self::MachineBed.words();
    Corner: NearLeft Self::NearLeft.words(), NearRight Self::NearRight.words(),
        FarLeft Self::FarLeft.words(), FarRight Self::FarRight.words();
    Along: XRight Self::XRight.words(), XLeft Self::XLeft.words(), YRight Self::YRight.words(),
        YLeft Self::YLeft.words();
    Across: Away Self::Away.words(), Toward Self::Toward.words();
    BackRule: FromBackEdge Self::FromBackEdge.words(), FromBackPanel Self::FromBackPanel.words(),
        OnPitch Self::OnPitch.words();
    Bit: Flat "flat", Pointed "pointed";
    Reference: Foot Self::Foot.words(), OneStop Self::OneStop.words();
    WorkOrder: Least Self::Least.words(), PanelFirst Self::PanelFirst.words(),
        SettingFirst Self::SettingFirst.words();
    Gauge: Stop Self::Stop.words(), Eye Self::Eye.words();
    BandState: BeforeBoring Self::BeforeBoring.words(), AfterBoring Self::AfterBoring.words();
}

/// The scheme of reveals; typed ones lead to the first scheme.
impl Ways for FrontRules {
    fn words(&self) -> &'static str {
        self.scheme().words()
    }

    fn step(&mut self) {
        *self = self.with_scheme(match self.scheme() {
            RevealScheme::Split => RevealScheme::FlushFoot,
            RevealScheme::FlushFoot | RevealScheme::Own => RevealScheme::Split,
        });
    }
}
