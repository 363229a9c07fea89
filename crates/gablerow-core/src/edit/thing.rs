//! What a key names in a cabinet: an opening, a partition, a fixed shelf or a front, read or changed where it stands.

use crate::job::{Cabinet, Division, FixedShelf, Front, Key, Opening, Part, Partition};

/// Declares a finder: the things it finds and the way through the openings. Reading and changing take the same way.
macro_rules! finder {
    ($(#[$about:meta])* $thing:ident, $find:ident, $in_opening:ident, $in_part:ident, $iter:ident $(, $mut:ident)?) => {
        $(#[$about])*
        pub(crate) enum $thing<'a> {
            /// An opening, with its width where it is one of several side by side.
            Opening(&'a $($mut)? Opening, Option<&'a $($mut)? crate::job::PartWidth>),
            /// A partition.
            Partition(&'a $($mut)? Partition),
            /// A fixed shelf.
            Shelf(&'a $($mut)? FixedShelf),
            /// A front.
            Front(&'a $($mut)? Front),
        }

        /// The thing of a cabinet that has this key; `None` when no opening, divider or front has it.
        pub(crate) fn $find(cabinet: &$($mut)? Cabinet, key: Key) -> Option<$thing<'_>> {
            $in_opening(&$($mut)? cabinet.opening, None, key)
        }

        fn $in_part(part: &$($mut)? Part, key: Key) -> Option<$thing<'_>> {
            let Part { width, opening } = part;
            $in_opening(opening, Some(width), key)
        }

        fn $in_opening<'a>(
            opening: &'a $($mut)? Opening,
            width: Option<&'a $($mut)? crate::job::PartWidth>,
            key: Key,
        ) -> Option<$thing<'a>> {
            if opening.key == key {
                return Some($thing::Opening(opening, width));
            }
            let Opening { division, fronts, .. } = opening;
            let front = fronts.$iter().find(|front| front.key == key);
            if let Some(front) = front {
                return Some($thing::Front(front));
            }
            match division {
                Division::Bay(_) => None,
                Division::SideBySide(parts) => {
                    let crate::job::SideBySide { first, rest } = &$($mut)? **parts;
                    $in_part(first, key).or_else(|| {
                        rest.$iter().find_map(|(partition, part)| {
                            if partition.key == key {
                                Some($thing::Partition(partition))
                            } else {
                                $in_part(part, key)
                            }
                        })
                    })
                }
                Division::Stacked(parts) => {
                    let crate::job::Stacked { first, rest } = &$($mut)? **parts;
                    $in_opening(first, None, key).or_else(|| {
                        rest.$iter().find_map(|(shelf, opening)| {
                            if shelf.key == key {
                                Some($thing::Shelf(shelf))
                            } else {
                                $in_opening(opening, None, key)
                            }
                        })
                    })
                }
            }
        }
    };
}

finder! {
    /// Something of a cabinet, to be read.
    Thing, thing, in_opening, in_part, iter
}

finder! {
    /// Something of a cabinet, to be changed.
    ThingMut, thing_mut, in_opening_mut, in_part_mut, iter_mut, mut
}
