//! Tables of makers and their products: `Part | Maker | Product`. Each row names what may be used.

use super::columns::{Columns, Row};
use super::heading::Heading;
use crate::clauses::named::{self, split_list};
use crate::clauses::{Around, Yield};
use crate::model::{Condition, Expr, ProductName};
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
            if names.is_empty() {
                continue;
            }
            let subject = self.subject(&others, &around.subject);
            let condition = self.condition(table, row);
            named::push_under(row.span, names, condition, around, &subject, found);
        }
    }

    /// What a row says besides: `Columns: 1 h, 2 h`. A name of a part, `all` or a dash says nothing.
    fn condition(&self, table: &Columns, row: &Row) -> Option<Condition> {
        let others = (0..table.headings.len())
            .filter(|index| *index != self.maker && *index != self.product);
        let words: Vec<String> = others
            .filter(|index| {
                !components_in(row.text(*index))
                    .iter()
                    .any(|(_, weak, _)| !weak)
            })
            .filter(|index| {
                !says_nothing(row.text(*index)) && *index > self.maker.min(self.product)
            })
            .filter_map(|index| {
                Some(format!(
                    "{}: {}",
                    table.headings.get(index)?.words,
                    row.text(index)
                ))
            })
            .collect();
        (!words.is_empty()).then(|| Condition {
            words: words.join("; "),
            span: row.span,
            expr: Expr::Words(words.join("; ")),
        })
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
            before: None,
        }
    }
}

/// Whether a cell leaves everything open: `all`, `any`, a dash.
fn says_nothing(words: &str) -> bool {
    !words.chars().any(char::is_alphanumeric)
        || ["all", "any"].contains(&words.to_lowercase().as_str())
}
