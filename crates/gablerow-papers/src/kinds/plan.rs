//! Which files come of a job: what each is of and called, before any is printed.

use alloc::collections::BTreeMap;
use alloc::format;
use alloc::rc::Rc;
use alloc::string::{String, ToString};
use alloc::vec;
use alloc::vec::Vec;

use gablerow_core::cards::{Bed, RailKind};
use gablerow_core::check::{Finding, Level, is_held_back};
use gablerow_core::drawing::FaceDrawing;
use gablerow_core::job::{Cabinet, Copy, Job, Key};
use gablerow_core::layout::Layout;
use gablerow_core::stamp::Stamp;

use super::names::{safe, told_apart};
use super::{Format, Kind, Scope};
use crate::list_pages::is_empty;
use crate::page::Paper;

/// What papers are printed of.
#[derive(Clone, Debug)]
pub struct Printer<'a> {
    /// The whole job: cabinets are told apart by all of its names, whichever are printed.
    pub job: &'a Job,
    /// The cabinets that papers are for, each with its findings.
    pub chosen: &'a [(&'a Cabinet, Vec<Finding>)],
    /// The sheets of paper.
    pub paper: Paper,
}

/// A file that a job comes to, not printed yet.
#[derive(Clone, Debug)]
pub struct Planned<'a> {
    /// Its name: letters and digits of ASCII, `-`, `_`, and one dot before its ending.
    pub name: String,
    pub(super) kind: Kind,
    pub(super) format: Format,
    pub(super) of: Of<'a>,
}

/// What a file is of.
#[derive(Clone, Debug)]
pub(super) enum Of<'a> {
    /// All that is chosen.
    Chosen,
    /// A cabinet, whichever way its copies are built.
    Cabinet(&'a Cabinet, &'a [Finding]),
    /// The copies of a cabinet that are built alike.
    Build(Rc<Build<'a>>),
    /// A face of these.
    Face(Rc<Build<'a>>, FaceDrawing),
}

/// What of a cabinet is built alike: the copies as it is designed, or the mirrored ones.
#[derive(Debug)]
pub(super) struct Build<'a> {
    pub(super) cabinet: Cabinet,
    pub(super) layout: Layout,
    /// `copies 1 and 3`; nothing when these are all there are.
    pub(super) copies: String,
    pub(super) findings: &'a [Finding],
    pub(super) stamp: Stamp,
}

impl Printer<'_> {
    /// The files of a kind in one of its formats; none where a job has nothing for it, and none in any other format.
    ///
    /// What is for boring leaves out the cabinets that have an open stop. One that has nothing on it is known only when it is
    /// printed, and is none then.
    #[must_use]
    pub fn plan(&self, kind: Kind, format: Format) -> Vec<Planned<'_>> {
        if !kind.formats().contains(&format) {
            return Vec::new();
        }
        let planned = |name, of| Planned {
            name,
            kind,
            format,
            of,
        };
        let names = self.names();
        let name_of = |cabinet: &Cabinet| names.get(&cabinet.key).map_or("cabinet", String::as_str);
        let each = |(cabinet, findings)| (cabinet, findings, name_of(cabinet));
        match (kind, kind.scope()) {
            (Kind::Machine, _) if self.bed().is_none() => Vec::new(),
            (Kind::Bench, _) if self.free().next().is_none() => Vec::new(),
            (_, Scope::Job) if self.is_empty(kind) => Vec::new(),
            (_, Scope::Job) => {
                // The one cabinet that is chosen out of several.
                let only = match self.chosen {
                    [(only, _)] if self.job.cabinets.len() > 1 => name_of(only),
                    _ => "",
                };
                // Of several cabinets each has its own state, which stands on the paper.
                let stamp = match self.chosen {
                    [(cabinet, _)] => Some(Stamp::now(self.job, cabinet)),
                    _ => None,
                };
                let name = self.name(&[only], kind, stamp, format);
                vec![planned(name, Of::Chosen)]
            }
            (Kind::Holes | Kind::Machine, _) => {
                let table = |(cabinet, findings, name_of): (_, _, &str)| {
                    let stamp = Stamp::now(self.job, cabinet);
                    let name = self.name(&[name_of], kind, Some(stamp), format);
                    planned(name, Of::Cabinet(cabinet, findings))
                };
                self.free().map(each).map(table).collect()
            }
            (_, scope) => {
                let mut all = Vec::new();
                for (cabinet, findings, name_of) in self.free().map(each) {
                    let builds = self.builds(cabinet, findings);
                    let copies = match builds.as_slice() {
                        [_] => vec![String::new()],
                        all => told_apart(all.iter().map(|it| it.copies.as_str()), "copies"),
                    };
                    for (build, copies) in builds.into_iter().zip(copies) {
                        let name = |face: &str| {
                            let parts = [name_of, &copies, face];
                            self.name(&parts, kind, Some(build.stamp), format)
                        };
                        if scope == Scope::Cabinet {
                            all.push(planned(name(""), Of::Build(build)));
                            continue;
                        }
                        let faces = build.faces();
                        let words: Vec<String> =
                            faces.iter().map(|it| it.name.to_string()).collect();
                        let words = told_apart(words.iter().map(String::as_str), "face");
                        let of = |face| Of::Face(Rc::clone(&build), face);
                        let named = words.iter().map(|word| name(word)).zip(faces);
                        all.extend(named.map(|(name, face)| planned(name, of(face))));
                    }
                }
                all
            }
        }
    }

    /// Whether a list of parts has nothing on it.
    fn is_empty(&self, kind: Kind) -> bool {
        let list = kind.list();
        list.is_some_and(|list| is_empty(list, &self.chosen_job()))
    }

    /// The chosen cabinets that may be bored.
    pub(super) fn free(&self) -> impl Iterator<Item = (&Cabinet, &[Finding])> {
        let chosen = self.chosen.iter();
        let free = chosen.filter(|(_, findings)| !is_held_back(findings));
        free.map(|(cabinet, findings)| (*cabinet, findings.as_slice()))
    }

    /// The job with these cabinets and no others.
    pub(super) fn job_of<'c>(&self, cabinets: impl Iterator<Item = &'c Cabinet>) -> Job {
        Job {
            cabinets: cabinets.cloned().collect(),
            ..self.job.clone()
        }
    }

    /// The job with what is chosen of it.
    pub(super) fn chosen_job(&self) -> Job {
        self.job_of(self.chosen.iter().map(|(cabinet, _)| *cabinet))
    }

    /// A cabinet as designed and as mirrored, whichever of the two is built.
    fn builds<'f>(&self, cabinet: &Cabinet, findings: &'f [Finding]) -> Vec<Rc<Build<'f>>> {
        let stamp = Stamp::now(self.job, cabinet);
        let build = |is_mirrored: bool| {
            let alike = cabinet
                .copies
                .iter()
                .filter(|it| it.mirrored == is_mirrored);
            let alike: Vec<&Copy> = alike.collect();
            let built = cabinet.built_as(alike.first()?);
            let copies = match alike.len() == cabinet.copies.len() {
                true => String::new(),
                false => copies(&alike),
            };
            Some(Rc::new(Build {
                layout: Layout::of(&built, self.job),
                cabinet: built,
                copies,
                findings,
                stamp,
            }))
        };
        [false, true].into_iter().filter_map(build).collect()
    }

    /// The machine that is bored on, when the chosen rail is one.
    pub(super) fn bed(&self) -> Option<&Bed> {
        let machine = self.job.rail().filter(|it| it.kind == RailKind::MachineBed);
        machine.map(|rail| &rail.bed)
    }

    /// What each cabinet of the job is called in names of files.
    fn names(&self) -> BTreeMap<Key, String> {
        let cabinets = &self.job.cabinets;
        let names = told_apart(cabinets.iter().map(|it| it.name.as_str()), "cabinet");
        cabinets.iter().map(|it| it.key).zip(names).collect()
    }

    /// `glaze-store_G2_left-side-inside_drawing_rev7-OTTER.dxf`. Names have no `_` in them, so two that differ in a part differ.
    fn name(&self, parts: &[&str], kind: Kind, stamp: Option<Stamp>, format: Format) -> String {
        let mut name = safe(self.job.title.as_str(), "job");
        let stamp = stamp.map(|it| format!("rev{}-{}", it.number, it.capitals()));
        let stamp = stamp.unwrap_or_default();
        let parts = parts.iter().copied().chain([kind.word(), &stamp]);
        for part in parts.filter(|part| !part.is_empty()) {
            name.push('_');
            name.push_str(part);
        }
        format!("{name}.{}", format.ending())
    }
}

impl Build<'_> {
    /// What is drawn: every face that a bay sees, and outsides with holes.
    pub(super) fn faces(&self) -> Vec<FaceDrawing> {
        let uprights = self.layout.uprights.iter();
        let faces = uprights.flat_map(|upright| &upright.faces);
        let has_holes = |face: &gablerow_core::layout::Face| {
            !face.id.is_outside() || !face.holes(&self.layout).is_empty()
        };
        faces
            .filter(|face| has_holes(face))
            .filter_map(|face| FaceDrawing::of(&self.layout, face.id, self.findings))
            .collect()
    }

    /// The sentences that overrule its stops.
    pub(super) fn remarks(&self) -> Vec<String> {
        let stops = self.findings.iter().filter(|it| it.level == Level::Stop);
        let remark = |stop: &Finding| {
            let reason = stop.accepted.as_ref()?;
            Some(format!("Overruled: {}: {reason}", stop.rule_name()))
        };
        stops.filter_map(remark).collect()
    }
}

/// `copies 1 and 3`.
pub(crate) fn copies(alike: &[&Copy]) -> String {
    let names: Vec<&str> = alike.iter().map(|copy| copy.name.as_str()).collect();
    match names.as_slice() {
        [] => String::new(),
        [only] => format!("copy {only}"),
        [before @ .., last] => format!("copies {} and {last}", before.join(", ")),
    }
}
