//! Alternatives that a listing offers.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Alternatives of which one is built. Different groups are independent of each other.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct OptionGroup {
    /// What the group is about: the path of the base item or of the item whose parts are the choices, or the word for kinds of the whole joint, as `configuration` or `seal_type`.
    pub id: String,
    /// What sort of choice it is.
    pub kind: OptionGroupKind,
    /// The item that the alternatives replace, when they replace one.
    pub base_item: Option<String>,
    /// Further items that each alternate replaces together with the base item: "alternate to 4.1 to 4.3".
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub also_replaced: Vec<String>,
    /// The choices, as clauses name them in `option`.
    pub choices: Vec<String>,
}

/// What sort of choice a group offers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum OptionGroupKind {
    /// The base item or one of its alternates: exactly one is built, and it replaces the others.
    Alternates,
    /// The parts of an item of which one is built: "one of the following". None of them comes before the others.
    OneOf,
    /// Configurations of the whole joint: exactly one is built.
    Configurations,
    /// An item that may be left out.
    Optional,
}
