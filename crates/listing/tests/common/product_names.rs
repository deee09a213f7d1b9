//! The products that a document names, held against those that people expected.

use std::collections::BTreeSet;
use std::ops::AddAssign;

use listing::{Reading, Requirement};
use serde_json::Value;

/// How many names were expected and read, and how many with a maker nobody expected.
///
/// A name counts as read where a clause asks for it, quotation marks, capitals and the word "Type" before it aside. What may be used in some joints only
/// is left to a person, and so counts as not read.
#[derive(Debug, Default, Clone, Copy)]
pub(crate) struct Names {
    pub(crate) expected: usize,
    pub(crate) read: usize,
    pub(crate) with_maker: usize,
    pub(crate) wrong: usize,
}

impl Names {
    pub(crate) fn of(reading: &Reading, gold: &Value) -> Self {
        let compared = Compared::of(reading, gold);
        Self {
            expected: compared.expected.len(),
            read: compared.expected.len() - compared.unread().count(),
            with_maker: compared.with_maker.len(),
            wrong: compared.wrong().count(),
        }
    }
}

/// The names that people expect and those that were read.
pub(crate) struct Compared {
    expected: BTreeSet<String>,
    named: BTreeSet<String>,
    with_maker: BTreeSet<String>,
}

impl Compared {
    pub(crate) fn of(reading: &Reading, gold: &Value) -> Self {
        let products = gold["products"].as_array().into_iter().flatten();
        let expected = products
            .filter_map(|product| product["product"].as_str().or(product["name"].as_str()))
            .map(plain)
            .collect();
        let mut named = BTreeSet::new();
        let mut with_maker = BTreeSet::new();
        for clause in &reading.clauses {
            if let Requirement::Named { names } = &clause.requirement {
                named.extend(names.iter().map(|name| plain(&name.product)));
                let made = names.iter().filter(|name| !name.maker.is_empty());
                with_maker.extend(made.map(|name| plain(&name.product)));
            }
        }
        Self {
            expected,
            named,
            with_maker,
        }
    }

    /// The expected names that no clause asks for.
    pub(crate) fn unread(&self) -> impl Iterator<Item = &String> {
        self.expected.difference(&self.named)
    }

    /// The names with a maker that nobody expected.
    pub(crate) fn wrong(&self) -> impl Iterator<Item = &String> {
        self.with_maker.difference(&self.expected)
    }
}

impl AddAssign for Names {
    fn add_assign(&mut self, other: Self) {
        self.expected += other.expected;
        self.read += other.read;
        self.with_maker += other.with_maker;
        self.wrong += other.wrong;
    }
}

/// A name without what is only a matter of print.
fn plain(name: &str) -> String {
    let words = name.replace(['“', '”', '"', '„'], "").to_lowercase();
    let words = words.split_whitespace().collect::<Vec<_>>().join(" ");
    let words = words.trim_matches([' ', '.', ',', ';', '*', '\'', '‘', '’']);
    words.strip_prefix("type ").unwrap_or(words).to_owned()
}
