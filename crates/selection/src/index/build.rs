//! Building an index, a listing at a time.

use std::collections::BTreeMap;

use conformance::Checklist;
use conformance::points::{Placed, Point, Slot};

use super::likeness::{self, Likeness};
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
    /// A builder that begins with what an index holds, and its listings, each to be put back with [`keep`](Self::keep) or left out.
    ///
    /// # Errors
    /// When a point of it can't be encoded.
    pub fn again(mut before: Index) -> Result<(Self, Vec<Entry>), IndexError> {
        let mut builder = Self::default();
        for (at, name) in (0..).zip(&before.properties) {
            builder.properties.insert(name.clone(), at);
        }
        for ((at, point), about) in (0..).zip(&before.points).zip(&before.about) {
            let key = (encoded(point)?, about.property, about.cost);
            builder.points.insert(key, at);
        }
        let entries = core::mem::take(&mut before.entries);
        builder.index = before;
        Ok((builder, entries))
    }

    /// Puts a listing back after the others, as it was.
    pub fn keep(&mut self, entry: Entry) {
        self.index.entries.push(entry);
    }

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
            edition: reading.header.edition.clone(),
            likeness: Likeness::of(checklist)?,
            file: reading.source.name.clone(),
            sha256: reading.source.sha256.clone(),
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
        let encoded = encoded(&placed.point)?;
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

    /// The index. Points that no listing asks any more aren't in it.
    pub fn finish(self) -> Index {
        let mut index = self.index;
        let mut is_asked = vec![false; index.points.len()];
        for point in index.entries.iter_mut().flat_map(points_of) {
            if let Some(is_asked) = usize::try_from(*point)
                .ok()
                .and_then(|at| is_asked.get_mut(at))
            {
                *is_asked = true;
            }
        }
        if is_asked.contains(&false) {
            leave_out(&mut index, &is_asked);
        }
        index.apart = Apart::of(&index.points);
        index.gates = gates::of(&index.entries, &index.about);
        index.firsts = likeness::firsts(&index.entries);
        index
    }
}

/// What a point is known by.
fn encoded(point: &Point) -> Result<Vec<u8>, IndexError> {
    rmp_serde::to_vec_named(point).map_err(|_| IndexError::TooLarge)
}

/// The numbers of the points that a listing asks.
fn points_of(entry: &mut Entry) -> impl Iterator<Item = &mut u32> {
    let others = entry.others.iter_mut().map(|asked| &mut asked.point);
    entry.always.iter_mut().chain(others)
}

/// Leaves out points, and numbers the others anew.
fn leave_out(index: &mut Index, is_kept: &[bool]) {
    let mut next = 0;
    let mut numbers = Vec::with_capacity(is_kept.len());
    for is_kept in is_kept {
        numbers.push(next);
        next += u32::from(*is_kept);
    }
    for point in index.entries.iter_mut().flat_map(points_of) {
        let number = usize::try_from(*point).ok().and_then(|at| numbers.get(at));
        *point = number.copied().unwrap_or_default();
    }
    let mut kept = is_kept.iter();
    index.points.retain(|_| kept.next() == Some(&true));
    let mut kept = is_kept.iter();
    index.about.retain(|_| kept.next() == Some(&true));
}

#[cfg(test)]
mod tests {
    use conformance::Checklist;

    use super::{Builder, Index};

    const LISTINGS: [&str; 3] = [
        "System No. HW-D-1\n\n1. Floor - Min 4 in. thick concrete.\n\n2. Forming Material - Min 4 pcf mineral wool.\n",
        "System No. HW-D-2\n\n1. Floor - Min 5 in. thick concrete.\n\n2. Forming Material - Min 4 pcf mineral wool.\n",
        "System No. HW-D-3\n\n1. Floor - Min 6 in. thick concrete.\n",
    ];

    fn index(texts: &[&str]) -> Index {
        let mut builder = Builder::default();
        for text in texts {
            let reading = listing::read("a.txt", text.as_bytes()).unwrap();
            builder.add(&Checklist::of_draft(&reading)).unwrap();
        }
        builder.finish()
    }

    #[test]
    fn an_index_made_again_is_as_one_made_anew() {
        let [one, two, three] = LISTINGS;
        let (mut builder, entries) = Builder::again(index(&[one, two])).unwrap();
        let [first, _] = <[_; 2]>::try_from(entries).unwrap();
        builder.keep(first);
        let reading = listing::read("a.txt", three.as_bytes()).unwrap();
        builder.add(&Checklist::of_draft(&reading)).unwrap();
        let again = builder.finish();
        let anew = index(&[one, three]);
        assert_eq!(again.entries, anew.entries);
        assert_eq!(again.points, anew.points);
        assert_eq!(again.apart, anew.apart);
        // Of the second listing nothing is left.
        assert!(again.points.len() < index(&LISTINGS).points.len());
    }
}
