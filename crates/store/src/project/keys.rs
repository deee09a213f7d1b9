//! The keys of what a project is made of.

use site::{Judgment, Scope};

use crate::canonical;
use crate::error::StoreError;
use crate::key::{Key, Kind, Owner};

/// The key of a judgment: whose it is, and on which words of which listing; so that two people who judge one clause at once meet.
/// Several judgments on the same words are told apart by `nth`, from 0.
///
/// # Errors
/// Never, as all of it is text.
pub fn judgment_key(judgment: &Judgment, nth: usize) -> Result<Key, StoreError> {
    let owner = match &judgment.scope {
        Scope::Joint(name) => Owner::Joint(name.clone()),
        Scope::Mark(name) => Owner::Mark(name.clone()),
    };
    let on = (&judgment.listing, &judgment.item, &judgment.words);
    let hash = canonical::sha256(canonical::text(&on)?.as_bytes());
    let short: String = hash.chars().take(16).collect();
    let part = if nth == 0 {
        short
    } else {
        format!("{short}#{}", nth + 1)
    };
    Ok(Key::new(Kind::Judgment, owner.to_string(), part))
}
