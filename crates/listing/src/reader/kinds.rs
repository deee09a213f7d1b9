//! Kinds of a joint that a document sets side by side, "System A" and "System B", "Seal Type 1" and "Seal Type 2": a joint is of one of them, so they are the
//! choices of one group, and what is said of one is asked of no other.
//!
//! A kind counts where something stands under its name, and something else under another of the sort. Words that only may name a thing that is added
//! ("Option S: brackets") are a choice of one where the document says so, and words for a person elsewhere; so is a sort of which both
//! are built. What it would misread: two methods that one joint has both of, where nothing says it.

use std::collections::{BTreeMap, BTreeSet};

use crate::clauses::Draft;
use crate::conditions::{OF_WHAT, is_small_word};
use crate::model::{Condition, Expr};

/// A joint is of one configuration, whatever is said of all of them.
const CONFIGURATION: &str = "configuration";

/// Words for kinds of which a joint is of one.
const EXCLUSIVE: [&str; 10] = [
    CONFIGURATION,
    "system",
    "type",
    "variant",
    "variation",
    "version",
    "method",
    "execution",
    "assembly",
    "construction",
];

/// Words for what is one of several, or is added.
const OFFERED: [&str; 4] = ["option", "alternate", "alternative", "choice"];

/// Words that lead to a kind: "for Type A".
const LEADS: [&str; 7] = ["in", "for", "with", "under", "at", "on", "of"];

/// Kinds of one sort as words name them: any one of the labels.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Named {
    /// The sort, in small letters: "seal type".
    sort: String,
    labels: Vec<String>,
    /// Whether it stands as a name alone, and not in "for Type A".
    heads: bool,
}

/// The kinds of which a document's joint is of one.
#[derive(Debug, Default)]
pub(super) struct Kinds(BTreeSet<(String, String)>);

impl Kinds {
    /// The kinds that head clauses of a document.
    pub(super) fn of<'d>(text: &str, drafts: impl Iterator<Item = &'d Draft>) -> Self {
        let mut heading: BTreeSet<(String, String)> = BTreeSet::new();
        for draft in drafts {
            let parts = draft.condition.iter().flat_map(parts);
            for named in parts.filter_map(named).filter(|named| named.heads) {
                for label in named.labels {
                    heading.insert((named.sort.clone(), label));
                }
            }
        }
        let flowing = text
            .split_whitespace()
            .collect::<Vec<_>>()
            .join(" ")
            .to_lowercase();
        let mut of_sort: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
        for (sort, label) in &heading {
            of_sort.entry(sort).or_default().push(label);
        }
        of_sort.retain(|sort, labels| labels.len() > 1 && is_of_one(sort, labels, &flowing));
        let counts = |(sort, _): &&(String, String)| of_sort.contains_key(sort.as_str());
        Self(heading.iter().filter(counts).cloned().collect())
    }

    /// The kinds' names, each with its sort.
    pub(super) fn names(&self) -> impl Iterator<Item = String> {
        self.0.iter().map(|(sort, label)| name(sort, label))
    }

    /// Makes an option of the kind that a clause's condition names.
    pub(super) fn choose(&self, draft: &mut Draft) {
        let Some(condition) = draft.condition.take() else {
            return;
        };
        let is_chosen = |part: &Expr| {
            named(part).filter(|named| {
                let known = |label: &String| self.0.contains(&(named.sort.clone(), label.clone()));
                named.labels.iter().all(known)
            })
        };
        for named in parts(&condition).filter_map(is_chosen) {
            let names: Vec<String> = named
                .labels
                .iter()
                .map(|label| name(&named.sort, label))
                .collect();
            let names = names.join(" or ");
            if !draft.options.contains(&names) {
                draft.options.push(names);
            }
        }
        draft.condition = without(condition, |part| is_chosen(part).is_some());
    }
}

/// "Seal Type 1", of "seal type" and "1".
fn name(sort: &str, label: &str) -> String {
    let words = sort.split(' ').map(|word| {
        let (first, rest) = word.split_at(1.min(word.len()));
        first.to_uppercase() + rest
    });
    words
        .chain([label.to_owned()])
        .collect::<Vec<_>>()
        .join(" ")
}

/// Whether a joint is of one kind of a sort only: by what the sort is called, and by what the document says.
fn is_of_one(sort: &str, labels: &[&str], flowing: &str) -> bool {
    let says = |words: String| {
        let mut places = flowing.match_indices(&words);
        places.any(|(at, _)| {
            let before = flowing.get(..at).unwrap_or_default();
            !before.ends_with(char::is_alphanumeric)
        })
    };
    let both = ["both", "all", "together with", "in addition to"]
        .iter()
        .any(|all| says(format!("{all} {sort}")));
    let between_walls = sort.starts_with("wall")
        && ["wall-to-wall", "wall to wall", " ww-"]
            .iter()
            .any(|walls| flowing.contains(walls));
    if sort == CONFIGURATION {
        return true;
    }
    if both || between_walls {
        return false;
    }
    let word = sort.rsplit(' ').next().unwrap_or_default();
    let chosen = [
        format!("one of the {word}s"),
        format!("one of the following {word}s"),
        format!("one {word}"),
        format!("either {word}"),
    ];
    let chosen = chosen.into_iter().any(says);
    chosen || EXCLUSIVE.contains(&word) && !are_built_together(sort, labels, flowing)
}

/// Whether a joint has two kinds at once: "Type A wall at one side *and Type B* wall at the other", "Method 1 is *followed by Method 2*".
fn are_built_together(sort: &str, labels: &[&str], flowing: &str) -> bool {
    const JOINING: [&str; 7] = [
        "and",
        "and a",
        "and the",
        "plus",
        "then",
        "followed by",
        "over",
    ];
    let sorts = format!(" {sort} ");
    let mut places = flowing.match_indices(&sorts);
    places.any(|(at, _)| {
        let before = flowing.get(..at).unwrap_or_default();
        let behind = flowing.get(at + sorts.len()..).unwrap_or_default();
        let joined = JOINING.iter().any(|word| {
            let before = before.strip_suffix(word);
            before.is_some_and(|before| before.ends_with(' '))
        });
        joined
            && labels.iter().any(|label| {
                let rest = behind.strip_prefix(label.to_lowercase().as_str());
                rest.is_some_and(|rest| !rest.starts_with(char::is_alphanumeric))
            })
    })
}

/// The parts of a condition of which all must hold.
fn parts(condition: &Condition) -> impl Iterator<Item = &Expr> {
    match &condition.expr {
        Expr::All(parts) => parts.iter(),
        one => core::slice::from_ref(one).iter(),
    }
}

/// What is left of a condition without some of its parts, which must each be one of its places.
fn without(condition: Condition, leave: impl Fn(&Expr) -> bool) -> Option<Condition> {
    let keep: Vec<bool> = parts(&condition).map(|part| !leave(part)).collect();
    if !keep.contains(&false) {
        return Some(condition);
    }
    let kept = |at: usize| keep.get(at).copied().unwrap_or(true);
    let mut spans = condition.spans().enumerate();
    let words: Vec<&str> = condition.words.split("; ").collect();
    let told_apart = words.len() == keep.len() && condition.also.len() + 1 == keep.len();
    let (words, mut spans) = if told_apart {
        let words = words.iter().enumerate().filter(|(at, _)| kept(*at));
        let words: Vec<&str> = words.map(|(_, words)| *words).collect();
        let spans: Vec<_> = spans.filter(|(at, _)| kept(*at)).collect();
        (words.join("; "), spans.into_iter())
    } else {
        let spans: Vec<_> = spans.by_ref().collect();
        (condition.words.clone(), spans.into_iter())
    };
    let left = parts(&condition).enumerate().filter(|(at, _)| kept(*at));
    let expr = left.map(|(_, part)| part.clone()).reduce(Expr::and)?;
    let (_, span) = spans.next()?;
    Some(Condition {
        words,
        span,
        also: spans.map(|(_, span)| span).collect(),
        expr,
    })
}

/// The kinds that words name and nothing else: "for Wall Types 1 and 3", "DETAIL A", "Type B only".
fn named(part: &Expr) -> Option<Named> {
    let Expr::Words(words) = part else {
        return None;
    };
    let mut words = words
        .split([' ', ',', '\n', '\u{a0}'])
        .filter(|word| !word.is_empty())
        .peekable();
    let is_lead = |word: &&str| LEADS.contains(&word.to_lowercase().as_str());
    let heads = words.next_if(is_lead).is_none();
    let mut sort: Vec<String> = Vec::new();
    let of_what = |word: &&str| OF_WHAT.contains(&word.to_lowercase().as_str());
    let mut held = words.next_if(of_what).map(str::to_lowercase);
    let noun = words.next_if(|word| is_sort(word));
    match (held.take(), noun) {
        (before, Some(noun)) => {
            sort.extend(before);
            sort.push(singular(noun));
        }
        // "Assembly A" and "Alternate 1" have no other word.
        (Some(alone), None) if is_sort(&alone) => sort.push(alone),
        _ => return None,
    }
    let mut labels = Vec::new();
    loop {
        labels.push(words.next().and_then(label)?);
        if words
            .next_if(|word| matches!(*word, "and" | "or" | "&"))
            .is_none()
            && words.peek().is_none_or(|word| label(word).is_none())
        {
            break;
        }
    }
    let _ = words.next_if(|word| matches!(*word, "walls" | "wall" | "joints" | "seals"));
    let _ = words.next_if_eq(&"only");
    words.next().is_none().then(|| Named {
        sort: sort.join(" "),
        labels,
        heads,
    })
}

fn singular(word: &str) -> String {
    let word = word.to_lowercase();
    match word.as_str() {
        "assemblies" => "assembly".to_owned(),
        _ => word.strip_suffix('s').unwrap_or(&word).to_owned(),
    }
}

fn is_sort(word: &str) -> bool {
    let word = singular(word);
    EXCLUSIVE.iter().chain(&OFFERED).any(|sort| *sort == word)
}

/// `A`, `1`, `HW`, `S2`, `III`: the label of a kind.
fn label(word: &str) -> Option<String> {
    const LONGEST: usize = 4;
    let word = word.trim_end_matches(['.', ':']);
    let short = (1..=LONGEST).contains(&word.len());
    let plain = word
        .chars()
        .all(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '/'));
    let begins = word.starts_with(|c: char| c.is_ascii_uppercase() || c.is_ascii_digit());
    (short && plain && begins && !is_small_word(word)).then(|| word.to_owned())
}
