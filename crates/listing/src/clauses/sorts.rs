//! Sorts of a thing that a text offers the choice of, and then describes one after the other: "Framing of wood or steel studs. Wood studs nom 2 in. by 4 in.
//! Steel studs min 3-5/8 in. wide."
//!
//! A sentence speaks of one sort when its subject is the sort and the thing, and a sentence before it in the paragraph named that sort beside the other with
//! "or". Which of them is built, only a person can say. It would misread a wall that has both.

use crate::model::{Condition, Expr};
use crate::rules::Sentence;

/// Most words on either side of an "or" that may name a sort.
const REACH: usize = 4;

/// The sorts that the sentences so far have named.
#[derive(Debug, Default)]
pub(super) struct Sorts(Vec<Choice>);

/// The words on both sides of an "or".
#[derive(Debug)]
struct Choice {
    before: Vec<String>,
    after: Vec<String>,
}

impl Sorts {
    /// The sort that a sentence speaks of.
    pub(super) fn governs(&self, sentence: &Sentence<'_>) -> Option<Condition> {
        let (sort, thing) = (sentence.word(0), sentence.word(1));
        let plural = thing.len() > 3 && thing.ends_with('s') && !thing.ends_with("ss");
        let named = |words: &[String], word: &str| words.iter().any(|own| own == word);
        let chosen = self.0.iter().any(|choice| {
            let one = named(&choice.before, sort) && !named(&choice.after, sort);
            let other = named(&choice.after, sort) && !named(&choice.before, sort);
            let of_thing = named(&choice.before, thing) || named(&choice.after, thing);
            (one || other) && of_thing
        });
        (plural && chosen && is_sort(sort)).then(|| {
            let words = sentence.words(0, 2).to_owned();
            Condition {
                also: Vec::new(),
                expr: Expr::Words(words.clone()),
                words,
                span: sentence.source_of(0, 2),
            }
        })
    }

    /// Takes in the sorts that a sentence names.
    pub(super) fn take(&mut self, sentence: &Sentence<'_>) {
        for or in (1..sentence.tokens.len()).filter(|at| sentence.is_word(*at, "or")) {
            let word = |at: &usize| {
                sentence.has_word(*at)
                    && sentence.amount_at(*at).is_none()
                    && !sentence.is_stop(*at)
            };
            let text = |at: usize| sentence.word(at).to_owned();
            let before: Vec<String> = (0..or).rev().take(2).take_while(word).map(text).collect();
            let after: Vec<String> = (or + 1..or + 1 + REACH)
                .take_while(word)
                .map(text)
                .collect();
            if !before.is_empty() && !after.is_empty() {
                self.0.push(Choice { before, after });
            }
        }
    }
}

/// Whether a word may tell one sort of a thing from another.
fn is_sort(word: &str) -> bool {
    const OTHERS: &[&str] = &[
        "the", "all", "each", "both", "these", "those", "such", "any", "no", "more", "less",
        "other", "two", "three", "of", "top", "bottom",
    ];
    word.len() > 2 && !OTHERS.contains(&word)
}
