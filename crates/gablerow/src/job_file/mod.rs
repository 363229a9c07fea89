//! Job files, and the shop's own: bytes in, a job out, and back. Nothing here touches the disk.
//!
//! ```text
//! bytes -> version -> reader -> v1 twins -> Job -> validate        a fault anywhere: JobFileError, with its place
//! Job   -> v1 twins -> compact JSON -> lines                       the same job gives the same bytes
//! ```
//!
//! A job is read whole or not at all. Lengths are decimals of mm and never pass through a float. What goes without saying
//! (an empty list, a recess of 0) is left out; a fitting is one line, so that a change of one hole is a change of one
//! line.

mod error;
mod inside;
mod lexer;
mod lines;
mod place;
mod reader;
mod unreadable;
mod v1;
mod version;
mod wrong;

#[cfg(test)]
pub(crate) mod arbitrary;
#[cfg(test)]
mod faults;
#[cfg(test)]
mod laws;
#[cfg(test)]
mod sample;

use gablerow_core::cards::Cards;
use gablerow_core::job::{
    Bored, Cabinet, Fault, Job, Label, LeftAt, Measured, Shop, Took, Trouble,
};
use gablerow_core::measure::Unit;
use serde::Serialize;
use serde::de::DeserializeOwned;

pub use error::JobFileError;
pub use unreadable::UnreadableJob;

use crate::shop_file::ShopFile;
use v1::twin::Twin;
use wrong::Wrong;

/// The largest file that is read, in bytes: a job of a thousand cabinets has about two million.
pub const BYTES_MOST: usize = 64 << 20;

/// The job of a file's bytes. A byte-order mark before it is passed over.
///
/// # Errors
/// The first of these, with its place:
/// - the file is over [`BYTES_MOST`], is no UTF-8, or no JSON;
/// - it is no job, or of a version that this program does not read;
/// - a field is missing, unknown, there twice, or holds what it cannot;
/// - the job holds what no job can hold, see [`Job::validate`].
///
/// # Example
/// ```
/// use gablerow::job_file;
/// use gablerow_core::job::{Job, Label};
///
/// let job = Job::plain(Label::new("Glaze store").unwrap());
/// let text = job_file::write(&job);
/// assert_eq!(job_file::read(text.as_bytes())?, job);
/// # Ok::<(), job_file::JobFileError>(())
/// ```
pub fn read(bytes: &[u8]) -> Result<Job, JobFileError> {
    let ours = (v1::job::FORMAT, v1::job::VERSION);
    read_whole::<v1::job::JobFile>(bytes, ours, Job::validate)
}

/// The house defaults and cards of a shop file's bytes, read as strictly as a job.
///
/// # Errors
/// As [`read`].
pub fn read_shop_file(bytes: &[u8]) -> Result<ShopFile, JobFileError> {
    let ours = (v1::shop_file::FORMAT, v1::shop_file::VERSION);
    read_whole::<v1::shop_file::ShopFile>(bytes, ours, |file| {
        file.cards
            .validate()
            .map_err(|fault| fault.within("cards"))?;
        let shop = file.shop.as_ref();
        shop.map_or(Ok(()), |shop| shop.validate(&file.cards))
            .map_err(|fault| fault.within("shop"))
    })
}

/// A file read whole: what it is, its fields, then whether it holds only what it can.
fn read_whole<T: Twin + DeserializeOwned>(
    bytes: &[u8],
    ours: (&str, u32),
    validate: impl FnOnce(&T::Core) -> Result<(), Fault>,
) -> Result<T::Core, JobFileError> {
    if bytes.len() > BYTES_MOST {
        let message = format!(
            "the file has {} bytes, but a job has at most {BYTES_MOST}",
            bytes.len()
        );
        return Err(JobFileError::at(0, "", &message, ""));
    }
    let bytes = bytes.strip_prefix("\u{feff}".as_bytes()).unwrap_or(bytes);
    let text = std::str::from_utf8(bytes).map_err(|wrong| {
        let good = &bytes[..wrong.valid_up_to()];
        let message = "this byte belongs to no character: the file is no UTF-8 text";
        JobFileError::at(good.len(), "", message, &String::from_utf8_lossy(good))
    })?;
    let of = |wrong: Wrong| JobFileError::of(&wrong, text);
    version::check(text, ours).map_err(of)?;
    let core = reader::read::<T>(text)
        .and_then(Twin::into_core)
        .map_err(of)?;
    validate(&core).map_err(|fault| {
        of(Wrong {
            path: fault.path,
            ..Wrong::new(fault.problem)
        })
    })?;
    Ok(core)
}

/// The text of a job's file, lines ending with a line feed, the last one too. The same job gives the same text.
#[must_use]
pub fn write(job: &Job) -> String {
    lines::broken(&one_line::<v1::job::JobFile>(job))
}

/// The text of a shop file, in the form of a job's.
#[must_use]
pub fn write_shop_file(file: &ShopFile) -> String {
    lines::broken(&one_line::<v1::shop_file::ShopFile>(file))
}

/// A twin's value as JSON on one line.
fn one_line<T: Twin + Serialize>(core: &T::Core) -> String {
    match serde_json::to_string(&T::of(core)) {
        Ok(text) => text,
        // The twins hold names, numbers, lists and records only, and memory takes all that is written to it.
        Err(impossible) => unreachable!("a twin is always JSON: {impossible}"),
    }
}

/// A value from the JSON that [`one_line`] gives.
fn of_one_line<T: Twin + DeserializeOwned>(text: &str) -> Result<T::Core, JobFileError> {
    reader::read::<T>(text)
        .and_then(Twin::into_core)
        .map_err(|wrong| JobFileError::of(&wrong, text))
}

/// Declares the way to one line of JSON and back for a value that is kept on its own, in the journal.
macro_rules! kept_alone {
    ($($what:literal $twin:ty = $core:ty: $text:ident, $read:ident;)+) => {
        $(
            #[doc = concat!(
                "The JSON of ", $what, " on one line, without a line feed; fields as in the job file."
            )]
            #[must_use]
            pub fn $text(value: &$core) -> String {
                one_line::<$twin>(value)
            }

            #[doc = concat!("The value of the text that [`", stringify!($text), "`] gives.")]
            ///
            /// Whether it fits its job is for [`Job::validate`] to say, once it stands there.
            ///
            /// # Errors
            /// As [`read`], with places counted from the value.
            pub fn $read(text: &str) -> Result<$core, JobFileError> {
                of_one_line::<$twin>(text)
            }
        )+
    };
}

kept_alone! {
    "a cabinet" v1::cabinet::Cabinet = Cabinet: cabinet_text, read_cabinet;
    "the house defaults" v1::job::Shop = Shop: shop_text, read_shop;
    "all cards" v1::cards::Cards = Cards: cards_text, read_cards;
    "title and unit" v1::job::Heading = (Label, Unit): heading_text, read_heading;
    "the face a job was left on" v1::job::LeftAt = LeftAt: left_at_text, read_left_at;
    "a bored hole" v1::job::Bored = Bored: bored_text, read_bored;
    "what a set-up took" v1::job::Took = Took: took_text, read_took;
    "a distance that was measured" v1::job::Measured = Measured: measured_text, read_measured;
    "what went wrong at the bench" v1::job::Trouble = Trouble: trouble_text, read_trouble;
}
