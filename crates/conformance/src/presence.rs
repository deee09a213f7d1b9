//! Whether something is there that must, must not or may be there.

use listing::Presence;
use site::{Fact, Value};

use crate::assessment::Assessment;
use crate::verdict::{Reason, Verdict};
use crate::words::normal;

/// A fact against what the listing asks to be there. Only a yes, a no or a product tells: a length says nothing of
/// whether a thing is there.
pub(crate) fn against(fact: &Fact, presence: Presence) -> Assessment<'_> {
    let assessed = match (presence, is_there(&fact.value)) {
        (Presence::Optional, _) => asks_nothing(),
        (_, None) => Assessment::open(Reason::Unreadable),
        (Presence::Required, Some(true)) | (Presence::Absent, Some(false)) => {
            Assessment::plain(Verdict::Met, Reason::Holds)
        }
        (Presence::Required, Some(false)) | (Presence::Absent, Some(true)) => {
            Assessment::plain(Verdict::NotMet, Reason::Fails)
        }
    };
    assessed.on(fact)
}

/// What may be there or not asks for nothing.
pub(crate) fn asks_nothing<'a>() -> Assessment<'a> {
    Assessment::plain(Verdict::NotApplicable, Reason::AsksNothing)
}

fn is_there(value: &Value) -> Option<bool> {
    match value {
        Value::Flag(flag) => Some(*flag),
        Value::Product(product) => (!normal(&product.product).is_empty()).then_some(true),
        Value::Text(text) => match normal(text).as_str() {
            "yes" | "present" | "there" => Some(true),
            "no" | "none" | "absent" | "not there" => Some(false),
            _ => None,
        },
        Value::Quantity(_) => None,
    }
}
