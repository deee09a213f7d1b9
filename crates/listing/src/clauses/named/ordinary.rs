//! Which words are coined: those that a document writes small somewhere, and the trade's own, name no firm and no product.

use std::collections::{HashMap, HashSet};

use super::elsewhere::Elsewhere;
use crate::naming::components_in;

/// Words of titles and heads that are written with capitals and name neither a firm nor a product.
const TRADE: &[&str] = &[
    "a",
    "acceptable",
    "accepted",
    "acoustic",
    "acrylic",
    "additional",
    "adhesive",
    "all",
    "alternate",
    "alternative",
    "an",
    "and",
    "angle",
    "appendix",
    "applied",
    "approved",
    "article",
    "articles",
    "assembly",
    "backing",
    "bag",
    "barrier",
    "base",
    "basis",
    "batt",
    "batts",
    "black",
    "blanket",
    "block",
    "blocks",
    "board",
    "boards",
    "bond",
    "both",
    "bottom",
    "building",
    "by",
    "cap",
    "caulk",
    "caulking",
    "cement",
    "ceramic",
    "certificate",
    "certified",
    "class",
    "clip",
    "clips",
    "coat",
    "coating",
    "coatings",
    "compound",
    "concrete",
    "configuration",
    "configurations",
    "construction",
    "cord",
    "cover",
    "curtain",
    "data",
    "date",
    "deck",
    "density",
    "depth",
    "design",
    "detail",
    "drawing",
    "judged",
    "each",
    "edition",
    "elastomeric",
    "element",
    "elements",
    "end",
    "ends",
    "expansion",
    "face",
    "fiber",
    "fibre",
    "fill",
    "filler",
    "fire",
    "firestop",
    "fireproofing",
    "firm",
    "firms",
    "fixing",
    "floor",
    "floors",
    "fluted",
    "foam",
    "for",
    "forming",
    "general",
    "glass",
    "glazed",
    "grade",
    "green",
    "grey",
    "gray",
    "gypsum",
    "head",
    "holder",
    "hour",
    "in",
    "industrial",
    "inspection",
    "installation",
    "instructions",
    "insulation",
    "issue",
    "issued",
    "item",
    "items",
    "job",
    "joint",
    "joints",
    "kind",
    "laboratory",
    "lap",
    "layer",
    "limited",
    "linear",
    "listed",
    "listing",
    "loose",
    "made",
    "maker",
    "makers",
    "manufacturer",
    "manufacturers",
    "mark",
    "marked",
    "marking",
    "mastic",
    "mastics",
    "material",
    "materials",
    "max",
    "metal",
    "method",
    "mfr",
    "mfrs",
    "min",
    "mineral",
    "movement",
    "mw",
    "name",
    "no",
    "none",
    "notes",
    "note",
    "number",
    "of",
    "office",
    "on",
    "one",
    "only",
    "option",
    "options",
    "or",
    "order",
    "other",
    "owner",
    "packing",
    "page",
    "paint",
    "part",
    "parts",
    "party",
    "per",
    "perimeter",
    "permitted",
    "plan",
    "plate",
    "plug",
    "plugs",
    "prepared",
    "primer",
    "prod",
    "producer",
    "product",
    "products",
    "project",
    "proved",
    "rating",
    "recognised",
    "recognized",
    "red",
    "ref",
    "reference",
    "register",
    "registered",
    "report",
    "revision",
    "road",
    "rod",
    "rope",
    "runner",
    "safing",
    "sand",
    "schedule",
    "scope",
    "seal",
    "sealant",
    "sealants",
    "sealer",
    "section",
    "series",
    "sheet",
    "shaft",
    "side",
    "silicone",
    "slab",
    "slabs",
    "source",
    "sources",
    "spandrel",
    "spec",
    "sponsor",
    "sponsors",
    "spray",
    "sprayed",
    "standard",
    "steel",
    "stick",
    "stiffener",
    "stone",
    "street",
    "strip",
    "strips",
    "structural",
    "subject",
    "supplied",
    "supplier",
    "suppliers",
    "surface",
    "system",
    "systems",
    "table",
    "tape",
    "tapes",
    "tested",
    "tests",
    "test",
    "the",
    "thick",
    "to",
    "top",
    "track",
    "type",
    "types",
    "unit",
    "use",
    "used",
    "var",
    "variant",
    "vertical",
    "view",
    "wall",
    "walls",
    "water",
    "wet",
    "white",
    "width",
    "wool",
    "wools",
    "works",
    "year",
    "yellow",
    "zinc",
    "blue",
    "brown",
    "beige",
    "clear",
    "house",
    "park",
    "trade",
    "article",
    "articles",
    "goods",
    "order",
    "sent",
    "with",
    "where",
    "when",
    "if",
    "from",
    "at",
    "over",
    "under",
    "not",
    "any",
    "as",
    "see",
    "north",
    "south",
    "east",
    "west",
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
    "telephone",
    "phone",
    "fax",
    "box",
    "city",
    "avenue",
    "lane",
    "way",
    "brush",
    "trowel",
    "roller",
    "gun",
    "arrangement",
    "band",
    "level",
    "precut",
    "preformed",
    "euroclass",
    "phase",
    "roll",
    "size",
    "stage",
    "style",
];

/// The words that a document writes small, and those of its others that are coined.
#[derive(Debug, Default)]
pub(crate) struct Ordinary {
    small: HashSet<String>,
    /// Whether each word that begins with a capital is coined: each is asked about many times.
    capital: HashMap<String, bool>,
    /// Words that keep their capital in the middle of a sentence.
    within: HashSet<String>,
    elsewhere: Elsewhere,
}

impl Ordinary {
    pub(crate) fn of(source: &str) -> Self {
        let words = source.split(|c: char| !c.is_alphabetic());
        let small = words.filter(|word| word.len() > 2 && word.chars().all(char::is_lowercase));
        let mut ordinary = Self {
            small: small.map(str::to_owned).collect(),
            capital: HashMap::new(),
            within: kept_within(source),
            elsewhere: Elsewhere::of(source),
        };
        for word in source
            .split(|c: char| c.is_whitespace() || c == '-')
            .map(bare)
        {
            if word.starts_with(char::is_uppercase) && !ordinary.capital.contains_key(word) {
                let coined = ordinary.coins(word);
                ordinary.capital.insert(word.to_owned(), coined);
            }
        }
        ordinary
    }

    /// Whether a document writes a word with a capital in the middle of a sentence, as it does names.
    pub(super) fn stands_within(&self, word: &str) -> bool {
        self.within.contains(&bare(word).to_lowercase())
    }

    /// Whether a document writes a name longer elsewhere.
    pub(super) fn is_cut_short(&self, name: &str) -> bool {
        self.elsewhere.is_cut_short(name)
    }

    /// Whether a name without a maker is no whole name, or more than one, as far as the document shows.
    pub(super) fn is_unsure(&self, name: &str, is_quoted: bool) -> bool {
        self.elsewhere.is_cut_short(name) || self.elsewhere.may_lead_with_maker(name, is_quoted)
    }

    /// Whether a word with a capital is no word of the language or the trade, as far as the document shows.
    pub(super) fn is_coined(&self, word: &str) -> bool {
        let word = bare(word);
        word.starts_with(char::is_uppercase)
            && self
                .capital
                .get(word)
                .copied()
                .unwrap_or_else(|| self.coins(word))
    }

    fn coins(&self, word: &str) -> bool {
        const SHORTEST: usize = 3;
        let small = word.to_lowercase();
        let stem = small.strip_suffix('s').unwrap_or(&small);
        let is_ordinary = |own: &str| TRADE.contains(&own) || self.small.contains(own);
        word.chars().filter(|c| c.is_alphabetic()).count() >= SHORTEST
            && !is_ordinary(&small)
            && !is_ordinary(stem)
            && components_in(&small).is_empty()
    }

    /// Whether some word of several is coined.
    pub(super) fn coins_one(&self, words: &str) -> bool {
        words.split([' ', '-']).any(|word| self.is_coined(word))
    }
}

/// A word without the signs around it.
fn bare(word: &str) -> &str {
    word.trim_matches(|c: char| !c.is_alphanumeric())
}

/// The words that a document writes with a capital behind a small word, a comma or a quotation mark.
fn kept_within(source: &str) -> HashSet<String> {
    let mut kept = HashSet::new();
    for line in source.lines() {
        let mut before = "";
        for word in line.split_whitespace() {
            let goes_on = before.ends_with(|c: char| c.is_lowercase() || [',', ':'].contains(&c));
            let quoted = word.starts_with(['"', '“', '„', '«', '(']);
            let name = bare(word);
            if (goes_on || quoted) && name.starts_with(char::is_uppercase) {
                kept.insert(name.to_lowercase());
            }
            before = word;
        }
    }
    kept
}
