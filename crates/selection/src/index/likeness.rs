//! Which listings of a library come to the same at any joint.
//!
//! Many listings of one library differ in their designation, edition and file alone. What one of them comes to at a joint the others do, as long
//! as nobody has decided anything of one by its name; so one of them is checked for all.

use std::collections::BTreeMap;

use conformance::{Checklist, Standing};
use listing::{Accounted, Clause, Expr, Header, Item, OptionGroup, Reading, Source};
use serde::Serialize;
use sha2::{Digest, Sha256};
use vocabulary::Designation;

use super::{Entry, IndexError};

/// All of a listing but what only tells which one it is, as SHA-256: words and places count too, so that what is said of one
/// can be said of the other.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
pub(crate) struct Likeness(#[serde(with = "serde_bytes")] Vec<u8>);

/// What counts. A reading shows its conditions' expressions as text only, so that they stand beside it.
#[derive(Serialize)]
struct WhatCounts<'r> {
    standing: Standing,
    header: Header,
    items: &'r [Item],
    options: &'r [OptionGroup],
    clauses: Vec<Clause>,
    conditions: Vec<Option<&'r Expr>>,
}

impl Likeness {
    pub(super) fn of(checklist: &Checklist<'_>) -> Result<Self, IndexError> {
        // Named one by one, so that whatever a reading holds besides must be thought of here.
        let Reading {
            source:
                Source {
                    name: _,
                    sha256: _,
                    bytes: _,
                    pages: _,
                },
            header,
            items,
            options,
            clauses,
            places: _,
            accounted: Accounted { bytes: _, of: _ },
            warnings: _,
        } = checklist.reading();
        let unread = |clause: &Clause| Clause {
            read_by: Vec::new(),
            ..clause.clone()
        };
        let condition = |clause| {
            let clause: &Clause = clause;
            Some(&clause.condition.as_ref()?.expr)
        };
        let counts = WhatCounts {
            standing: checklist.standing(),
            header: Header {
                title: String::new(),
                designation: convention(&header.designation),
                edition: String::new(),
                ..header.clone()
            },
            items,
            options,
            clauses: clauses.iter().map(unread).collect(),
            conditions: clauses.iter().map(condition).collect(),
        };
        let bytes = rmp_serde::to_vec_named(&counts).map_err(|_| IndexError::TooLarge)?;
        Ok(Self(Sha256::digest(&bytes).to_vec()))
    }
}

/// What a designation says of kind, motion and width: of its number only the thousands do.
fn convention(designation: &str) -> String {
    let read = Designation::parse_decorated(designation.trim());
    let only_thousands = |read: Designation| Designation {
        number: read.number / 1000 * 1000,
        ..read
    };
    read.map(|(_, read)| only_thousands(read).to_string())
        .unwrap_or_default()
}

/// For each listing the place of the first that comes to the same.
pub(super) fn firsts(entries: &[Entry]) -> Vec<usize> {
    let mut known: BTreeMap<&Likeness, usize> = BTreeMap::new();
    let each = entries.iter().enumerate();
    each.map(|(at, entry)| *known.entry(&entry.likeness).or_insert(at))
        .collect()
}
