//! Which words can be a maker's name.

use super::entry::{JOINTS, Reader};
use super::makers::is_maker;

impl Reader<'_> {
    /// Whether words are a maker's name by themselves: in capitals, ending as firms do, or several capitalised words of which one is coined.
    pub(super) fn is_maker(self, words: &str) -> bool {
        const LINKS: [&str; 14] = [
            "of", "and", "&", "the", "de", "und", "du", "des", "del", "en", "et", "og", "och",
            "van",
        ];
        const MOST: usize = 6;
        // The form of a firm may be written small or with a slash: `A/S`, `ltée`.
        let form = words.rsplit(' ').next().unwrap_or_default();
        let form = form.trim_end_matches('.').to_lowercase();
        let body = match words.rsplit_once(' ') {
            Some((body, _))
                if ["a/s", "p/l", "ltée", "inc", "s.r.o", "o.o", "b.v", "n.v"]
                    .contains(&form.as_str()) =>
            {
                body
            }
            _ => words,
        };
        let body = body.trim_end_matches([',', ' ']);
        // `PELLIN SEALANTS -- Pelliguard AS` is a maker with its product.
        let joined = JOINTS.iter().any(|joint| words.contains(joint));
        if joined
            || body.contains(['(', ')', ':', '"', ';', '=', '/'])
            || !words.starts_with(char::is_alphabetic)
            || speaks(words)
            || words.contains(|c: char| c.is_ascii_digit())
        {
            return false;
        }
        let count = words.split_whitespace().count();
        let titled = body
            .split_whitespace()
            .all(|word| LINKS.contains(&word) || word.starts_with(char::is_uppercase));
        let coins = self.ordinary.coins_one(words) || words.contains(" & ");
        coins && (is_maker(words) || titled && !body.contains(", ") && (2..=MOST).contains(&count))
    }

    /// Whether words beside a product's name are its maker: there a single coined word will do.
    pub(super) fn is_named(self, words: &str) -> bool {
        let one = !words.contains([' ', ',', '"']) && self.ordinary.is_coined(words);
        one && !words.contains(|c: char| c.is_ascii_digit()) || self.is_maker(words)
    }
}

/// Whether words speak, as no firm's name does, or name whoever tests and lists.
pub(super) fn speaks(words: &str) -> bool {
    const SAYING: &[&str] = &[
        "where",
        "when",
        "if",
        "see",
        "over",
        "under",
        "to",
        "in",
        "at",
        "with",
        "by",
        "from",
        "for",
        "not",
        "no",
        "all",
        "any",
        "each",
        "shall",
        "must",
        "is",
        "are",
        "on",
        "testing",
        "laboratory",
        "laboratories",
        "institute",
        "institut",
        "register",
        "registry",
        "bureau",
        "office",
        "college",
        "university",
        "authority",
        "listing",
        "certification",
        "compendium",
        "test",
        "page",
        "sheet",
        "prüfstelle",
        "engineering",
        "house",
        "evaluation",
        "note",
        "notes",
        "table",
        "but",
        "never",
    ];
    const LABELLING: &[&str] = &[
        "product",
        "products",
        "maker",
        "makers",
        "material",
        "materials",
    ];
    let mut words = words
        .split(|c: char| !c.is_alphanumeric())
        .map(str::to_lowercase)
        .peekable();
    let labelled = words
        .peek()
        .is_some_and(|first| LABELLING.contains(&first.as_str()));
    labelled || words.any(|word| SAYING.contains(&word.as_str()))
}
