//! What is written as a short text of its own form: names, holes, faces, kinds of front.

use std::fmt;

use gablerow_core::cards::CardId;
use gablerow_core::job::{
    Datum, FaceId, FrontHeight, FrontKind, Hand, HolePlace, Key, Label, PanelId,
};
use gablerow_core::label::is_unsafe;
use gablerow_core::measure::Length;
use serde::de::{self, Deserialize, Deserializer, Visitor};
use serde::ser::{Serialize, Serializer};

use super::front::FrontWish;
use super::measure::parse_mm;
use super::twin::Twin;
use crate::job_file::wrong::Wrong;

/// What is written as a text.
pub(in crate::job_file) trait TextForm: Sized {
    /// What is meant, for the message when something else stands there.
    const MEANT: &str;

    /// The value of a text, or a sentence on what is wrong with it.
    fn parse(text: &str) -> Result<Self, String>;

    /// The text of the value.
    fn text(&self) -> String;
}

/// A core value that is written as a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(in crate::job_file) struct Text<T>(T);

impl<T: TextForm + Clone> Twin for Text<T> {
    type Core = T;

    fn of(core: &T) -> Self {
        Self(core.clone())
    }

    fn into_core(self) -> Result<T, Wrong> {
        Ok(self.0)
    }
}

impl<T: TextForm> Serialize for Text<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.0.text())
    }
}

impl<'de, T: TextForm> Deserialize<'de> for Text<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Parsed<T>(std::marker::PhantomData<T>);

        impl<T: TextForm> Visitor<'_> for Parsed<T> {
            type Value = Text<T>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str(T::MEANT)
            }

            fn visit_str<E: de::Error>(self, text: &str) -> Result<Text<T>, E> {
                T::parse(text).map(Text).map_err(E::custom)
            }
        }

        deserializer.deserialize_str(Parsed(std::marker::PhantomData))
    }
}

/// A name is read as it is typed, without spaces at its ends.
impl TextForm for Label {
    const MEANT: &str = "a name in quotes, such as \"G2\"";

    fn parse(text: &str) -> Result<Self, String> {
        Self::new(text).map_err(|wrong| wrong.to_string())
    }

    fn text(&self) -> String {
        self.as_str().to_string()
    }
}

impl TextForm for CardId {
    const MEANT: &str = "the id of a card in quotes, such as \"board-18\"";

    fn parse(text: &str) -> Result<Self, String> {
        Self::new(text).map_err(|wrong| format!("\"{text}\", but {wrong}"))
    }

    fn text(&self) -> String {
        self.as_str().to_string()
    }
}

/// A sentence that the program wrote.
impl TextForm for String {
    const MEANT: &str = "a sentence in quotes";

    fn parse(text: &str) -> Result<Self, String> {
        const CHARS_MOST: usize = 1_000;
        if text.chars().count() > CHARS_MOST {
            return Err(format!("a sentence has at most {CHARS_MOST} characters"));
        }
        match text.chars().find(|&c| is_unsafe(c)) {
            None => Ok(text.to_string()),
            Some(bad) => Err(format!(
                "the character U+{:04X} does not belong into a sentence",
                u32::from(bad)
            )),
        }
    }

    fn text(&self) -> String {
        self.clone()
    }
}

/// A text in the one form its value is written in, and no other: `foot 3`, never `foot  +03`.
fn exactly<T: TextForm>(found: Option<T>, text: &str) -> Result<T, String> {
    found
        .filter(|value| value.text() == text)
        .ok_or_else(|| format!("\"{text}\", but it is {}", T::MEANT))
}

impl TextForm for HolePlace {
    const MEANT: &str = "a hole such as \"foot 3\", \"head 4\" or \"middle -2\"";

    fn parse(text: &str) -> Result<Self, String> {
        let place = text.split_once(' ').and_then(|(word, count)| {
            let datum = Datum::ALL.into_iter().find(|datum| datum.word() == word)?;
            let count = count.parse().ok()?;
            Some(Self { datum, count })
        });
        exactly(place, text)
    }

    fn text(&self) -> String {
        self.to_string()
    }
}

const HANDS: [Hand; 2] = [Hand::Left, Hand::Right];

fn hand(word: &str) -> Option<Hand> {
    HANDS.into_iter().find(|hand| hand.word() == word)
}

impl TextForm for PanelId {
    const MEANT: &str = "a panel: \"left side\", \"right side\", or such as \"partition 4\"";

    fn parse(text: &str) -> Result<Self, String> {
        let panel = match text.strip_prefix("partition ") {
            Some(key) => key.parse().ok().map(|key| Self::Partition(Key(key))),
            None => text.strip_suffix(" side").and_then(hand).map(Self::Side),
        };
        exactly(panel, text)
    }

    fn text(&self) -> String {
        match self {
            Self::Side(hand) => format!("{} side", hand.word()),
            Self::Partition(key) => format!("partition {key}"),
        }
    }
}

impl TextForm for FaceId {
    const MEANT: &str =
        "a face such as \"left side inside\", \"right side outside\" or \"partition 4 right\"";

    fn parse(text: &str) -> Result<Self, String> {
        let face = text.rsplit_once(' ').and_then(|(panel, word)| {
            let panel = PanelId::parse(panel).ok()?;
            let toward = match (panel, word) {
                (PanelId::Side(side), "inside") => side.other(),
                (PanelId::Side(side), "outside") => side,
                (PanelId::Side(_), _) => return None,
                (PanelId::Partition(_), word) => hand(word)?,
            };
            Some(Self { panel, toward })
        });
        exactly(face, text)
    }

    fn text(&self) -> String {
        let word = match self.panel {
            PanelId::Side(_) => self.word(),
            PanelId::Partition(_) => self.toward.word(),
        };
        format!("{} {word}", self.panel.text())
    }
}

/// What doors take unless they say otherwise, so that it need not be written.
const DOOR_HEIGHT: FrontHeight = FrontHeight::Ratio(1);

impl TextForm for FrontWish {
    const MEANT: &str = "a front such as \"door left\", \"pair 12 modules\", \"drawer 9 modules\", \"drawer 128 mm\", \
         \"drawer share 2\", \"false 4 modules\" or \"inner 6 modules\"";

    fn parse(text: &str) -> Result<Self, String> {
        let (word, rest) = text.split_once(' ').unwrap_or((text, ""));
        let hung = |kind, height: &str| {
            let height = match height {
                "" => Some(DOOR_HEIGHT),
                written => front_height(written),
            };
            Some(Self {
                kind,
                height: height?,
            })
        };
        let front = match word {
            "pair" => hung(FrontKind::Pair, rest),
            "door" => {
                let (side, height) = rest.split_once(' ').unwrap_or((rest, ""));
                hand(side).and_then(|hand| hung(FrontKind::Door(hand), height))
            }
            _ => {
                let kinds = [FrontKind::Drawer, FrontKind::False, FrontKind::Inner];
                let kind = kinds.into_iter().find(|kind| front_word(*kind) == word);
                kind.and_then(|kind| {
                    Some(Self {
                        kind,
                        height: front_height(rest)?,
                    })
                })
            }
        };
        exactly(front, text)
    }

    fn text(&self) -> String {
        let Self { kind, height } = self;
        let mut text = front_word(*kind).to_string();
        if let FrontKind::Door(hand) = kind {
            text = format!("{text} {}", hand.word());
        }
        if kind.is_hung() && *height == DOOR_HEIGHT {
            return text;
        }
        format!("{text} {}", front_height_text(*height))
    }
}

fn front_word(kind: FrontKind) -> &'static str {
    match kind {
        FrontKind::Door(_) => "door",
        FrontKind::Pair => "pair",
        FrontKind::Drawer => "drawer",
        FrontKind::False => "false",
        FrontKind::Inner => "inner",
    }
}

fn front_height(text: &str) -> Option<FrontHeight> {
    match text.split_once(' ')? {
        ("share", count) => count.parse().ok().map(FrontHeight::Ratio),
        (count, "modules") => count.parse().ok().map(FrontHeight::Modules),
        (height, "mm") => parse_mm(height).ok().map(FrontHeight::Fixed),
        _ => None,
    }
}

fn front_height_text(height: FrontHeight) -> String {
    match height {
        FrontHeight::Modules(count) => format!("{count} modules"),
        FrontHeight::Fixed(height) => format!("{} mm", Length::exact_mm(height)),
        FrontHeight::Ratio(count) => format!("share {count}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check<T: TextForm + PartialEq + fmt::Debug>(text: &str, value: T) {
        assert_eq!(value.text(), text);
        assert_eq!(T::parse(text), Ok(value));
    }

    #[test]
    fn holes_are_counted_from_three_ends() {
        check("foot 3", HolePlace::foot(3));
        check("head 4", HolePlace::head(4));
        check("middle -2", HolePlace::middle(-2));
    }

    #[test]
    fn faces_are_named_as_people_name_them() {
        check("left side inside", FaceId::inside(Hand::Left));
        check("right side outside", FaceId::inside(Hand::Right).behind());
        let partition = FaceId {
            panel: PanelId::Partition(Key(4)),
            toward: Hand::Right,
        };
        check("partition 4 right", partition);
        check("left side", PanelId::Side(Hand::Left));
        check("partition 12", PanelId::Partition(Key(12)));
    }

    #[test]
    fn fronts_say_their_hand_or_height() {
        let wish = |kind, height| FrontWish { kind, height };
        let left = FrontKind::Door(Hand::Left);
        check("door left", wish(left, FrontHeight::Ratio(1)));
        check("door left 12 modules", wish(left, FrontHeight::Modules(12)));
        check("pair", wish(FrontKind::Pair, FrontHeight::Ratio(1)));
        check("pair share 2", wish(FrontKind::Pair, FrontHeight::Ratio(2)));
        check(
            "drawer 9 modules",
            wish(FrontKind::Drawer, FrontHeight::Modules(9)),
        );
        let height = FrontHeight::Fixed(Length::from_um(128_500));
        check("drawer 128.5 mm", wish(FrontKind::Drawer, height));
        check(
            "false share 2",
            wish(FrontKind::False, FrontHeight::Ratio(2)),
        );
        check(
            "inner 6 modules",
            wish(FrontKind::Inner, FrontHeight::Modules(6)),
        );
    }

    #[test]
    fn there_is_one_way_to_write_each() {
        for text in [
            "foot +3", "foot 03", "foot  3", "Foot 3", "foot", "knee 3", "foot 3 ", "",
        ] {
            assert!(HolePlace::parse(text).is_err(), "{text}");
        }
        for text in [
            "left side left",
            "partition 4 inside",
            "partition x left",
            "left inside",
        ] {
            assert!(FaceId::parse(text).is_err(), "{text}");
        }
        for text in [
            "door",
            "door middle",
            "pair 2",
            "pair share 1",
            "door left share 1",
            "drawer",
            "drawer 9",
            "drawer 128.50 mm",
            "false",
        ] {
            assert!(FrontWish::parse(text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_sentence_cannot_command_the_terminal() {
        assert!(String::parse("a\u{1b}[2J").is_err());
        assert!(String::parse(&"a".repeat(1_001)).is_err());
    }
}
