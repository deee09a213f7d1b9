//! Which words are coined: those that a document writes small somewhere, and the trade's own, name no firm and no product.

use std::collections::HashSet;

use crate::naming::components_in;

/// Words of titles and heads that are written with capitals and name neither a firm nor a product.
const TRADE: &[&str] = &[
    "a", "acceptable", "accepted", "acoustic", "acrylic", "additional", "adhesive", "all", "alternate", "alternative", "an", "and", "angle",
    "appendix", "applied", "approved", "article", "articles", "assembly", "backing", "bag", "barrier", "base", "basis", "batt", "batts", "black", "blanket",
    "block", "blocks", "board", "boards", "bond", "both", "bottom", "building", "by", "cap", "caulk", "caulking", "cement", "ceramic", "certificate",
    "certified", "class", "clip", "clips", "coat", "coating", "coatings", "compound", "concrete", "configuration", "configurations", "construction", "cord",
    "cover", "curtain", "data", "date", "deck", "density", "depth", "design", "detail", "drawing", "judged", "each", "edition", "elastomeric", "element", "elements",
    "end", "ends", "expansion", "face", "fiber", "fibre", "fill", "filler", "fire", "firestop", "fireproofing", "firm", "firms", "fixing", "floor",
    "floors", "fluted", "foam", "for", "forming", "general", "glass", "glazed", "grade", "green", "grey", "gray", "gypsum", "head", "holder", "hour", "in",
    "industrial", "inspection", "installation", "instructions", "insulation", "issue", "issued", "item", "items", "job", "joint", "joints", "kind",
    "laboratory", "lap", "layer", "limited", "linear", "listed", "listing", "loose", "made", "maker", "makers", "manufacturer", "manufacturers", "mark",
    "marked", "marking", "mastic", "mastics", "material", "materials", "max", "metal", "method", "mfr", "mfrs", "min", "mineral", "movement", "mw",
    "name", "no", "none", "notes", "note", "number", "of", "office", "on", "one", "only", "option", "options", "or", "order", "other", "owner", "packing",
    "page", "paint", "part", "parts", "party", "per", "perimeter", "permitted", "plan", "plate", "plug", "plugs", "prepared", "primer", "prod", "producer",
    "product", "products", "project", "proved", "rating", "recognised", "recognized", "red", "ref", "reference", "register", "registered", "report",
    "revision", "road", "rod", "rope", "runner", "safing", "sand", "schedule", "scope", "seal", "sealant", "sealants", "sealer", "section", "series",
    "sheet", "shaft", "side", "silicone", "slab", "slabs", "source", "sources", "spandrel", "spec", "sponsor", "sponsors", "spray", "sprayed", "standard",
    "steel", "stick", "stiffener", "stone", "street", "strip", "strips", "structural", "subject", "supplied", "supplier", "suppliers", "surface", "system",
    "systems", "table", "tape", "tapes", "tested", "tests", "test", "the", "thick", "to", "top", "track", "type", "types", "unit", "use", "used", "var",
    "variant", "vertical", "view", "wall", "walls", "water", "wet", "white", "width", "wool", "wools", "works", "year", "yellow", "zinc", "blue", "brown",
    "beige", "clear", "house", "park", "trade", "article", "articles", "goods", "order", "sent", "with", "where", "when", "if", "from", "at", "over",
    "under", "not", "any", "as", "see", "north", "south", "east", "west", "january", "february", "march", "april", "may", "june", "july", "august",
    "september", "october", "november", "december", "telephone", "phone", "fax", "box", "city", "avenue", "lane", "way", "brush", "trowel", "roller", "gun",
];

/// The words that a document writes small.
#[derive(Debug, Default)]
pub(crate) struct Ordinary(HashSet<String>);

impl Ordinary {
    pub(crate) fn of(source: &str) -> Self {
        let words = source.split(|c: char| !c.is_alphabetic());
        let small = words.filter(|word| word.len() > 2 && word.chars().all(char::is_lowercase));
        Self(small.map(str::to_owned).collect())
    }

    /// Whether a word with a capital is no word of the language or the trade, as far as the document shows.
    pub(super) fn is_coined(&self, word: &str) -> bool {
        const SHORTEST: usize = 3;
        let word = word.trim_matches(|c: char| !c.is_alphanumeric());
        let small = word.to_lowercase();
        let stem = small.strip_suffix('s').unwrap_or(&small);
        let is_ordinary = |own: &str| TRADE.contains(&own) || self.0.contains(own);
        word.chars().filter(|c| c.is_alphabetic()).count() >= SHORTEST
            && word.starts_with(char::is_uppercase)
            && !is_ordinary(&small)
            && !is_ordinary(stem)
            && components_in(&small).is_empty()
    }

    /// Whether some word of several is coined.
    pub(super) fn coins_one(&self, words: &str) -> bool {
        words
            .split([' ', '-'])
            .any(|word| self.is_coined(word))
    }
}
