//! A line of text that was asked for. What was typed stays until it is taken or left.

use std::path::PathBuf;

use gablerow_core::cards::{CardId, CardName};
use gablerow_core::edit::{
    Edit, FreeEdit, New, Value, ValueName, card_values, own_values, shop_values,
};
use gablerow_core::job::{Acceptance, Job, Key as Name, Measured, Trouble};
use gablerow_core::label::Label;
use gablerow_core::layout::Layout;
use gablerow_core::measure::{Unit, parse_onto};

use super::{Effect, Kept, as_cut, bench, cards, free, job_list, papers, save_to};
use crate::action::Action;
use crate::app::{App, Asked, Line, Purpose, Screen};
use crate::key::Key;

/// A key for the field.
pub(super) fn typed(app: &mut App, key: Key) {
    if let Some(Asked::Line(line)) = &mut app.asked {
        line.complaint = None;
        line.field.press(key);
    }
}

pub(super) fn act(app: &mut App, action: Action) -> Vec<Effect> {
    match (action, app.asked.take()) {
        (Action::Enter, Some(Asked::Line(line))) => take(app, line),
        _ => Vec::new(),
    }
}

fn take(app: &mut App, line: Line) -> Vec<Effect> {
    // What was offered and not touched is no length that was typed: a share stays one.
    if matches!(line.purpose, Purpose::PartMeasure(..)) && line.field.is_selected() {
        return Vec::new();
    }
    let text = line.field.text().trim().to_owned();
    match answer(app, &line.purpose, &text) {
        Ok(Answer::Edit(change)) => take_edit(app, line, &change),
        Ok(Answer::Save { path, then_quit }) => save_to(app, path, false, then_quit),
        Ok(Answer::Trouble(trouble)) => {
            app.desk.job.troubles.push(trouble.clone());
            vec![Effect::Keep(Kept::Trouble(trouble))]
        }
        Ok(Answer::Measured(measured)) => bench::measured(app, measured),
        Ok(Answer::CutAnew(panel)) => bench::cut_anew(app, &panel),
        Ok(Answer::Same) => Vec::new(),
        Ok(Answer::Folder(folder)) => {
            app.papers.folder = Some(folder);
            Vec::new()
        }
        Err(complaint) => {
            app.asked = Some(Asked::Line(Line {
                complaint: Some(complaint),
                ..line
            }));
            Vec::new()
        }
    }
}

/// Makes the edit; when it is refused the line stays open with what was typed.
fn take_edit(app: &mut App, line: Line, change: &Edit) -> Vec<Effect> {
    let before: Vec<Name> = app
        .desk
        .job
        .cabinets
        .iter()
        .map(|cabinet| cabinet.key)
        .collect();
    let effects = free::edit_and_follow(app, change);
    if effects.is_empty() {
        let hint = other_unit(&app.desk.job, &line, change).unwrap_or_default();
        let complaint = app.notice.take().map(|notice| notice.text + &hint);
        app.asked = Some(Asked::Line(Line { complaint, ..line }));
    }
    // A new card is the one the list stands on.
    if let (Edit::CardAdd { like, title }, false) = (change, effects.is_empty()) {
        let (kind, id) = (like.kind, CardId::of_title(title.as_str()));
        cards::show(app, &CardName { kind, id });
    }
    // A new cabinet is the one the list stands on.
    let new = app
        .desk
        .job
        .cabinets
        .iter()
        .map(|cabinet| cabinet.key)
        .find(|key| !before.contains(key));
    if let (Screen::Job(_), Some(new)) = (app.screen, new) {
        app.screen = Screen::Job(new);
    }
    effects
}

/// How a length that is refused would be typed in the other unit, where it would be taken: 27 23/32 is no height in mm,
/// and whoever types it has inches in mind.
fn other_unit(job: &Job, line: &Line, refused: &Edit) -> Option<String> {
    let text = line.field.text().trim();
    let current = match *refused {
        Edit::Measure {
            cabinet, measure, ..
        } => measure.read(job, job.cabinet(cabinet)?)?,
        Edit::PartMeasure {
            cabinet,
            measure,
            part,
            ..
        } => {
            let cabinet = job.cabinet(cabinet)?;
            measure.read(cabinet, &Layout::of(cabinet, job), part)?
        }
        _ => return None,
    };
    let meant = parse_onto(text, current, job.unit.other()).ok()?;
    let (unit, sign) = match job.unit {
        Unit::Millimetre => ("inches", "\""),
        Unit::Inch => ("mm", "mm"),
    };
    let written = format!("{text}{sign}");
    let is_meant = parse_onto(&written, current, job.unit) == Ok(meant);
    let mut edit = refused.clone();
    if let Edit::Measure { value, .. } | Edit::PartMeasure { value, .. } = &mut edit {
        *value = meant;
    }
    (is_meant && edit.apply(job).is_ok()).then(|| format!("; for {unit} type {written}"))
}

enum Answer {
    Edit(Edit),
    Save {
        path: PathBuf,
        then_quit: bool,
    },
    /// What went wrong at the bench.
    Trouble(Trouble),
    /// What was measured there.
    Measured(Vec<Measured>),
    /// Which panel was cut anew.
    CutAnew(bench::OnRecord),
    /// Where papers are written to.
    Folder(PathBuf),
    /// What was there already.
    Same,
}

/// The edit of one copy; nothing when all was there already.
fn of_copies(edit: Result<Option<Edit>, String>) -> Result<Answer, String> {
    edit.map(|edit| edit.map_or(Answer::Same, Answer::Edit))
}

fn answer(app: &App, purpose: &Purpose, text: &str) -> Result<Answer, String> {
    let label = || Label::new(text).map_err(|wrong| wrong.to_string());
    let job = &app.desk.job;
    Ok(Answer::Edit(match purpose {
        Purpose::SaveAs { then_quit } => {
            if text.is_empty() {
                return Err("type a file name, such as pottery.json".to_owned());
            }
            return Ok(Answer::Save {
                path: PathBuf::from(text),
                then_quit: *then_quit,
            });
        }
        Purpose::CutAnew => return bench::panel_on_record(job, text).map(Answer::CutAnew),
        Purpose::Folder => return Ok(Answer::Folder(papers::folder(text)?)),
        Purpose::Add(after) => Edit::Add {
            after: Some(*after),
            name: label()?,
        },
        Purpose::Copy(cabinet) => Edit::Duplicate {
            cabinet: *cabinet,
            name: label()?,
        },
        Purpose::Rename(cabinet) => Edit::Rename {
            cabinet: *cabinet,
            name: label()?,
        },
        Purpose::Trouble(..) | Purpose::Measured { .. } => {
            return of_bench(purpose, text, job.unit);
        }
        Purpose::Remove(cabinet) => remove(job, *cabinet, text)?,
        Purpose::FreeRow(first, last) => free::row(app, text, (*first, *last))?,
        Purpose::FreeHole => free::hole(app, text)?,
        Purpose::FreePurpose(thing) => Edit::Free {
            cabinet: app.spot.cabinet,
            change: FreeEdit::Purpose(*thing, label()?),
        },
        Purpose::CopyNames(cabinet) => return of_copies(job_list::new_name(job, *cabinet, text)),
        Purpose::CutLengths(cabinet) => {
            return of_copies(as_cut::new(job, *cabinet, text));
        }
        Purpose::Value { card, value } => {
            return of_value(job, card.as_ref(), *value, text);
        }
        Purpose::OwnValue(thing, value) => return of_own(app, *thing, *value, text),
        Purpose::CopyCard(like) => Edit::CardAdd {
            like: like.clone(),
            title: label()?,
        },
        Purpose::Measure(_) | Purpose::PartMeasure(..) | Purpose::FreeMeasure(..) => {
            match size(app, purpose, text)? {
                Some(edit) => edit,
                None => return Ok(Answer::Same),
            }
        }
        Purpose::Reason { rule, message } => Edit::Accept {
            cabinet: app.spot.cabinet,
            acceptance: Acceptance {
                rule: rule.info().name.to_owned(),
                message: message.clone(),
                reason: label()?,
            },
        },
    }))
}

/// What a text typed at the bench comes to: what went wrong, or what was measured.
fn of_bench(purpose: &Purpose, text: &str, unit: Unit) -> Result<Answer, String> {
    match purpose {
        Purpose::Measured {
            cabinet,
            copy,
            face,
            checks,
        } => {
            let face = (*cabinet, *copy, *face);
            bench::read_measured(face, checks, text, unit).map(Answer::Measured)
        }
        &Purpose::Trouble(cabinet, copy, face) => {
            let words = Label::new(text).map_err(|wrong| wrong.to_string())?;
            Ok(Answer::Trouble(Trouble {
                cabinet,
                copy,
                face,
                words,
            }))
        }
        _ => Ok(Answer::Same),
    }
}

/// The edit that removes a cabinet whose name was typed.
fn remove(job: &Job, cabinet: Name, text: &str) -> Result<Edit, String> {
    let name = job
        .cabinet(cabinet)
        .map(|cabinet| cabinet.name.to_string())
        .unwrap_or_default();
    if text != name {
        return Err(format!("to remove it type its name, {name}; Esc keeps it"));
    }
    Ok(Edit::Remove { cabinet })
}

/// The edit that sets a typed length; `None` when it is what was there.
fn size(app: &App, purpose: &Purpose, text: &str) -> Result<Option<Edit>, String> {
    let job = &app.desk.job;
    let cabinet = app.spot.cabinet;
    let Some(known) = job.cabinet(cabinet) else {
        return Err("this cabinet is gone".to_owned());
    };
    let typed = |current| parse_onto(text, current, job.unit).map_err(|wrong| wrong.to_string());
    match *purpose {
        Purpose::Measure(measure) => {
            let current = measure.read(job, known).ok_or(measure.missing())?;
            let value = typed(current)?;
            Ok((value != current).then_some(Edit::Measure {
                cabinet,
                measure,
                value,
            }))
        }
        Purpose::PartMeasure(part, measure) => {
            let current = measure.read(known, &Layout::of(known, job), part);
            let value = typed(current.ok_or("this part is gone")?)?;
            // The same length may be new all the same: typed, where it was a share.
            Ok(Some(Edit::PartMeasure {
                cabinet,
                part,
                measure,
                value,
            }))
        }
        Purpose::FreeMeasure(thing, measure) => {
            let current = measure.read(job, known, thing);
            let value = typed(current.ok_or("this is gone, or it goes through")?)?;
            let change = FreeEdit::Measure(thing, measure, value);
            Ok((Some(value) != current).then_some(Edit::Free { cabinet, change }))
        }
        _ => Ok(None),
    }
}

/// What a text typed for a value of a card, or of the house defaults, comes to.
fn of_value(
    job: &Job,
    card: Option<&CardName>,
    value: ValueName,
    text: &str,
) -> Result<Answer, String> {
    let values = match card {
        Some(name) => job.cards.card(name).map(|card| card_values(&card)),
        None => Some(shop_values(&job.shop)),
    };
    let new = new_content(values.unwrap_or_default(), value, text, job.unit)?;
    Ok(new.map_or(Answer::Same, |new| {
        Answer::Edit(match card.cloned() {
            Some(card) => Edit::Card { card, value, new },
            None => Edit::ShopValue { value, new },
        })
    }))
}

/// What a text typed for a value of a loose shelf or a drawer comes to.
fn of_own(app: &App, thing: Name, value: ValueName, text: &str) -> Result<Answer, String> {
    let (job, cabinet) = (&app.desk.job, app.spot.cabinet);
    let values = job.cabinet(cabinet).map(|known| own_values(known, thing));
    let values = values.unwrap_or_default();
    let new = new_content(values, value, text, job.unit)?;
    Ok(new.map_or(Answer::Same, |new| {
        Answer::Edit(Edit::OwnValue {
            cabinet,
            thing,
            value,
            new,
        })
    }))
}

/// What a value of these shall hold by a typed text; `None` when it is what was there.
fn new_content(
    values: Vec<Value>,
    value: ValueName,
    text: &str,
    unit: Unit,
) -> Result<Option<New>, String> {
    let current = values.into_iter().find(|other| other.name == value);
    let current = current.ok_or_else(|| format!("there is no {value} any more"))?;
    // What was offered is the value itself, also where a sign stands before it.
    if text == current.offered(unit) {
        return Ok(None);
    }
    let content = current.parse(text, unit).map_err(|wrong| wrong.0)?;
    Ok((content != current.now).then_some(New::To(content)))
}
