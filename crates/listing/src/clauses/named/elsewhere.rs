//! How a document writes the words of a name elsewhere.
//!
//! A name without a maker is only sure to be whole, and no more than whole, by that: `Kestvan Beadline 7` is a maker and its product where the document
//! names the firm Kestvan, and `Tessawool` is cut short where it lists `Tessawool 60` and `Tessawool 100`.

use std::collections::{HashMap, HashSet};

use super::makers::is_firm_end;
use super::name::is_coded;

/// What a document says of names by writing their words elsewhere.
#[derive(Debug, Default)]
pub(super) struct Elsewhere {
    firsts: HashMap<String, First>,
    /// The first words of firms.
    firms: HashSet<String>,
    /// Two words that begin a name: no other word of a name stands before them.
    begun: HashSet<String>,
    /// Two words that begin a name behind a sign, as the entries of a list do.
    listed: HashSet<String>,
}

/// What stands behind a word with a capital.
#[derive(Debug, Default)]
struct First {
    /// The first word behind it that is no code.
    word: Option<String>,
    /// Whether another such word stands behind it too.
    leads_several: bool,
    /// Whether a code stands behind it.
    leads_code: bool,
}

impl Elsewhere {
    pub(super) fn of(source: &str) -> Self {
        let mut own = Self::default();
        let mut run: Option<&str> = None;
        let mut last: Option<&str> = None;
        // Whether the word before the last is none of a name, and whether it is a sign.
        let (mut begins, mut behind_sign) = (true, true);
        let (mut next_begins, mut next_behind_sign) = (true, true);
        for word in source.split_whitespace() {
            let opens = !word.starts_with(char::is_alphanumeric);
            let closes = !word.ends_with(char::is_alphanumeric);
            let bare = word.trim_matches(|c: char| !c.is_alphanumeric());
            let is_name = bare.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit());
            if opens {
                (run, last) = (None, None);
            }
            if let Some(first) = last.filter(|_| is_name) {
                own.take_pair(first, bare, begins, behind_sign);
            }
            if let Some(first) = run.filter(|_| is_name && is_firm_end(bare)) {
                own.firms.insert(first.to_lowercase());
            }
            begins = next_begins || opens;
            behind_sign = next_behind_sign || opens;
            last = (is_name && !closes).then_some(bare);
            run = last.and(run.or(last));
            next_begins = last.is_none();
            next_behind_sign = bare.is_empty() || word.ends_with(':');
        }
        own
    }

    fn take_pair(&mut self, first: &str, second: &str, begins: bool, behind_sign: bool) {
        if !first.starts_with(char::is_uppercase) {
            return;
        }
        let lower = first.to_lowercase();
        let pair = joined(&lower, second);
        if behind_sign {
            self.listed.insert(pair.clone());
        }
        if begins {
            self.begun.insert(pair);
        }
        let held = self.firsts.entry(lower).or_default();
        if is_coded(second) {
            held.leads_code = true;
        } else {
            let second = second.to_lowercase();
            match &held.word {
                Some(word) => held.leads_several |= *word != second,
                None => held.word = Some(second),
            }
        }
    }

    /// Whether a name that stands without a maker may have it in front, as its first word.
    pub(super) fn may_lead_with_maker(&self, name: &str, is_quoted: bool) -> bool {
        let mut words = name.split(' ');
        let (Some(first), Some(second)) = (words.next(), words.next()) else {
            return false;
        };
        let first = first.to_lowercase();
        // `Kestvan Beadline 7`, and `Beadline 7` elsewhere
        if let Some(third) = words.next()
            && self.begun.contains(&joined(&second.to_lowercase(), third))
        {
            return true;
        }
        // `Kestvan Fasteners KF 27`
        let is_plural = second.len() > 5 && second.ends_with('s') && !is_coded(second);
        if is_quoted {
            return false;
        }
        let leads_several = !is_coded(second)
            && self
                .firsts
                .get(&first)
                .is_some_and(|held| held.leads_several);
        let is_listed = self.listed.contains(&joined(&first, second));
        is_plural || leads_several || !is_listed && self.firms.contains(&first)
    }

    /// Whether a document writes a name longer elsewhere, and so that this one doesn't tell which is meant.
    pub(super) fn is_cut_short(&self, name: &str) -> bool {
        self.firsts
            .get(&name.to_lowercase())
            .is_some_and(|held| held.leads_code)
    }
}

/// Two words as one key.
fn joined(first: &str, second: &str) -> String {
    format!("{first} {}", second.to_lowercase())
}
