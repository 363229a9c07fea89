//! Faces as text, and which of them are meant.

use anyhow::bail;
use gablerow_core::check;
use gablerow_core::drawing::FaceDrawing;
use gablerow_core::job::{Cabinet, FaceId, Job};
use gablerow_core::layout::Layout;
use gablerow_papers::{FaceSheet, Signs};

use super::output::shown;
use crate::theme::Theme;

/// Some faces of one cabinet.
pub(super) struct Selection<'a> {
    cabinet: &'a Cabinet,
    layout: Layout,
    faces: Vec<FaceId>,
}

/// The faces that words mean: the name of a cabinet, then as much of a face's name as is wanted. Without words it is every face
/// that a bay sees; outsides are shown when they have holes or are asked for by name.
///
/// # Errors
/// No face is called that; what there is, is said.
pub(super) fn selected<'a>(job: &'a Job, words: &[String]) -> anyhow::Result<Vec<Selection<'a>>> {
    let wanted = folded(&words.join(" "));
    let all = || job.cabinets.iter();
    if wanted.is_empty() {
        return Ok(all()
            .map(|cabinet| Selection::of(cabinet, job, &[]))
            .collect());
    }
    // Of two names that fit, G1 and G1 left, the longer one is meant.
    let mut named: Vec<(&Cabinet, usize)> = all()
        .map(|cabinet| (cabinet, folded(cabinet.name.as_str())))
        .filter(|(_, name)| wanted.starts_with(name))
        .map(|(cabinet, name)| (cabinet, name.len()))
        .collect();
    named.sort_by_key(|&(_, length)| std::cmp::Reverse(length));
    let selections = named
        .iter()
        .map(|&(cabinet, length)| Selection::of(cabinet, job, &wanted[length..]));
    match selections
        .into_iter()
        .find(|selection| !selection.faces.is_empty())
    {
        Some(selection) => Ok(vec![selection]),
        None => bail!(
            "no face is called `{}`; {}",
            shown(&words.join(" ")),
            there_is(job, named.first())
        ),
    }
}

/// The words of a name, without regard to commas and capitals.
fn folded(text: &str) -> Vec<String> {
    let words = text.split(|c: char| c.is_whitespace() || c == ',');
    words
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect()
}

fn there_is(job: &Job, named: Option<&(&Cabinet, usize)>) -> String {
    let Some((cabinet, _)) = named else {
        let names: Vec<&str> = job
            .cabinets
            .iter()
            .map(|cabinet| cabinet.name.as_str())
            .collect();
        return format!("the cabinets are {}", names.join(", "));
    };
    let layout = Layout::of(cabinet, job);
    let faces: Vec<String> = all_faces(&layout)
        .map(|face| format!("`{}`", layout.names.face(face)))
        .collect();
    format!("the faces of {} are {}", cabinet.name, faces.join(", "))
}

fn all_faces(layout: &Layout) -> impl Iterator<Item = FaceId> {
    layout
        .uprights
        .iter()
        .flat_map(|upright| &upright.faces)
        .map(|face| face.id)
}

impl<'a> Selection<'a> {
    fn of(cabinet: &'a Cabinet, job: &Job, wanted: &[String]) -> Self {
        let layout = Layout::of(cabinet, job);
        let is_meant = |face: &FaceId| {
            let name = folded(&layout.names.face(*face).to_string());
            let has_holes = || {
                layout
                    .face(*face)
                    .is_some_and(|face| !face.holes(&layout).is_empty())
            };
            name.starts_with(wanted)
                && (!face.is_outside() || wanted.len() == name.len() || has_holes())
        };
        let faces = all_faces(&layout).filter(is_meant).collect();
        Self {
            cabinet,
            layout,
            faces,
        }
    }
}

/// Faces as text, a blank line between each two.
pub(super) fn text(job: &Job, selections: &[Selection]) -> String {
    let signs = signs();
    let mut sheets = Vec::new();
    for Selection {
        cabinet,
        layout,
        faces,
    } in selections
    {
        let findings = check::of_cabinet(job, cabinet, layout);
        for &face in faces {
            if let Some(drawing) = FaceDrawing::of(layout, face, &findings) {
                let sheet = FaceSheet {
                    cabinet,
                    layout,
                    drawing: &drawing,
                    unit: job.unit,
                };
                sheets.push(sheet.text(&signs));
            }
        }
    }
    sheets.join("\n")
}

/// The signs of the screens, for the character set of the environment.
pub(super) fn signs() -> Signs {
    Theme::of(|name| std::env::var(name).ok()).glyphs().signs
}

#[cfg(test)]
mod tests {
    use super::*;
    use gablerow_core::job::{Key, Label};

    fn job() -> Job {
        let mut job = Job::plain(Label::new("glaze store").unwrap());
        let mut second = job.cabinets[0].clone();
        (second.key, second.name) = (Key(2), Label::new("A1 tall").unwrap());
        job.cabinets.push(second);
        job
    }

    fn names(words: &str) -> Result<Vec<String>, String> {
        let job = job();
        let words: Vec<String> = words.split(' ').map(str::to_owned).collect();
        let found = selected(&job, &words).map_err(|error| error.to_string())?;
        let of = |found: &Selection| {
            let name = &found.cabinet.name;
            found
                .faces
                .iter()
                .map(|face| format!("{name}, {}", found.layout.names.face(*face)))
                .collect::<Vec<_>>()
        };
        Ok(found.iter().flat_map(of).collect())
    }

    #[test]
    fn without_words_every_face_that_a_bay_sees_is_meant() {
        assert_eq!(names("").unwrap().len(), 4);
    }

    #[test]
    fn words_name_a_cabinet_and_as_much_of_a_face_as_is_wanted() {
        assert_eq!(
            names("a1").unwrap(),
            ["A1, left side, inside", "A1, right side, inside"]
        );
        assert_eq!(names("A1 left").unwrap(), ["A1, left side, inside"]);
        assert_eq!(names("a1 LEFT Side").unwrap(), ["A1, left side, inside"]);
        assert_eq!(
            names("A1, left side, outside").unwrap(),
            ["A1, left side, outside"]
        );
        assert_eq!(
            names("A1 tall right").unwrap(),
            ["A1 tall, right side, inside"]
        );
    }

    #[test]
    fn what_there_is_is_said_when_nothing_fits() {
        assert_eq!(
            names("G9").unwrap_err(),
            "no face is called `G9`; the cabinets are A1, A1 tall"
        );
        assert!(names("A1 partition 4").unwrap_err().starts_with(
            "no face is called `A1 partition 4`; the faces of A1 are `left side, outside`, `left side, inside`, "
        ));
    }
}
