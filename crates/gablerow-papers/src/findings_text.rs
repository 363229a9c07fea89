//! Findings to be read: by level, then by cabinet.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::check::{Finding, Level};
use gablerow_core::job::{Cabinet, FaceId, Job, Key, Names};

use crate::text::push_indented;

/// The findings as text, at most 80 columns wide: the heaviest level first, cabinets as they come, each sentence with the
/// name of its rule, and with the reason where it was accepted or overruled.
///
/// ```text
/// STOP
///   G3, right side, inside
///   - hinge plate on 20-21 and pins 17-23 want the same holes 20-21; move the
///     plate, or end the pins short of it [plate-on-pin-hole]
/// 1 stop, 0 warn, 0 note open; 0 overruled, 0 accepted
/// ```
#[must_use]
pub fn findings_text(job: &Job, findings: &[Finding]) -> String {
    let mut out = String::new();
    for level in Level::ALL {
        let mut of_level: Vec<&Finding> = findings
            .iter()
            .filter(|finding| finding.level == level)
            .collect();
        if of_level.is_empty() {
            continue;
        }
        out.push_str(&level.word().to_uppercase());
        out.push('\n');
        let place = |finding: &Finding| (finding.place.cabinet, finding.place.face);
        let order = |key: Key| job.cabinets.iter().position(|cabinet| cabinet.key == key);
        of_level.sort_by_key(|finding| order(finding.place.cabinet));
        for here in of_level.chunk_by(|a, b| place(a) == place(b)) {
            let Some(first) = here.first() else { continue };
            push_indented(
                &mut out,
                "  ",
                "  ",
                &heading(job, first.place.cabinet, first.place.face),
            );
            here.iter()
                .for_each(|finding| push_finding(&mut out, finding));
        }
    }
    out.push_str(&counts(findings));
    out
}

/// The stops of a cabinet that a person overruled, each with the sentence that does it, at most 80 columns wide; nothing when
/// none is. Whoever bores from a list has to read this first.
///
/// ```text
/// G3, overruled stops:
///   - hinge plate on 20-21 and pins 17-23 want the same holes 20-21; move the
///     plate, or end the pins short of it [plate-on-pin-hole]
///     overruled: Ann bores the two by hand
/// ```
#[must_use]
pub fn overruled_text(cabinet: &Cabinet, findings: &[Finding]) -> String {
    let is_overruled = |it: &&Finding| it.level == Level::Stop && it.accepted.is_some();
    let overruled: Vec<&Finding> = findings.iter().filter(is_overruled).collect();
    let mut out = String::new();
    if !overruled.is_empty() {
        push_indented(
            &mut out,
            "",
            "  ",
            &format!("{}, overruled stops:", cabinet.name),
        );
    }
    for finding in overruled {
        push_finding(&mut out, finding);
    }
    out
}

/// A finding in a sentence: `STOP, G3, right side, inside: hinge plate on 20-21 ... [plate-on-pin-hole]; overruled: Ann bores the
/// two by hand`.
pub(crate) fn finding_words(job: &Job, finding: &Finding) -> String {
    let place = heading(job, finding.place.cabinet, finding.place.face);
    let (level, rule) = (finding.level.word().to_uppercase(), finding.rule_name());
    let reason = finding.accepted.as_ref();
    let reason = reason.map(|reason| format!("; {}: {reason}", finding.level.quieted()));
    let reason = reason.unwrap_or_default();
    format!("{level}, {place}: {} [{rule}]{reason}", finding.message)
}

fn heading(job: &Job, cabinet: Key, face: Option<FaceId>) -> String {
    let Some(cabinet) = job.cabinet(cabinet) else {
        return cabinet.to_string();
    };
    let name = &cabinet.name;
    match face {
        Some(face) => format!("{name}, {}", Names::of(&cabinet.opening).face(face)),
        None => name.to_string(),
    }
}

fn push_finding(out: &mut String, finding: &Finding) {
    let text = format!("{} [{}]", finding.message, finding.rule_name());
    push_indented(out, "  - ", "    ", &text);
    if let Some(reason) = &finding.accepted {
        push_indented(
            out,
            "    ",
            "    ",
            &format!("{}: {reason}", finding.level.quieted()),
        );
    }
}

fn counts(findings: &[Finding]) -> String {
    let open = |level| {
        findings
            .iter()
            .filter(|finding| finding.level == level && finding.accepted.is_none())
            .count()
    };
    let quieted = |word| {
        let quiet = findings.iter().filter(|finding| finding.accepted.is_some());
        quiet
            .filter(|finding| finding.level.quieted() == word)
            .count()
    };
    let open = Level::ALL.map(|level| format!("{} {}", open(level), level.word()));
    let [overruled, accepted] =
        ["overruled", "accepted"].map(|word| format!("{} {word}", quieted(word)));
    format!("{} open; {overruled}, {accepted}\n", open.join(", "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::job;
    use gablerow_core::check::{Place, Rule};
    use gablerow_core::job::{Hand, Label};

    fn finding(rule: Rule, face: Option<FaceId>, message: &str) -> Finding {
        let place = Place {
            cabinet: Key(1),
            face,
            row: None,
            holes: None,
        };
        Finding {
            rule,
            level: rule.info().level,
            place,
            message: message.into(),
            in_mm: message.into(),
            about: [None; 2],
            accepted: None,
        }
    }

    #[test]
    fn levels_come_heaviest_first_with_their_places() {
        let mut accepted = finding(
            Rule::SharedHole,
            Some(FaceId::inside(Hand::Left)),
            "two want the same hole 4; move one of them",
        );
        accepted.accepted = Label::new("the lock goes elsewhere").ok();
        let findings = [finding(Rule::Unbalanced, None, "3.0 out"), accepted];
        assert_eq!(
            findings_text(&job(), &findings),
            "STOP\n  A1, left side, inside\n  - two want the same hole 4; move one of them [shared-hole]\n    \
             overruled: the lock goes elsewhere\nNOTE\n  A1\n  - 3.0 out [unbalanced]\n0 stop, 0 warn, 1 note open; 1 overruled, 0 accepted\n"
        );
    }

    #[test]
    fn overruled_stops_are_told_apart_from_open_ones_and_from_accepted_warns() {
        let quiet = |rule, reason| Finding {
            accepted: Label::new(reason).ok(),
            ..finding(rule, None, "said")
        };
        let job = job();
        let findings = [
            finding(Rule::SharedHole, None, "open"),
            quiet(Rule::NearMissRows, "Ann plugs the back row"),
            quiet(Rule::ShelfAtHinge, "no shelf there"),
        ];
        assert_eq!(
            overruled_text(&job.cabinets[0], &findings),
            "A1, overruled stops:\n  - said [near-miss-rows]\n    overruled: Ann plugs the back row\n"
        );
        assert_eq!(overruled_text(&job.cabinets[0], &findings[..1]), "");
    }

    #[test]
    fn no_finding_is_said_too() {
        assert_eq!(
            findings_text(&job(), &[]),
            "0 stop, 0 warn, 0 note open; 0 overruled, 0 accepted\n"
        );
    }

    #[test]
    fn long_sentences_are_wrapped() {
        let text = findings_text(
            &job(),
            &[finding(Rule::Unbalanced, None, &"a word ".repeat(40))],
        );
        assert!(text.lines().all(|line| line.len() <= 80), "{text}");
        assert!(text.lines().count() > 5);
    }
}
