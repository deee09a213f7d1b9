//! Tables of makers and their products: `Part | Maker | Product`. Each row names what may be used.

use super::columns::{Columns, Row};
use super::heading::Heading;
use crate::clauses::draft::{Draft, local_property};
use crate::clauses::named::{self, split_list};
use crate::clauses::{Around, Yield};
use crate::model::{Confidence, ProductName, Requirement};
use crate::naming::{Subject, components_in};

/// The columns of makers and of products.
pub(super) struct Products {
    maker: usize,
    product: usize,
}

const MAKERS: &[&str] = &[
    "maker",
    "makers",
    "manufacturer",
    "manufacturers",
    "company",
    "producer",
    "supplier",
    "firm",
    "made by",
    "source",
];
const PRODUCTS: &[&str] = &[
    "product",
    "products",
    "product name",
    "name",
    "trade name",
    "designation",
    "product designation",
    "brand",
    "article",
];

/// The columns that name makers and products; none when a table has not both.
pub(super) fn columns(headings: &[Heading]) -> Option<Products> {
    let headed = |names: &[&str]| {
        headings.iter().position(|heading| {
            let words = heading.words.to_lowercase();
            names.contains(&words.as_str())
        })
    };
    Some(Products {
        maker: headed(MAKERS)?,
        product: headed(PRODUCTS)?,
    })
}

impl Products {
    /// Reads each row as the products that it names. A row without a maker goes on with that of the row above, one without a part with its part.
    pub(super) fn read(&self, table: &Columns, around: &Around, found: &mut Yield) {
        let mut maker = String::new();
        let mut others = vec![String::new(); table.headings.len()];
        for row in &table.rows {
            if !row.text(self.maker).is_empty() {
                row.text(self.maker).clone_into(&mut maker);
            }
            for (index, held) in others.iter_mut().enumerate() {
                if !row.text(index).is_empty() {
                    row.text(index).clone_into(held);
                }
            }
            let names = self.names(row, &maker);
            if names.is_empty() || self.is_excluded(row) {
                // A row that names no product may still say something, such as a remark on all of them.
                if let Some(words) = said(row) {
                    found.clauses.push(restricted(row, &words, around));
                }
                continue;
            }
            let subject = self.subject(&others, &around.subject);
            named::push(row.span, names, around, &subject, found);
            if let Some(restriction) = self.restriction(table, row) {
                if let Some(last) = found.clauses.last_mut() {
                    last.confidence = Confidence::WithDoubt;
                }
                found.clauses.push(restricted(row, &restriction, around));
            }
        }
    }

    /// Whether a cell takes the product of its row out of the list: `none (floors only)`, `not accepted`.
    fn is_excluded(&self, row: &Row) -> bool {
        const EXCLUDING: &[&str] = &["none", "no", "not", "excluded", "withdrawn", "never", "nil"];
        let mut others =
            (0..row.cells.len()).filter(|index| *index != self.maker && *index != self.product);
        others.any(|index| {
            let words = row.text(index).to_lowercase();
            let mut words = words.split(|c: char| !c.is_alphanumeric());
            let first = words.find(|word| !word.is_empty());
            // "No. 4" numbers something.
            let numbers = row.text(index).starts_with("No.");
            !numbers && first.is_some_and(|first| EXCLUDING.contains(&first))
        })
    }

    /// What a row says besides: `Columns: 1 h, 2 h`, `Ref: 2b only`. The plain name of a part, `all` or a dash says nothing.
    fn restriction(&self, table: &Columns, row: &Row) -> Option<String> {
        let others = (0..table.headings.len())
            .filter(|index| *index != self.maker && *index != self.product);
        let words: Vec<String> = others
            .filter(|index| !says_nothing(row.text(*index)) && !names_a_part(row.text(*index)))
            .filter_map(|index| {
                let heading = table.headings.get(index)?;
                Some(format!("{}: {}", heading.words, row.text(index)))
            })
            .collect();
        (!words.is_empty()).then(|| words.join("; "))
    }

    fn names(&self, row: &Row, maker: &str) -> Vec<ProductName> {
        split_list(row.text(self.product))
            .into_iter()
            .filter(|product| product.chars().any(char::is_alphanumeric))
            .map(|product| ProductName {
                maker: maker.to_owned(),
                product,
            })
            .collect()
    }

    /// What a row's products are: what its other cells name, or else what the table is about.
    fn subject(&self, cells: &[String], around: &Subject) -> Subject {
        let others = cells
            .iter()
            .enumerate()
            .filter(|(index, _)| *index != self.maker && *index != self.product);
        let words: Vec<&str> = others.map(|(_, words)| words.as_str()).collect();
        let title = words.join(" ");
        let titles: Vec<_> = components_in(&title)
            .into_iter()
            .map(|(component, ..)| (component, 0))
            .collect();
        if titles.is_empty() {
            return around.clone();
        }
        Subject {
            titles,
            title,
            ..Subject::default()
        }
    }
}

/// Whether a cell leaves everything open: `all`, `any`, a dash.
fn says_nothing(words: &str) -> bool {
    !words.chars().any(char::is_alphanumeric)
        || ["all", "any"].contains(&words.to_lowercase().as_str())
}

/// What a row says of its product besides the name, for a person to judge: a name that is restricted is never met by itself.
fn restricted(row: &Row, restriction: &str, around: &Around) -> Draft {
    Draft {
        span: row.span,
        property: local_property(&around.item, restriction),
        component: "product".to_owned(),
        attribute: restriction.to_lowercase(),
        requirement: Requirement::Prose,
        condition: None,
        options: around.options.clone(),
        read_by: vec!["left as words".to_owned()],
        confidence: Confidence::Prose,
    }
}

/// Whether a cell is the name of a part and nothing that would restrict it.
fn names_a_part(words: &str) -> bool {
    let lower = words.to_lowercase();
    let restricts = words.contains(|c: char| c.is_ascii_digit())
        || lower
            .split(|c: char| !c.is_alphanumeric())
            .any(|word| ["only", "not", "except", "with", "for"].contains(&word));
    !restricts && components_in(words).iter().any(|(_, weak, _)| !weak)
}

/// What the cells of a row say; none where they say nothing.
fn said(row: &Row) -> Option<String> {
    let cells: Vec<&str> = (0..row.cells.len())
        .map(|index| row.text(index))
        .filter(|words| !says_nothing(words))
        .collect();
    (!cells.is_empty()).then(|| cells.join(" "))
}
