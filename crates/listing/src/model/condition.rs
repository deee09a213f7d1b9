//! When a clause applies.

use core::fmt;

use measure::Quantity;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::requirement::Relation;
use super::span::Span;

/// When a clause applies: "for the 2 h rating", "where the joint is wider than 4 in.".
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Condition {
    /// The words of the listing.
    pub words: String,
    /// Where they stand.
    pub span: Span,
    /// Where the rest of them stands, of a condition in several places: that of the paragraph, then that of the sentence.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub also: Vec<Span>,
    /// The condition in a form that can be tested, as text.
    #[serde(with = "expr_as_text")]
    #[schemars(with = "String")]
    pub expr: Expr,
}

impl Condition {
    /// Everywhere that its words stand.
    pub fn spans(&self) -> impl Iterator<Item = Span> + '_ {
        core::iter::once(self.span).chain(self.also.iter().copied())
    }

    /// Both hold: this one, said farther out, and the other.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        let mut also = self.also;
        also.push(other.span);
        also.extend(other.also);
        Self {
            words: format!("{}; {}", self.words, other.words),
            span: self.span,
            also,
            expr: self.expr.and(other.expr),
        }
    }

    /// The same without brackets that are opened and never closed: "(width over 4 in." of words that go on behind it.
    #[must_use]
    pub(crate) fn without_open_brackets(self) -> Self {
        Self {
            words: closed(&self.words),
            expr: self.expr.without_open_brackets(),
            ..self
        }
    }
}

/// Words without brackets that are opened and never closed.
fn closed(words: &str) -> String {
    let mut open = Vec::new();
    for (at, c) in words.char_indices() {
        match c {
            '(' => open.push(at),
            ')' => drop(open.pop()),
            _ => {}
        }
    }
    let kept = words.char_indices().filter(|(at, _)| !open.contains(at));
    kept.map(|(_, c)| c).collect()
}

/// A condition that can be tested against facts. Where a condition is shown it stands as text, which no program reads back;
/// a program that keeps a reading keeps the expression itself.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum Expr {
    /// Every part holds.
    All(Vec<Expr>),
    /// At least one part holds.
    Any(Vec<Expr>),
    /// The part doesn't hold: the rest of "except that".
    Not(Box<Expr>),
    /// A property compared with a value.
    Test(Test),
    /// Words that no rule could turn into a test; only a person can say whether they hold.
    Words(String),
}

/// A property compared with a value.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Test {
    /// The property, as `joint.width`.
    pub property: String,
    /// How it is compared: any relation but nominal and about.
    pub relation: Relation,
    /// The low or the only value.
    pub lo: Option<Quantity>,
    /// The high value.
    pub hi: Option<Quantity>,
    /// Whether the low value itself is excluded.
    pub lo_excluded: bool,
}

impl Expr {
    /// Whether it tests the joint's rating, and nothing besides.
    pub(crate) fn is_of_rating(&self) -> bool {
        matches!(self, Self::Test(test) if test.property == "joint.rating")
    }

    fn without_open_brackets(self) -> Self {
        let all = |parts: Vec<Self>| parts.into_iter().map(Self::without_open_brackets).collect();
        match self {
            Self::All(parts) => Self::All(all(parts)),
            Self::Any(parts) => Self::Any(all(parts)),
            Self::Not(part) => Self::Not(Box::new(part.without_open_brackets())),
            Self::Words(words) => Self::Words(closed(&words)),
            test @ Self::Test(_) => test,
        }
    }

    /// Both hold, without nesting needlessly.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        match (self, other) {
            (Self::All(mut parts), Self::All(more)) => {
                parts.extend(more);
                Self::All(parts)
            }
            (Self::All(mut parts), other) => {
                parts.push(other);
                Self::All(parts)
            }
            (first, other) => Self::All(vec![first, other]),
        }
    }
}

impl fmt::Display for Expr {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let joined = |f: &mut fmt::Formatter<'_>, parts: &[Self], word: &str| {
            for (index, part) in parts.iter().enumerate() {
                if index > 0 {
                    write!(f, " {word} ")?;
                }
                match part {
                    Self::All(_) | Self::Any(_) => write!(f, "({part})")?,
                    _ => write!(f, "{part}")?,
                }
            }
            Ok(())
        };
        match self {
            Self::All(parts) => joined(f, parts, "and"),
            Self::Any(parts) => joined(f, parts, "or"),
            Self::Not(part) => write!(f, "not ({part})"),
            Self::Test(test) => write!(f, "{test}"),
            Self::Words(words) => write!(f, "\"{words}\""),
        }
    }
}

impl fmt::Display for Test {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let property = &self.property;
        let sign = match self.relation {
            Relation::AtLeast => ">=",
            Relation::AtMost => "<=",
            Relation::LessThan => "<",
            Relation::MoreThan => ">",
            _ => "=",
        };
        match (self.lo, self.hi) {
            (Some(lo), Some(hi)) => {
                let from = if self.lo_excluded { "over" } else { "from" };
                write!(f, "{property} {from} {lo} to {hi}")
            }
            (Some(one), None) | (None, Some(one)) => write!(f, "{property} {sign} {one}"),
            (None, None) => write!(f, "{property}"),
        }
    }
}

mod expr_as_text {
    use serde::{Deserialize, Deserializer, Serializer};

    use super::Expr;

    pub(super) fn serialize<S: Serializer>(expr: &Expr, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(expr)
    }

    /// What comes back from text is words: a condition is only ever testable as it was read.
    pub(super) fn deserialize<'de, D: Deserializer<'de>>(
        deserializer: D,
    ) -> Result<Expr, D::Error> {
        String::deserialize(deserializer).map(Expr::Words)
    }
}
