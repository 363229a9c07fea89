//! How a twin and what it is the twin of become each other.

use gablerow_core::grid::HoleNumber;
use serde::{Deserialize, Serialize};

use crate::job_file::wrong::Wrong;

/// A type that is written to the file in place of a core type.
pub(in crate::job_file) trait Twin: Sized {
    /// What it is the twin of.
    type Core;

    /// The twin of a value.
    fn of(core: &Self::Core) -> Self;

    /// What it is the twin of.
    ///
    /// # Errors
    /// When the twin says what its core type cannot; with the path from here.
    fn into_core(self) -> Result<Self::Core, Wrong>;
}

/// Whether a value goes without saying, so that the file leaves it out.
///
/// That is so for nothing, zero, no and the empty list only: what is left out today must mean the same for ever.
pub(in crate::job_file) fn plain<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

/// Declares a record: its fields, its twin in core, and both ways between them.
///
/// Both ways name every field of the core type, so that a field added there does not compile until it is added here.
macro_rules! record {
    ($(#[$about:meta])* $name:ident = $core:ident :: $core_name:ident {
        $($(#[$doc:meta])* $field:ident: $twin:ty,)+
    }) => {
        #[derive(Clone, Debug, PartialEq, serde::Deserialize, serde::Serialize)]
        #[cfg_attr(test, derive(schemars::JsonSchema))]
        #[serde(deny_unknown_fields)]
        $(#[$about])*
        pub(in crate::job_file) struct $name {
            $($(#[$doc])* pub(in crate::job_file) $field: $twin,)+
        }

        impl $crate::job_file::v1::twin::Twin for $name {
            type Core = $core::$core_name;

            fn of(core: &Self::Core) -> Self {
                let $core::$core_name { $($field),+ } = core;
                Self { $($field: $crate::job_file::v1::twin::Twin::of($field)),+ }
            }

            fn into_core(self) -> Result<Self::Core, $crate::job_file::wrong::Wrong> {
                let Self { $($field),+ } = self;
                Ok($core::$core_name {
                    $($field: $crate::job_file::v1::twin::Twin::into_core($field)
                        .map_err(|wrong| wrong.within(stringify!($field)))?,)+
                })
            }
        }
    };
}

/// Declares a choice between words: what each stands for in core, and both ways between them.
macro_rules! words {
    ($(#[$about:meta])* $name:ident = $core:ident :: $core_name:ident {
        $($(#[$doc:meta])* $variant:ident = $word:literal,)+
    }) => {
        #[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Deserialize, serde::Serialize)]
        #[cfg_attr(test, derive(schemars::JsonSchema))]
        $(#[$about])*
        pub(in crate::job_file) enum $name {
            $($(#[$doc])* #[serde(rename = $word)] $variant,)+
        }

        impl $crate::job_file::v1::twin::Twin for $name {
            type Core = $core::$core_name;

            fn of(core: &Self::Core) -> Self {
                match core {
                    $($core::$core_name::$variant => Self::$variant,)+
                }
            }

            fn into_core(self) -> Result<Self::Core, $crate::job_file::wrong::Wrong> {
                Ok(match self {
                    $(Self::$variant => $core::$core_name::$variant,)+
                })
            }
        }
    };
}

pub(super) use {record, words};

impl<T: Twin> Twin for Option<T> {
    type Core = Option<T::Core>;

    fn of(core: &Self::Core) -> Self {
        core.as_ref().map(T::of)
    }

    fn into_core(self) -> Result<Self::Core, Wrong> {
        self.map(T::into_core).transpose()
    }
}

impl<T: Twin> Twin for Box<T> {
    type Core = Box<T::Core>;

    fn of(core: &Self::Core) -> Self {
        Self::new(T::of(core))
    }

    fn into_core(self) -> Result<Self::Core, Wrong> {
        (*self).into_core().map(Box::new)
    }
}

impl<T: Twin> Twin for Vec<T> {
    type Core = Vec<T::Core>;

    fn of(core: &Self::Core) -> Self {
        core.iter().map(T::of).collect()
    }

    fn into_core(self) -> Result<Self::Core, Wrong> {
        let item =
            |(index, item): (usize, T)| item.into_core().map_err(|wrong| wrong.within_item(index));
        self.into_iter().enumerate().map(item).collect()
    }
}

/// What is its own twin.
macro_rules! itself {
    ($($name:ty),+) => {
        $(impl Twin for $name {
            type Core = $name;

            fn of(core: &$name) -> Self {
                *core
            }

            fn into_core(self) -> Result<$name, Wrong> {
                Ok(self)
            }
        })+
    };
}

itself!(bool, u8, u32);

/// A hole number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub(in crate::job_file) struct Hole(u16);

impl Twin for Hole {
    type Core = HoleNumber;

    fn of(core: &HoleNumber) -> Self {
        Self(core.get())
    }

    fn into_core(self) -> Result<HoleNumber, Wrong> {
        let range = gablerow_core::measure::range::HOLE_NUMBER;
        let number = range.check(i64::from(self.0)).map_err(Wrong::new)?;
        HoleNumber::new(number).map_err(Wrong::new)
    }
}

/// A stable name: of a cabinet in the job, of anything else in its cabinet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub(in crate::job_file) struct Key(u32);

impl Twin for Key {
    type Core = gablerow_core::job::Key;

    fn of(core: &Self::Core) -> Self {
        Self(core.0)
    }

    fn into_core(self) -> Result<Self::Core, Wrong> {
        Ok(gablerow_core::job::Key(self.0))
    }
}
