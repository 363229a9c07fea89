//! The mirror image of a cabinet: left and right change places, keys and heights stay.

use alloc::vec::Vec;

use super::{
    Bay, Cabinet, Copy, Division, FaceId, FrontKind, Opening, PanelId, SideBySide, Spacers, Stacked,
};

impl Cabinet {
    /// The cabinet as a mirrored copy is built. Twice is the cabinet itself.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        let mut mirror = self.clone();
        let sides = &mut mirror.carcass.sides;
        core::mem::swap(&mut sides.exposed_left, &mut sides.exposed_right);
        mirror.opening = self.opening.mirrored();
        mirror
            .free_rows
            .iter_mut()
            .for_each(|row| row.face = row.face.mirrored());
        mirror
            .free_holes
            .iter_mut()
            .for_each(|hole| hole.face = hole.face.mirrored());
        mirror
    }
}

impl Cabinet {
    /// The cabinet as one of its copies is built: itself, or its mirror image.
    #[must_use]
    pub fn built_as(&self, copy: &Copy) -> Self {
        if copy.mirrored {
            self.mirrored()
        } else {
            self.clone()
        }
    }
}

impl FaceId {
    /// The face that takes this one's place in the mirror image.
    #[must_use]
    pub fn mirrored(self) -> Self {
        let panel = match self.panel {
            PanelId::Side(hand) => PanelId::Side(hand.other()),
            partition @ PanelId::Partition(_) => partition,
        };
        Self {
            panel,
            toward: self.toward.other(),
        }
    }
}

impl Opening {
    fn mirrored(&self) -> Self {
        let mut mirror = self.clone();
        for front in &mut mirror.fronts {
            if let FrontKind::Door(hand) = &mut front.kind {
                *hand = hand.other();
            }
        }
        mirror.division = match &self.division {
            Division::Bay(bay) => Division::Bay(bay.mirrored()),
            Division::SideBySide(parts) => Division::SideBySide(parts.mirrored().into()),
            Division::Stacked(parts) => Division::Stacked(parts.mirrored().into()),
        };
        mirror
    }
}

impl Bay {
    fn mirrored(&self) -> Self {
        let mut mirror = self.clone();
        mirror
            .plates
            .iter_mut()
            .for_each(|plate| plate.wall = plate.wall.other());
        for runner in &mut mirror.runners {
            runner.spacers = Spacers {
                left: runner.spacers.right,
                right: runner.spacers.left,
            };
        }
        mirror
    }
}

impl SideBySide {
    fn mirrored(&self) -> Self {
        let mut parts = Vec::from([self.first.clone()]);
        let mut partitions = Vec::new();
        for (partition, part) in &self.rest {
            partitions.push(partition.clone());
            parts.push(part.clone());
        }
        parts
            .iter_mut()
            .for_each(|part| part.opening = part.opening.mirrored());
        parts.reverse();
        partitions.reverse();
        let mut parts = parts.into_iter();
        let first = parts.next().unwrap_or_else(|| self.first.clone());
        Self {
            first,
            rest: partitions.into_iter().zip(parts).collect(),
        }
    }
}

impl Stacked {
    fn mirrored(&self) -> Self {
        Self {
            first: self.first.mirrored(),
            rest: self
                .rest
                .iter()
                .map(|(shelf, opening)| (shelf.clone(), opening.mirrored()))
                .collect(),
        }
    }
}
