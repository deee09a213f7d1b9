//! Building an index, a listing at a time.

use std::collections::BTreeMap;

use conformance::Checklist;
use conformance::points::{Placed, Slot};

use super::{About, Apart, Asked, Entry, Index, IndexError, gates};
use crate::cost::{Cost, is_asked_of_the_building};

/// An index in the making.
#[derive(Debug, Default)]
pub struct Builder {
    index: Index,
    /// Where each point is, by what it encodes to and what it is about.
    points: BTreeMap<(Vec<u8>, u32, Cost), u32>,
    properties: BTreeMap<String, u32>,
}

impl Builder {
    /// Adds a listing after the others.
    ///
    /// # Errors
    /// When there are more points than an index can hold.
    pub fn add(&mut self, checklist: &Checklist<'_>) -> Result<(), IndexError> {
        let points = checklist.points();
        let (mut always, mut others) = (Vec::new(), Vec::new());
        for placed in points.placed {
            let (slot, is_parted, tells) = (placed.slot, placed.is_parted, placed.tells);
            let point = self.point(placed)?;
            if slot == Slot::Always && !is_parted {
                always.push(point);
            } else {
                others.push(Asked {
                    point,
                    slot,
                    is_parted,
                    tells,
                });
            }
        }
        let reading = checklist.reading();
        self.index.entries.push(Entry {
            designation: reading.header.designation.clone(),
            file: reading.source.name.clone(),
            standing: checklist.standing(),
            may_ask_more: points.may_ask_more,
            choices: points.choices,
            always,
            others,
        });
        Ok(())
    }

    fn point(&mut self, placed: Placed) -> Result<u32, IndexError> {
        let property = self.property(&placed.property)?;
        let encoded = rmp_serde::to_vec_named(&placed.point).map_err(|_| IndexError::TooLarge)?;
        let next = u32::try_from(self.index.points.len()).map_err(|_| IndexError::TooLarge)?;
        let cost = Cost::of(&placed.property, placed.trade);
        let key = (encoded, property, cost);
        let at = *self.points.entry(key).or_insert(next);
        if at == next {
            self.index.points.push(placed.point);
            self.index.about.push(About {
                property,
                cost,
                of_the_building: is_asked_of_the_building(&placed.property),
            });
        }
        Ok(at)
    }

    fn property(&mut self, name: &str) -> Result<u32, IndexError> {
        if let Some(at) = self.properties.get(name) {
            return Ok(*at);
        }
        let next = u32::try_from(self.properties.len()).map_err(|_| IndexError::TooLarge)?;
        self.properties.insert(name.to_owned(), next);
        self.index.properties.push(name.to_owned());
        Ok(next)
    }

    /// The index.
    pub fn finish(self) -> Index {
        Index {
            apart: Apart::of(&self.index.points),
            gates: gates::of(&self.index.entries, &self.index.about),
            ..self.index
        }
    }
}
