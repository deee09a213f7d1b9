//! Things that a text speaks of for the first time under a condition: "In joints over 75 mm, Z-clips of 1.2 mm steel carry the packing. Each clip
//! has two anchors." What is said of them after it holds under that condition, too, for there are none where it fails.
//!
//! A thing counts as introduced where its word stands in the document for the first time there. A later sentence of the same paragraph speaks of it
//! when its subject does: "Each clip", "The clips". "The packing is compressed 25 percent" speaks of something else and holds always, whatever
//! stood before it. A sentence that begins with "They" or "Each" may speak of something else in the sentence before: for that a person must say whether
//! the condition holds. The end of the paragraph ends it.
//!
//! What it would misread: a thing that a drawing shows in every joint and that the text names only where it speaks of wide ones.

use std::collections::BTreeMap;

use super::Around;
use super::elliptic::Before;
use super::sorts::Sorts;
use crate::conditions::{Found, brings, goes_on_about, is_offer, only_measures};
use crate::model::{Condition, Expr, Relation, Test};
use crate::rules::Sentence;

/// Where in a document each word stands first.
#[derive(Debug, Default)]
pub(crate) struct FirstSaid(BTreeMap<String, usize>);

impl FirstSaid {
    pub(crate) fn of(source: &str) -> Self {
        let mut first = BTreeMap::new();
        let mut start = None;
        let ends = core::iter::once((source.len(), ' '));
        for (at, c) in source.char_indices().chain(ends) {
            match (start, c.is_alphabetic()) {
                (None, true) => start = Some(at),
                (Some(from), false) => {
                    let word = source.get(from..at).unwrap_or_default().to_lowercase();
                    first.entry(stem(&word).to_owned()).or_insert(from);
                    start = None;
                }
                _ => {}
            }
        }
        Self(first)
    }
}

/// A word without the ending of its plural.
fn stem(word: &str) -> &str {
    if word.len() > 3 && !word.ends_with("ss") {
        word.strip_suffix('s').unwrap_or(word)
    } else {
        word
    }
}

/// The word of a thing at a token: `bracket` of "Z-brackets".
fn thing<'a>(sentence: &Sentence<'a>, at: usize) -> &'a str {
    let word = sentence.word(at);
    stem(word.rsplit('-').next().unwrap_or(word))
}

/// What a paragraph has spoken of under a condition so far.
#[derive(Debug, Default)]
pub(super) struct Introduced {
    things: Vec<(String, Condition)>,
    /// The condition of the sentence before.
    last: Option<Condition>,
    /// The last case that the sentence before spoke of.
    case: Option<Condition>,
    /// Whether a sentence was taken in.
    begun: bool,
    sorts: Sorts,
    /// What the sentence before asked for.
    pub(super) before: Before,
    /// The condition under which the item was brought in, and the words for what was.
    brought: Option<Condition>,
    thing: String,
    /// Whether the item has named a thing with legs that every joint has.
    has_legs: bool,
}

impl Introduced {
    /// The condition that a sentence stands under because of what it speaks of.
    pub(super) fn governs(&self, sentence: &Sentence<'_>, own: &[Found]) -> Option<Condition> {
        const SUBJECT: usize = 4;
        if super::draft::holds_always(sentence.text) {
            return None;
        }
        let spoken_of = (0..SUBJECT)
            .take_while(|at| leads_to_subject(sentence, *at))
            .count();
        let subject = (spoken_of..spoken_of + 2).find_map(|at| {
            let word = thing(sentence, at);
            let own = self.things.iter().find(|(held, _)| held == word);
            own.filter(|_| ends_subject(sentence, at + 1) || is_measure(sentence, at + 1))
        });
        let subject = subject.or_else(|| self.part_of_thing(sentence, spoken_of));
        if let Some((_, condition)) = subject {
            return Some(condition.clone());
        }
        if let Some(case) = self.case_spoken_of(sentence) {
            return Some(case);
        }
        if let Some(brought) = self.brought.as_ref().filter(|_| only_measures(sentence)) {
            return Some(brought.clone());
        }
        if let Some(sort) = self.sorts.governs(sentence) {
            return Some(sort);
        }
        let pronoun = sentence.is_any(0, &["they", "these", "each", "it"])
            && sentence.is_any(1, &["is", "are", "shall", "must", "has", "have"])
            || sentence.is_any(0, &["their", "its"])
            || own.is_empty()
                && !self.things.is_empty()
                && !self.has_legs
                && begins_with_leg(sentence, spoken_of);
        let last = self.last.clone().filter(|_| pronoun);
        let last = last.map(|condition| Condition {
            expr: Expr::Words(condition.words.clone()),
            ..condition
        });
        let goes_on = || own.is_empty() && goes_on_about(sentence, &self.thing);
        last.or_else(|| self.brought.clone().filter(|_| goes_on()))
    }

    /// The thing whose part a sentence begins with: "Upper leg of clip 38 mm on the slab", "Anchors of the plate are 6 mm in diameter".
    fn part_of_thing(&self, sentence: &Sentence<'_>, first: usize) -> Option<&(String, Condition)> {
        const LONGEST: usize = 3;
        let of = (first + 1..=first + LONGEST).find(|at| sentence.is_word(*at, "of"))?;
        let plain = |at: usize| sentence.has_word(at) && sentence.amount_at(at).is_none();
        let lead = (of + 1..sentence.tokens.len())
            .take_while(|at| leads_to_subject(sentence, *at))
            .count();
        let at = of + 1 + lead;
        let word = thing(sentence, at);
        let own = self.things.iter().find(|(held, _)| held == word);
        let ends = ends_subject(sentence, at + 1) || sentence.amount_at(at + 1).is_some();
        own.filter(|_| (first..of).all(plain) && ends)
    }

    /// The case of the sentence before that a sentence goes on to speak of: "In that case the anchors are 12 in. apart", "In such joints the mesh laps 3 in." Of
    /// several it is the last, and which, a person must say.
    fn case_spoken_of(&self, sentence: &Sentence<'_>) -> Option<Condition> {
        let case = sentence.is_any(0, &["in", "for"])
            && sentence.is_any(1, &["that", "this", "such", "these", "those"])
            && sentence.is_any(2, &["case", "cases", "event"]);
        let joints = sentence.is_any(0, &["in", "for", "at"])
            && sentence.is_any(1, &["such", "these", "those"])
            && sentence.is_any(
                2,
                &[
                    "joint", "joints", "gap", "gaps", "wall", "walls", "openings",
                ],
            );
        let there = sentence.is_any(0, &["here", "there"])
            && !sentence.is_any(
                1,
                &["is", "are", "shall", "must", "may", "will", "should", "was"],
            );
        let words = sentence.words(0, 3);
        let unsaid = || Condition {
            also: Vec::new(),
            words: words.to_owned(),
            span: sentence.source_of(0, 3),
            expr: Expr::Words(words.to_owned()),
        };
        if case {
            return Some(self.case.clone().unwrap_or_else(unsaid));
        }
        self.case.clone().filter(|_| joints || there)
    }

    /// Takes in what a sentence speaks of for the first time under its condition, or under the one that governs it.
    pub(super) fn take(
        &mut self,
        sentence: &Sentence<'_>,
        conditions: &[Found],
        governed: Option<&Condition>,
        around: &Around,
    ) {
        self.sorts.take(sentence);
        self.case = case_of(sentence, conditions).or_else(|| governed.cloned());
        let first_said = &around.first_said;
        let title = around.heading;
        let opens_item = !core::mem::replace(&mut self.begun, true) && !title.is_empty();
        let plain = conditions.is_empty() && governed.is_none();
        self.has_legs |= names_legged(&around.subject.title)
            || plain && names_legged(sentence.words(0, sentence.tokens.len()));
        if opens_item {
            self.brought = brings(sentence, &around.subject.title);
            let title = around.subject.title.to_lowercase();
            self.thing = title + " " + &subject_behind(sentence, conditions);
        }
        let own = opening(sentence, conditions)
            .or_else(|| closing(sentence, conditions))
            .or_else(|| offered(sentence, conditions));
        let (condition, from, to) = match (governed, own) {
            (Some(condition), None) if conditions.is_empty() => {
                (condition.clone(), 0, sentence.tokens.len())
            }
            (None, Some((found, from, to))) => {
                let condition = Condition {
                    also: Vec::new(),
                    words: sentence.words(found.first, found.last).to_owned(),
                    span: sentence.source_of(found.first, found.last),
                    expr: found.expr.clone(),
                };
                (condition, from, to)
            }
            (governed, _) => {
                self.last = governed.cloned();
                return;
            }
        };
        let all = sentence.source_of(0, sentence.tokens.len());
        // "Impaling clips. For joints over 50 mm, clips of 1.2 mm steel carry the packing": the title only names what is then required.
        let titled = opens_item && governed.is_none() && requires_thing(sentence, from);
        for at in from..to {
            let word = thing(sentence, at);
            let first = first_said.0.get(word);
            let here = first.is_some_and(|first| all.start() <= *first && *first < all.end())
                && !(is_of_every_joint(word) && is_definite(sentence, at));
            let of_title = titled
                && first.is_some_and(|first| title.start() <= *first && *first < all.end())
                && is_indefinite(sentence, at);
            if (here || of_title)
                && names_thing(word)
                && self.things.iter().all(|(held, _)| held != word)
            {
                self.things.push((word.to_owned(), condition.clone()));
            }
        }
        self.last = Some(condition);
    }
}

/// Whether words name a thing that has legs or flanges of its own, so that those spoken of later may be its: "Runner", "Steel angles".
fn names_legged(words: &str) -> bool {
    const LEGGED: &[&str] = &[
        "runner", "track", "channel", "angle", "stud", "clip", "bracket", "hanger", "profile",
        "section", "bead", "trim", "beam", "deck", "pan", "tee", "z",
    ];
    words
        .to_lowercase()
        .split(|c: char| !c.is_alphabetic())
        .any(|word| LEGGED.contains(&word.strip_suffix('s').unwrap_or(word)))
}

/// Whether a sentence begins with a part that hangs on what the sentence before spoke of: "The lower leg reaches", "Legs 2 in. long", "The prongs enter the wool".
fn begins_with_leg(sentence: &Sentence<'_>, first: usize) -> bool {
    const SIDES: &[&str] = &[
        "upper",
        "lower",
        "horizontal",
        "vertical",
        "long",
        "short",
        "top",
        "bottom",
        "outer",
        "inner",
    ];
    const LEGS: &[&str] = &["leg", "legs", "prong", "prongs", "flange", "flanges"];
    let side = first + usize::from(sentence.is_any(first, SIDES));
    // "Legs of the runner" are of another thing, and "flange edges" are no flange.
    let of_another = sentence.is_any(side + 1, &["of", "on"]);
    let ends = ends_subject(sentence, side + 1) || sentence.amount_at(side + 1).is_some();
    sentence.is_any(side, LEGS) && ends && !of_another
}

/// Whether a word measures the thing before it: "Mesh *weight*".
fn is_measure(sentence: &Sentence<'_>, at: usize) -> bool {
    let word = sentence.word(at);
    !word.is_empty() && word != "angle" && vocabulary::vocabulary().attribute(word).is_some()
}

/// The words for a thing behind the condition that a sentence begins with, to the first comma or number: "For joints over 4 in., *galvanized Z-clips*, 1.2 mm thick".
fn subject_behind(sentence: &Sentence<'_>, conditions: &[Found]) -> String {
    const LONGEST: usize = 6;
    let from = conditions.first().filter(|own| own.first == 0);
    let from = from.map_or(sentence.tokens.len(), |own| own.last);
    let of_thing = |at: &usize| sentence.amount_at(*at).is_none() && !sentence.is_stop(*at);
    let skipped = usize::from(sentence.is_word(from, "only"));
    let from = from + skipped;
    let from = from + usize::from(sentence.is_stop(from));
    let words = (from..sentence.tokens.len())
        .take(LONGEST)
        .take_while(of_thing);
    words
        .map(|at| sentence.word(at))
        .collect::<Vec<_>>()
        .join(" ")
}

/// The last case that a sentence speaks of, in its words: it may be an exception's.
fn case_of(sentence: &Sentence<'_>, conditions: &[Found]) -> Option<Condition> {
    const EXCEPTIVE: &[&str] = &[
        "except",
        "excepting",
        "excluding",
        "save",
        "unless",
        "other",
        "than",
        "but",
    ];
    let last = conditions.iter().max_by_key(|own| own.first)?;
    // "May be omitted except in joints over 3 in. In such joints ...": the case is the one that is excepted.
    let first = (last.first..last.last)
        .find(|at| !sentence.is_any(*at, EXCEPTIVE))
        .unwrap_or(last.first);
    let words = sentence.words(first, last.last).to_owned();
    Some(Condition {
        also: Vec::new(),
        span: sentence.source_of(first, last.last),
        expr: Expr::Words(words.clone()),
        words,
    })
}

/// Whether the main clause says that something is needed there, and not only how large it is.
fn requires_thing(sentence: &Sentence<'_>, from: usize) -> bool {
    (from..sentence.tokens.len()).any(|at| {
        let carries = sentence.is_any(
            at,
            &[
                "carry", "carries", "support", "supports", "hold", "holds", "retain", "retains",
            ],
        ) || sentence.is_any(at, &["rests", "sits", "lies"])
            && sentence.is_any(at + 1, &["on", "upon"]);
        let borne = sentence.is_any(at, &["carried", "supported", "held", "retained"])
            && sentence.is_any(at + 1, &["by", "on"])
            && sentence.amount_at(at + 2).is_none();
        let needed = sentence.is_any(at, &["is", "are", "be"])
            && sentence.is_any(at + 1, &["required", "needed", "provided", "fitted"]);
        carries || borne || needed
    })
}

/// Whether a word names what every joint has.
fn is_of_every_joint(word: &str) -> bool {
    const OF_ALL: &[&str] = &[
        "wool",
        "packing",
        "batt",
        "insulation",
        "safing",
        "blanket",
        "sealant",
        "coating",
        "coat",
        "spray",
        "fill",
        "seal",
        "floor",
        "slab",
        "wall",
        "deck",
        "joint",
        "strip",
        "gap",
        "edge",
        "face",
    ];
    OF_ALL.contains(&word)
}

/// Whether words speak of a thing as of one that is there anyway: "the wool is held by clips", "the mineral wool".
fn is_definite(sentence: &Sentence<'_>, at: usize) -> bool {
    const DEFINITE: &[&str] = &["the", "its", "their", "each", "all", "every"];
    let before = |back: usize| at.checked_sub(back);
    let is = |back: usize| before(back).is_some_and(|at| sentence.is_any(at, DEFINITE));
    let described =
        before(1).is_some_and(|at| sentence.amount_at(at).is_none() && sentence.has_word(at));
    is(1) || described && is(2)
}

/// Whether a word names things not spoken of yet: a plural without "the", or behind "a".
fn is_indefinite(sentence: &Sentence<'_>, at: usize) -> bool {
    const BEFORE: usize = 3;
    let before = at.saturating_sub(BEFORE)..at;
    let definite = sentence.has_any(before.start, at, &["the", "each", "these", "its", "their"]);
    let plural = sentence.word(at).ends_with('s');
    !definite && (plural || sentence.has_any(before.start, at, &["a", "an"]))
}

/// Words before the subject of a sentence.
fn leads_to_subject(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(
        at,
        &[
            "the", "these", "each", "every", "all", "such", "both", "a", "an", "any", "no", "this",
            "those",
        ],
    )
}

/// Whether a subject has ended before a token: a verb, a preposition or a stop follows. "Steel studs" speaks of studs.
fn ends_subject(sentence: &Sentence<'_>, at: usize) -> bool {
    const FOLLOWING: &[&str] = &[
        "is",
        "are",
        "shall",
        "must",
        "may",
        "has",
        "have",
        "should",
        "need",
        "needs",
        "lap",
        "laps",
        "lie",
        "lies",
        "bear",
        "bears",
        "extend",
        "extends",
        "reach",
        "reaches",
        "stand",
        "stands",
        "of",
        "at",
        "on",
        "in",
        "to",
        "with",
        "per",
        "from",
        "penetrates",
        "enters",
        "enter",
        "penetrate",
        "rest",
        "rests",
        "set",
        "held",
        "laid",
        "cut",
        "bent",
        "built",
        "made",
        "spans",
        "span",
        "not",
        "which",
        "that",
        "where",
        "when",
        "for",
        "by",
        "and",
    ];
    let participle = sentence.word(at).ends_with("ed");
    let stopped = sentence.is_stop(at) || sentence.is_sign(at, '(');
    participle || stopped || sentence.is_any(at, FOLLOWING)
}

/// Whether a word may name a thing; most short words and verbs don't.
fn names_thing(word: &str) -> bool {
    const SHORTEST: usize = 4;
    const OTHERS: &[&str] = &[
        "shall",
        "must",
        "with",
        "that",
        "which",
        "their",
        "than",
        "then",
        "from",
        "into",
        "onto",
        "over",
        "under",
        "above",
        "below",
        "apart",
        "along",
        "each",
        "both",
        "least",
        "most",
        "more",
        "les",
        "depth",
        "width",
        "thicknes",
        "thickness",
        "spacing",
        "length",
        "joint",
    ];
    let ends_as_verb = word.ends_with("ed") || word.ends_with("ing") && word.len() > 6;
    word.chars().count() >= SHORTEST && !OTHERS.contains(&word) && !ends_as_verb
}

/// The condition that a sentence opens with, where it has no other, and the stretch that it governs.
fn opening<'f>(
    sentence: &Sentence<'_>,
    conditions: &'f [Found],
) -> Option<(&'f Found, usize, usize)> {
    let [only] = conditions else { return None };
    (only.first == 0 && narrows(&only.expr)).then_some((only, only.last, sentence.tokens.len()))
}

/// The words by which a sentence offers something, which is then spoken of: "A plate may be laid over the joint".
fn offered<'f>(
    sentence: &Sentence<'_>,
    conditions: &'f [Found],
) -> Option<(&'f Found, usize, usize)> {
    let [only] = conditions else { return None };
    is_offer(sentence, only).then_some((only, 0, sentence.tokens.len()))
}

/// The condition that a sentence ends with which says no more than that a thing is there: "A tray is required in joints over 4 in."
fn closing<'f>(
    sentence: &Sentence<'_>,
    conditions: &'f [Found],
) -> Option<(&'f Found, usize, usize)> {
    let [only] = conditions else { return None };
    let ends = (only.last..sentence.tokens.len())
        .all(|at| sentence.is_sign(at, '.') || sentence.is_word(at, "only"));
    let before = (0..only.first)
        .rev()
        .find(|at| !sentence.is_word(*at, "only"))?;
    let there = sentence.is_any(
        before,
        &[
            "required",
            "needed",
            "necessary",
            "provided",
            "installed",
            "fitted",
            "added",
        ],
    );
    let said = !sentence.has_any(0, only.first, &["not", "no", "may", "never"]);
    let numbered = sentence.amounts.len() > only.triggers.len();
    // "Provide clips, 20 ga., at 18 in. o.c. where the joint is over 3 in."
    let provided = sentence.is_any(0, &["provide", "add"])
        && sentence.is_any(only.first, &["where", "when", "if"])
        && !sentence.has_any(0, only.first, &["and", "with", "plus"]);
    let there = there && !numbered || provided && !measures_twice(sentence, only.first);
    (ends && there && said && narrows(&only.expr)).then_some((only, 0, before))
}

/// Whether two numbers before a token measure the same: of "clips at 24 in. o.c., 18 in. o.c. where the joint is over 3 in." only the second is of the wide joints.
fn measures_twice(sentence: &Sentence<'_>, end: usize) -> bool {
    let own = || sentence.amounts.iter().filter(|amount| amount.last <= end);
    let measured = |amount: &crate::phrase::Amount| (amount.unit, sentence.word(amount.last));
    own().any(|one| {
        own().any(|other| {
            other.first < one.first
                && (measured(other) == measured(one)
                    || other.unit == one.unit && sentence.word(other.last).is_empty())
        })
    })
}

/// Whether a condition tells some joints from the rest by a lower limit, or by words.
fn narrows(expr: &Expr) -> bool {
    const FEWEST_WORDS: usize = 3;
    match expr {
        Expr::Test(Test {
            property, relation, ..
        }) => {
            property != "joint.rating" && matches!(relation, Relation::MoreThan | Relation::AtLeast)
        }
        // "Where wanted" tells no joints from the rest.
        Expr::Words(words) => {
            let mut all = words.split_whitespace();
            let opens = all.next().is_some_and(|first| {
                ["where", "when", "in", "for", "at", "if"]
                    .iter()
                    .any(|opener| first.eq_ignore_ascii_case(opener))
            });
            opens && all.count() >= FEWEST_WORDS
        }
        _ => false,
    }
}
