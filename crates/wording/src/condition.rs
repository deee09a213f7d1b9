//! When a clause applies, in plain words.

use listing::{Expr, Relation, Test};
use measure::print;

use crate::clause::range;
use crate::text::{on_one_line, printable};

/// A condition in plain words: "assembly rating is 2 hr and joint width is more than 4 in. (102 mm)".
///
/// Words that no rule could turn into a test stand as the listing has them, in quotes.
pub fn condition(expr: &Expr) -> String {
    match expr {
        Expr::All(parts) => joined(parts, "and"),
        Expr::Any(parts) => one_of(parts).unwrap_or_else(|| joined(parts, "or")),
        Expr::Not(part) => format!("not ({})", condition(part)),
        Expr::Test(test) => self::test(test),
        Expr::Words(words) => format!("\u{201c}{}\u{201d}", on_one_line(words)),
    }
}

fn joined(parts: &[Expr], word: &str) -> String {
    let parts: Vec<String> = parts
        .iter()
        .map(|part| match part {
            Expr::All(_) | Expr::Any(_) => format!("({})", condition(part)),
            _ => condition(part),
        })
        .collect();
    parts.join(&format!(" {word} "))
}

/// Several values of one property: "assembly rating is 1 hr or 2 hr".
fn one_of(parts: &[Expr]) -> Option<String> {
    let mut values = Vec::new();
    let mut of: Option<&str> = None;
    for part in parts {
        let Expr::Test(Test {
            property,
            relation: Relation::Exactly,
            lo: Some(value),
            hi: None,
            ..
        }) = part
        else {
            return None;
        };
        if *of.get_or_insert(property) != property.as_str() {
            return None;
        }
        values.push(print::both(*value));
    }
    Some(format!("{} is {}", title(of?), values.join(" or ")))
}

/// A property's title as it stands within a sentence.
fn title(property: &str) -> String {
    let Some(known) = vocabulary::vocabulary().property(property) else {
        return printable(property);
    };
    let mut letters = known.title.chars();
    let first = letters.next();
    let rest = letters.as_str();
    // A title that begins with an abbreviation keeps its capitals.
    match first {
        Some(first) if rest.starts_with(char::is_lowercase) => {
            first.to_lowercase().chain(rest.chars()).collect()
        }
        _ => known.title.clone(),
    }
}

fn test(test: &Test) -> String {
    let subject = title(&test.property);
    match (test.lo, test.hi) {
        (Some(lo), Some(hi)) if test.lo_excluded => {
            format!("{subject} is over {}", range(lo, hi))
        }
        (Some(lo), Some(hi)) => format!("{subject} is {}", range(lo, hi)),
        (Some(one), None) | (None, Some(one)) => {
            let value = print::both(one);
            match test.relation {
                Relation::Exactly => format!("{subject} is {value}"),
                relation => format!("{subject} is {} {value}", relation.words()),
            }
        }
        (None, None) => subject,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use measure::Quantity;

    #[test]
    fn tests_and_words() {
        let width = Test {
            property: "joint.width".to_owned(),
            relation: Relation::MoreThan,
            lo: Some(Quantity::parse("4 in.").unwrap()),
            hi: None,
            lo_excluded: false,
        };
        let words = Expr::Words("the floor\nis  sloped".to_owned());
        let both = Expr::Test(width).and(Expr::Not(Box::new(words)));
        assert_eq!(
            condition(&both),
            "joint width is more than 4 in. (101.6 mm) and not (\u{201c}the floor is sloped\u{201d})"
        );
        let rating = |hours| {
            Expr::Test(Test {
                property: "joint.rating".to_owned(),
                relation: Relation::Exactly,
                lo: Some(Quantity::parse(hours).unwrap()),
                hi: None,
                lo_excluded: false,
            })
        };
        assert_eq!(
            condition(&Expr::Any(vec![rating("1 hr"), rating("2 hr")])),
            "joint assembly rating is 1 hr or 2 hr"
        );
    }
}
