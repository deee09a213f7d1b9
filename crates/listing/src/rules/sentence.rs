//! A sentence with its tokens and amounts, as the rules see it.

use core::cell::RefCell;

use super::Found;
use crate::layout::Flow;
use crate::model::Span;
use crate::phrase::{Amount, Token, amounts, lex, with_usual};

/// A sentence of an item.
#[derive(Debug)]
pub(crate) struct Sentence<'a> {
    flow: &'a Flow,
    /// Where the sentence begins in the running text.
    base: usize,
    pub(crate) text: &'a str,
    /// The same in small letters, byte for byte.
    pub(crate) lower: &'a str,
    pub(crate) tokens: Vec<Token<'a>>,
    pub(crate) amounts: Vec<Amount>,
    /// Which amounts only trigger a condition.
    triggers: Vec<usize>,
    /// The tokens `[first, last)` of each condition.
    conditions: Vec<(usize, usize)>,
    /// The states in which something is forbidden.
    forbidden: Vec<crate::conditions::Forbidden>,
    /// What has been found of each amount.
    known: RefCell<Vec<Option<Found>>>,
}

impl<'a> Sentence<'a> {
    pub(crate) fn new(flow: &'a Flow, range: core::ops::Range<usize>) -> Self {
        let text = flow.text().get(range.clone()).unwrap_or_default();
        let lower = flow.lower().get(range.clone()).unwrap_or_default();
        let mut tokens = lex(text, lower);
        let usual = flow.usual_units();
        if usual.are_known() {
            with_usual(&mut tokens, text, usual);
        }
        let amounts = amounts(&tokens);
        Self {
            flow,
            base: range.start,
            text,
            lower,
            tokens,
            amounts,
            triggers: Vec::new(),
            conditions: Vec::new(),
            forbidden: Vec::new(),
            known: RefCell::default(),
        }
    }

    /// The text that the sentence is a part of, in small letters.
    pub(crate) fn running_text(&self) -> &str {
        self.flow.lower()
    }

    /// Whether a token is the label of a variant that a table of the document names: `V1`.
    pub(crate) fn names_variant(&self, at: usize) -> bool {
        let word = self.token(at).map(|token| token.span.of(self.text));
        let label = word.map(|word| word.trim_end_matches('.'));
        label.is_some_and(|label| self.flow.variants().iter().any(|own| own == label))
    }

    /// Whether a token is the first on its line.
    pub(crate) fn begins_line(&self, at: usize) -> bool {
        let start = self.token(at).map(|token| self.in_flow(token.span.start()));
        start.is_some_and(|start| start == 0 || self.flow.lines().binary_search(&start).is_ok())
    }

    /// Where a byte of the sentence stands in the running text.
    pub(crate) const fn in_flow(&self, at: usize) -> usize {
        self.base + at
    }

    /// The place in the source of a stretch of the sentence.
    pub(crate) fn source(&self, span: Span) -> Span {
        self.flow
            .span(self.base + span.start(), self.base + span.end())
    }

    /// The place in the source of tokens `[first, last)`.
    pub(crate) fn source_of(&self, first: usize, last: usize) -> Span {
        self.source(self.tokens_span(first, last))
    }

    /// The stretch of the sentence that tokens `[first, last)` stand on.
    pub(crate) fn tokens_span(&self, first: usize, last: usize) -> Span {
        let tokens = self
            .tokens
            .get(first..last.min(self.tokens.len()))
            .unwrap_or_default();
        match (tokens.first(), tokens.last()) {
            (Some(a), Some(b)) => a.span.join(b.span),
            _ => Span::default(),
        }
    }

    /// The words of tokens `[first, last)`.
    pub(crate) fn words(&self, first: usize, last: usize) -> &'a str {
        self.tokens_span(first, last).of(self.text)
    }

    pub(crate) fn token(&self, at: usize) -> Option<&Token<'a>> {
        self.tokens.get(at)
    }

    /// The token's word in small letters; empty for what is no word.
    pub(crate) fn word(&self, at: usize) -> &'a str {
        self.token(at).map_or("", |token| token.lower)
    }

    /// Whether a token is a word, and no number or sign.
    pub(crate) fn has_word(&self, at: usize) -> bool {
        self.token(at).is_some_and(|token| token.word().is_some())
    }

    pub(crate) fn is_word(&self, at: usize, word: &str) -> bool {
        self.token(at).is_some_and(|token| token.is_word(word))
    }

    pub(crate) fn is_any(&self, at: usize, words: &[&str]) -> bool {
        words.iter().any(|word| self.is_word(at, word))
    }

    pub(crate) fn is_sign(&self, at: usize, sign: char) -> bool {
        self.token(at).is_some_and(|token| token.is_sign(sign))
    }

    /// Whether a token is printed with a stop at its end, as what is shortened is: `MIN.`
    pub(crate) fn ends_in_stop(&self, at: usize) -> bool {
        self.token(at)
            .is_some_and(|token| token.span.of(self.text).ends_with('.'))
    }

    pub(crate) fn amount(&self, index: usize) -> Option<&Amount> {
        self.amounts.get(index)
    }

    /// Notes the conditions, so that no rule takes them for the amount before.
    pub(crate) fn set_conditions(&mut self, conditions: &crate::conditions::Conditions) {
        self.known.take();
        self.forbidden.clone_from(&conditions.forbidden);
        self.triggers = conditions
            .found
            .iter()
            .flat_map(|condition| condition.triggers.iter().copied())
            .collect();
        self.conditions = conditions
            .found
            .iter()
            .map(|condition| (condition.first, condition.last))
            .collect();
    }

    /// Makes the amounts of the condition that begins at a token bounds, and the condition none.
    pub(crate) fn free(&mut self, first: usize, amounts: &[usize]) {
        self.known.take();
        self.triggers.retain(|index| !amounts.contains(index));
        self.conditions.retain(|(own, _)| *own != first);
    }

    /// What `find` finds of an amount. It is asked once, since every rule that looks at the amount before would ask again for all before that.
    pub(super) fn found_once(&self, index: usize, find: impl FnOnce() -> Found) -> Found {
        let known = self.known.borrow().get(index).copied().flatten();
        known.unwrap_or_else(|| {
            let found = find();
            let mut known = self.known.borrow_mut();
            known.resize(self.amounts.len().max(index + 1), None);
            if let Some(place) = known.get_mut(index) {
                *place = Some(found);
            }
            found
        })
    }

    /// The word that forbids the state in which a token stands: "shall *not* be placed when the air is below 40 F".
    pub(crate) fn forbidding(&self, at: usize) -> Option<usize> {
        self.forbidden
            .iter()
            .find(|state| state.first <= at && at < state.last)
            .map(|state| state.negation)
    }

    /// Whether a token stands in a condition.
    pub(crate) fn in_condition(&self, at: usize) -> bool {
        self.conditions
            .iter()
            .any(|(first, last)| *first <= at && at < *last)
    }

    /// Whether a token stands in a condition that supposes something: "where the packing is unfaced".
    pub(crate) fn is_supposed(&self, at: usize) -> bool {
        self.conditions.iter().any(|(first, last)| {
            *first <= at && at < *last && self.is_any(*first, &["where", "when", "if", "unless"])
        })
    }

    /// Whether an amount bounds something.
    pub(crate) fn is_bound(&self, index: usize) -> bool {
        !self.triggers.contains(&index)
    }

    /// The amount before this one that bounds something.
    pub(crate) fn bound_before(&self, index: usize) -> Option<usize> {
        (0..index).rev().find(|before| self.is_bound(*before))
    }

    /// The token before an amount where its own words must begin: after the amount before it.
    pub(crate) fn floor(&self, index: usize) -> usize {
        index
            .checked_sub(1)
            .and_then(|before| self.amount(before))
            .map_or(0, |amount| amount.last)
    }

    /// The amount that a token is part of.
    pub(crate) fn amount_at(&self, token: usize) -> Option<usize> {
        self.amounts
            .iter()
            .position(|amount| amount.first <= token && token < amount.last)
    }

    /// Whether any of the words stands among tokens `[first, last)`.
    pub(crate) fn has_any(&self, first: usize, last: usize, words: &[&str]) -> bool {
        (first..last).any(|at| self.is_any(at, words))
    }

    /// The token after any parentheses that open here.
    pub(crate) fn skip_parentheses(&self, at: usize) -> usize {
        let mut next = at;
        while let Some(close) = self.closing(next) {
            next = close + 1;
        }
        next
    }

    /// The token after any parentheses that open here and hold no closing word such as "(or smaller)".
    pub(crate) fn skip_parentheses_but(&self, at: usize) -> usize {
        if self.is_sign(at, '(')
            && self.is_any(at + 1, &["or", "min", "minimum", "max", "maximum"])
            && self.amount_at(at + 2).is_none()
        {
            return at + 1;
        }
        // `1/8" (nominal) thick`
        if self.is_sign(at, '(')
            && self.is_any(at + 1, &["nominal", "nom"])
            && self.is_sign(at + 2, ')')
        {
            return at + 1;
        }
        self.skip_parentheses(at)
    }

    /// The token that closes the parenthesis opening here.
    pub(crate) fn closing(&self, at: usize) -> Option<usize> {
        let close = if self.is_sign(at, '(') {
            ')'
        } else if self.is_sign(at, '[') {
            ']'
        } else {
            return None;
        };
        let open = if close == ')' { '(' } else { '[' };
        let mut depth = 0;
        for index in at..self.tokens.len() {
            if self.is_sign(index, open) {
                depth += 1;
            } else if self.is_sign(index, close) {
                depth -= 1;
                if depth == 0 {
                    return Some(index);
                }
            }
        }
        None
    }

    /// Whether a token ends a stretch of words: a comma, semicolon or colon, or a row of dots.
    pub(crate) fn is_stop(&self, at: usize) -> bool {
        let leader =
            self.is_sign(at, '.') && self.token(at).is_some_and(|token| token.span.len() >= 3);
        leader || [',', ';', ':'].iter().any(|sign| self.is_sign(at, *sign))
    }
}
