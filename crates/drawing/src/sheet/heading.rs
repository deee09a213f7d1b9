/// What the title block says of a joint.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Heading {
    /// The joint.
    pub joint: String,
    /// Its mark.
    pub mark: String,
    /// Its mark in words.
    pub title: String,
    /// Where it is.
    pub place: String,
    /// The building.
    pub building: String,
    /// The listing, with its edition.
    pub listing: String,
    /// What it comes to: "conforms", "does not conform", "open".
    pub outcome: Option<conformance::Overall>,
    /// Each clause that isn't met, in a sentence.
    pub not_met: Vec<String>,
    /// How many clauses are open.
    pub open: usize,
    /// Whether nobody has confirmed how the listing was read.
    pub provisional: bool,
}
