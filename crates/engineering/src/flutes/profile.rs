//! Profiles of steel deck.

use std::sync::LazyLock;

use measure::{Number, Quantity, Unit};
use serde::Deserialize;

use crate::error::Error;
use crate::exact::exact;
use crate::known::{Known, length_unit};

/// The cross-section of a ribbed deck.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Profile {
    /// Its letter or name.
    pub name: String,
    /// What it is called in words.
    pub title: String,
    /// From the underside of the ribs to the underside of the flat between them.
    pub depth: Quantity,
    /// From rib to rib.
    pub pitch: Quantity,
    /// The opening of a rib at the top of the deck.
    pub rib_top: Quantity,
    /// The width of a rib at its bottom.
    pub rib_bottom: Quantity,
    /// Where the dimensions come from.
    pub source: String,
}

#[derive(Deserialize)]
struct File {
    deck: Vec<Row>,
}

#[derive(Deserialize)]
struct Row {
    name: String,
    title: String,
    depth: String,
    pitch: String,
    rib_top: String,
    rib_bottom: String,
    source: String,
}

static PROFILES: LazyLock<Result<Vec<Profile>, Error>> = LazyLock::new(|| {
    let why = |why: toml::de::Error| Error::Table {
        table: "decks",
        why: why.to_string(),
    };
    let file: File = toml::from_str(include_str!("../../data/decks.toml")).map_err(why)?;
    file.deck.into_iter().map(Row::read).collect()
});

impl Row {
    fn read(self) -> Result<Profile, Error> {
        let length = |text: &str| Quantity::parse(text).map_err(|why| Error::table("decks", &why));
        Ok(Profile {
            depth: length(&self.depth)?,
            pitch: length(&self.pitch)?,
            rib_top: length(&self.rib_top)?,
            rib_bottom: length(&self.rib_bottom)?,
            name: self.name,
            title: self.title,
            source: self.source,
        })
    }
}

/// The common profiles, each with the source of its dimensions.
///
/// # Errors
/// Never, unless the table compiled in is damaged.
pub fn profiles() -> Result<&'static [Profile], Error> {
    PROFILES.as_deref().map_err(Clone::clone)
}

/// A common profile by its name, in capitals or not.
///
/// # Errors
/// When there is none of that name; the error names those there are.
pub fn named(name: &str) -> Result<&'static Profile, Error> {
    let all = profiles()?;
    let found = all
        .iter()
        .find(|profile| profile.name.eq_ignore_ascii_case(name.trim()));
    found.ok_or_else(|| {
        let known: Vec<&str> = all.iter().map(|profile| profile.name.as_str()).collect();
        Error::Unknown {
            what: "deck profile",
            name: name.to_owned(),
            known: known.join(", "),
        }
    })
}

/// A profile in numbers of one unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Section {
    pub(crate) unit: Unit,
    pub(crate) depth: Number,
    pub(crate) pitch: Number,
    /// The width of a void at the top, under the flat of the deck.
    pub(crate) top: Number,
    /// The width of a void at the bottom, between two ribs.
    pub(crate) bottom: Number,
    /// The area of a void, square to the ribs.
    pub(crate) area: Number,
}

impl Profile {
    /// The void between two ribs, in inches or millimetres as the depth is given.
    pub(crate) fn section(&self) -> Result<Section, Error> {
        let unit = length_unit(self.depth.unit);
        let above = |name: &str, quantity: Quantity| {
            Known::new(quantity, "").above_zero(&format!("the {name} of the deck"), unit)
        };
        let depth = above("depth", self.depth)?;
        let pitch = above("pitch", self.pitch)?;
        let rib_top = above("rib opening", self.rib_top)?;
        let rib_bottom = above("rib bottom", self.rib_bottom)?;
        for (name, rib, quantity) in [
            ("rib opening", rib_top, self.rib_top),
            ("rib bottom", rib_bottom, self.rib_bottom),
        ] {
            if rib >= pitch {
                let valid = format!("less than the pitch, {}", self.pitch);
                return Err(Error::range(
                    &format!("the {name} of the deck"),
                    quantity,
                    valid,
                ));
            }
        }
        let what = "the void under the deck";
        let top = (exact(pitch) - rib_top).get(what)?;
        let bottom = (exact(pitch) - rib_bottom).get(what)?;
        let area = (exact(depth) * (exact(top) + bottom) / 2).get(what)?;
        Ok(Section {
            unit,
            depth,
            pitch,
            top,
            bottom,
            area,
        })
    }
}
