//! The step of each edit: where each kind of edit is made.

use alloc::format;

use super::{
    Edit, Refusal, adjust, cabinets, cards, copies, fittings, free, furnish, nothing, own, pins,
};
use crate::history::{Change, Step};
use crate::job::Job;
use crate::label::Label;
use crate::measure::Unit;

impl Edit {
    /// The step this edit comes to; the job itself is not changed.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::edit::{Edit, Measure};
    /// use gablerow_core::history::History;
    /// use gablerow_core::job::{Job, Label};
    /// use gablerow_core::measure::Length;
    ///
    /// let mut job = Job::plain(Label::new("glaze store").unwrap());
    /// let mut history = History::of_saved();
    /// let edit = Edit::Measure {
    ///     cabinet: job.cabinets[0].key,
    ///     measure: Measure::Height,
    ///     value: Length::from_mm(768),
    /// };
    /// let step = edit.apply(&job).unwrap();
    /// history.make(step, &mut job);
    /// assert_eq!(job.cabinets[0].size.height, Length::from_mm(768));
    /// history.undo(&mut job);
    /// assert_eq!(job.cabinets[0].size.height, Length::from_mm(704));
    /// ```
    ///
    /// # Errors
    /// A [`Refusal`] when the cabinet or bay is not there, when the job could not hold the result, or when nothing would
    /// change.
    pub fn apply(&self, job: &Job) -> Result<Step, Refusal> {
        match self {
            Self::Add { after, name } => cabinets::add(job, *after, name),
            Self::Duplicate { cabinet, name } => cabinets::duplicate(job, *cabinet, name),
            Self::Rename { cabinet, name } => cabinets::rename(job, *cabinet, name),
            Self::Remove { cabinet } => cabinets::remove(job, *cabinet),
            Self::Measure {
                cabinet,
                measure,
                value,
            } => measure.set(job, *cabinet, *value),
            Self::Offsets {
                cabinet,
                foot,
                head,
            } => cabinets::offsets(job, *cabinet, *foot, *head),
            Self::Choose { cabinet, choice } => choice.step_on(job, *cabinet),
            Self::PartMeasure { .. }
            | Self::PartChoose { .. }
            | Self::Divide { .. }
            | Self::Unite { .. }
            | Self::Door { .. }
            | Self::Drawers { .. }
            | Self::InnerDrawers { .. }
            | Self::FalseFront { .. }
            | Self::NoFront { .. }
            | Self::Modules { .. } => self.apply_to_part(job),
            Self::Furnish(wanted) => furnish::furnish(job, wanted),
            Self::Pins(_)
            | Self::Plates { .. }
            | Self::Runners(_)
            | Self::Shelves(_)
            | Self::NoFitting { .. }
            | Self::Adjust { .. }
            | Self::OwnValue { .. }
            | Self::Recount { .. }
            | Self::Free { .. } => self.apply_to_fitting(job),
            Self::Copies { cabinet, change } => copies::apply(job, *cabinet, change),
            Self::Accept {
                cabinet,
                acceptance,
            } => cabinets::accept(job, *cabinet, acceptance),
            Self::Withdraw { cabinet, message } => cabinets::withdraw(job, *cabinet, message),
            Self::Card { card, value, new } => cards::set_value(job, card, *value, new),
            Self::CardOrigin { card, value } => cards::step_origin(job, card, *value),
            Self::CardAdd { like, title } => cards::add(job, like, title),
            Self::CardTake(card) => cards::put(job, card),
            Self::CardRemove(card) => cards::remove(job, card),
            Self::UseCard {
                cabinet,
                seat,
                card,
            } => cards::use_card(job, *cabinet, *seat, card.as_ref()),
            Self::ShopValue { value, new } => cards::set_in_shop(job, *value, new),
            Self::ShopCard(card) => cards::make_default(job, card),
            Self::ShopTake(shop) => cards::take_shop(job, shop),
            Self::Title(title) => title_step(job, title),
            Self::Unit(unit) => unit_step(job, *unit),
        }
    }

    /// The steps of what is screwed on or bored: fittings of bays, free rows and free holes.
    fn apply_to_fitting(&self, job: &Job) -> Result<Step, Refusal> {
        match self {
            Self::Pins(run) => pins::toggle(job, *run),
            Self::Plates { wall, run } => fittings::toggle_plates(job, *wall, *run),
            Self::Runners(run) => fittings::toggle_runners(job, *run),
            Self::Shelves(run) => fittings::toggle_shelves(job, *run),
            Self::NoFitting {
                cabinet,
                fitting,
                hole,
            } => fittings::take_away(job, *cabinet, *fitting, *hole),
            Self::Adjust {
                cabinet,
                thing,
                adjust,
            } => adjust::apply(job, *cabinet, *thing, adjust),
            Self::OwnValue {
                cabinet,
                thing,
                value,
                new,
            } => own::set_value(job, *cabinet, *thing, *value, new),
            Self::Free { cabinet, change } => free::apply(job, *cabinet, change),
            Self::Recount {
                cabinet,
                fitting,
                datum,
            } => fittings::recount(job, *cabinet, *fitting, *datum),
            _ => Err(nothing()),
        }
    }
}

fn title_step(job: &Job, title: &Label) -> Result<Step, Refusal> {
    if *title == job.title {
        return Err(nothing());
    }
    Ok(Step {
        label: format!("title {title}"),
        change: Change::Title {
            before: job.title.clone(),
            after: title.clone(),
        },
    })
}

fn unit_step(job: &Job, unit: Unit) -> Result<Step, Refusal> {
    if unit == job.unit {
        return Err(nothing());
    }
    Ok(Step {
        label: format!("shown in {}", unit.words()),
        change: Change::Unit {
            before: job.unit,
            after: unit,
        },
    })
}
