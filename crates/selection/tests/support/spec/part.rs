//! A part of the construction, as an item of a listing describes it.

use super::Product;
use super::statement::{Ask, Statement, When};

/// Whether a part is always there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Built {
    Always,
    /// In place of the part before it.
    InPlace,
    Optional,
}

/// A part of the construction.
#[derive(Debug, Clone)]
pub struct Part {
    /// Its component, as the vocabulary names it.
    pub component: &'static str,
    /// What an item on it is headed with.
    pub title: &'static str,
    /// What it is made of, in words.
    pub of: &'static str,
    pub built: Built,
    pub statements: Vec<Statement>,
    pub products: Vec<Product>,
    /// Sentences that only a person can answer.
    pub remarks: Vec<&'static str>,
    /// Parts described under it.
    pub within: Vec<Part>,
}

impl Part {
    pub const fn new(component: &'static str, title: &'static str, of: &'static str) -> Self {
        Self {
            component,
            title,
            of,
            built: Built::Always,
            statements: Vec::new(),
            products: Vec::new(),
            remarks: Vec::new(),
            within: Vec::new(),
        }
    }

    pub const fn built(mut self, built: Built) -> Self {
        self.built = built;
        self
    }

    pub fn asks(self, property: &'static str, ask: Ask) -> Self {
        self.asks_when(property, ask, When::Always)
    }

    pub fn asks_when(mut self, property: &'static str, ask: Ask, when: When) -> Self {
        self.statements.push(Statement {
            id: 0,
            property,
            ask,
            when,
        });
        self
    }

    pub fn made_by(mut self, products: Vec<Product>) -> Self {
        self.products = products;
        self
    }

    pub fn says(mut self, remarks: Vec<&'static str>) -> Self {
        self.remarks = remarks;
        self
    }

    pub fn with(mut self, part: Self) -> Self {
        self.within.push(part);
        self
    }

    /// Leaves one maker's products of each part.
    pub fn of_one_maker(parts: &mut [Self]) {
        for part in parts {
            if let Some((maker, _)) = part.products.first().copied() {
                part.products.retain(|(other, _)| *other == maker);
            }
            Self::of_one_maker(&mut part.within);
        }
    }

    /// Numbers the statements of a listing's parts, in their order.
    pub fn number(parts: &mut [Self], next: &mut usize) {
        for part in parts {
            for statement in &mut part.statements {
                statement.id = *next;
                *next += 1;
            }
            Self::number(&mut part.within, next);
        }
    }

    /// The part and those within it, in order.
    pub fn all(&self) -> Vec<&Self> {
        let mut all = vec![self];
        all.extend(self.within.iter().flat_map(Self::all));
        all
    }

    /// The part and those within it, in order, each with the place of the one that it would be built in place of: the one before it at
    /// its own depth.
    pub fn in_one_row(&self) -> Vec<(&Self, usize)> {
        let mut row = vec![(self, 0)];
        let mut beside = 0;
        for inner in &self.within {
            let at = row.len();
            let deeper = inner.in_one_row().into_iter();
            row.extend(deeper.map(|(part, replaced)| (part, replaced + at)));
            if let Some(first) = row.get_mut(at) {
                first.1 = beside;
            }
            beside = at;
        }
        row
    }

    /// What holds whatever else, property by property.
    pub fn always(&self) -> impl Iterator<Item = &Statement> {
        let always = |one: &&Statement| one.when == When::Always;
        self.statements.iter().filter(always)
    }

    /// What holds in some cases, those of one property together.
    pub fn by_case(&self) -> Vec<Vec<&Statement>> {
        let mut cases: Vec<Vec<&Statement>> = Vec::new();
        let by_case = |one: &&Statement| one.when != When::Always;
        for one in self.statements.iter().filter(by_case) {
            match cases.last_mut() {
                Some(last) if last[0].property == one.property => last.push(one),
                _ => cases.push(vec![one]),
            }
        }
        cases
    }
}
