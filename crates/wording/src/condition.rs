//! When a clause applies, in plain words.

use listing::{Expr, Relation, Test};
use measure::print;

use crate::clause::range;
use crate::text::{on_one_line, printable};

/// A condition in plain words: "assembly rating is 2 hr and joint width is more than 4 in. (102 mm)".
///
/// Words that no rule could turn into a test stand as the listing has them, in quotes.
pub fn condition(expr: &Expr) -> String {
    shown(expr, "")
}

/// A condition with something said behind the words that are quoted.
fn shown(expr: &Expr, behind: &str) -> String {
    match expr {
        Expr::All(parts) => joined(parts, "and", behind),
        Expr::Any(parts) => one_of(parts).unwrap_or_else(|| joined(parts, "or", behind)),
        Expr::Not(part) => format!("not ({})", shown(part, behind)),
        Expr::Test(test) => self::test(test),
        Expr::Words(words) => format!("\u{201c}{}\u{201d}{behind}", on_one_line(words)),
    }
}

/// When a clause applies: "when joint width is more than 4 in. (101.6 mm)".
///
/// Words that no rule could turn into a test are quoted, without another "when" before theirs, and said to be a person's to decide.
pub fn applies(expr: &Expr) -> String {
    let words = shown(expr, " (a person decides)");
    match expr {
        Expr::Words(said) if says_when(said) => words,
        _ => format!("when {words}"),
    }
}

/// The words that a condition of a listing begins with.
const LEADING: &[&str] = &[
    "when",
    "whenever",
    "where",
    "wherever",
    "if",
    "unless",
    "except",
    "only",
    "provided",
    "for",
    "in",
    "on",
    "at",
    "as",
    "with",
    "within",
    "without",
    "while",
    "until",
    "before",
    "after",
    "between",
    "above",
    "below",
    "over",
    "under",
    "other",
    "otherwise",
];

/// Whether words say by themselves that they are a condition.
fn says_when(words: &str) -> bool {
    let first = words
        .split(|c: char| !c.is_alphanumeric())
        .find(|word| !word.is_empty());
    first.is_some_and(|first| LEADING.contains(&first.to_lowercase().as_str()))
}

fn joined(parts: &[Expr], word: &str, behind: &str) -> String {
    let parts: Vec<String> = parts
        .iter()
        .map(|part| match part {
            Expr::All(_) | Expr::Any(_) => format!("({})", shown(part, behind)),
            _ => shown(part, behind),
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
    fn words_of_the_listing_say_once_that_they_are_a_condition() {
        let words = |words: &str| applies(&Expr::Words(words.to_owned()));
        assert_eq!(
            words("Where there\n  are two"),
            "\u{201c}Where there are two\u{201d} (a person decides)"
        );
        assert_eq!(
            words("or a max"),
            "when \u{201c}or a max\u{201d} (a person decides)"
        );
        let rating = Expr::Test(Test {
            property: "joint.rating".to_owned(),
            relation: Relation::Exactly,
            lo: Some(Quantity::parse("2 hr").unwrap()),
            hi: None,
            lo_excluded: false,
        });
        assert_eq!(applies(&rating), "when joint assembly rating is 2 hr");
        assert_eq!(
            applies(&rating.and(Expr::Words("if exposed".to_owned()))),
            "when joint assembly rating is 2 hr and \u{201c}if exposed\u{201d} (a person decides)"
        );
    }

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
