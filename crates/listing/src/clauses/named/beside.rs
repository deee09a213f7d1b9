//! A maker and its products, set beside each other with quotation marks, brackets, a comma or words.

use super::entry::{JOINTS, Listed, Reader};
use super::limits::says_limit;
use super::makers::{ends_as_firm, ends_of_makers};
use super::name::is_coded;

impl Reader<'_> {
    /// `Maker, "Product" or "Product"`, `Maker "Product"`, `"Product" of the Maker`.
    pub(super) fn quoted(self, words: &str) -> Option<Listed> {
        const QUOTES: [char; 4] = ['"', '“', '”', '„'];
        let (opening, closing) = (words.find(QUOTES)?, words.rfind(QUOTES)?);
        let behind = words.get(closing..)?.trim_start_matches(QUOTES).trim();
        let list = words.get(opening..closing)?;
        let before = words.get(..opening)?.trim();
        let maker = before
            .trim_end_matches([',', ':', '(', '.'])
            .trim_end_matches("'s")
            .trim_end_matches("’s")
            .trim();
        if !maker.is_empty() && self.is_named(maker) {
            let tail = behind.trim_matches([')', '.', ',', ' ']);
            let tailed = tail.is_empty() || tail.starts_with('(');
            let mut listed = tailed.then(|| self.products(list, maker)).flatten()?;
            if tail.starts_with('(') && says_limit(tail) {
                listed.limits.push(behind.to_owned());
            }
            return Some(listed);
        }
        let maker = led_maker(behind)?;
        (before.is_empty() && self.is_named(maker))
            .then(|| self.products(list, maker))
            .flatten()
    }

    /// `Product, Product (Maker)`, `Maker (Product, Product)`.
    pub(super) fn bracketed(self, words: &str) -> Option<Listed> {
        let open = words.rfind(" (")?;
        let inside = words.get(open + 2..)?.strip_suffix(')')?;
        let before = words.get(..open)?;
        let capitals = !words.contains(char::is_lowercase);
        let codes = |words: &str| words.contains(|c: char| c.is_ascii_digit());
        let apart = ends_as_firm(inside) || ends_as_firm(before) || codes(inside) && !codes(before);
        if capitals && !apart {
            return None;
        }
        let is_told = ends_as_firm(inside) || is_coded(before) && !is_coded(inside);
        if self.is_named(inside) && (is_told || !self.is_maker(before)) {
            return self.products(before, inside);
        }
        let may_name = inside.len() > 4 || self.ordinary.coins_one(inside);
        (may_name && self.is_named(before))
            .then(|| self.products(inside, before))
            .flatten()
    }

    /// `Product or Product by Maker`, `Product, made by the Maker`.
    pub(super) fn made_by(self, words: &str) -> Option<Listed> {
        let (list, maker) = words.match_indices([' ', ',']).find_map(|(at, _)| {
            let behind = words.get(at..)?;
            let plain_of = behind.starts_with(" of ");
            let len = lead_to_maker(behind).filter(|_| !plain_of)?;
            Some((words.get(..at)?, behind.get(len..)?))
        })?;
        // The first word of a sentence has its capital from that: "Obtain from".
        if !list.contains(' ') && !is_coded(list) {
            return None;
        }
        self.is_maker(maker)
            .then(|| self.products(list, maker))
            .flatten()
    }

    /// `Maker, Product and Product`: a comma joins much else, so that words in capitals have to end as a firm does, where what follows is in capitals too.
    pub(super) fn after_comma(self, words: &str) -> Option<Listed> {
        let (maker, list) = words.split_once(", ")?;
        let capitals = !maker.contains(char::is_lowercase);
        if !self.is_maker(maker)
            || capitals && !ends_as_firm(maker) && !list.contains(char::is_lowercase)
        {
            return None;
        }
        self.products(list, maker)
    }

    /// `Product or Product, MAKER CO`, `Product, Product - Maker Co`: only words that end as a firm does are a maker behind its products.
    pub(super) fn before_firm(self, words: &str) -> Option<Listed> {
        let ends = JOINTS.iter().filter(|joint| **joint != ": ");
        let mut ends = ends.copied().chain([", "]);
        ends.find_map(|joint| {
            let (list, maker) = words.rsplit_once(joint)?;
            let told = ends_as_firm(maker) && self.is_maker(maker) && !ends_as_firm(list);
            let list = list.trim_end();
            let list = ["Product ", "Products "]
                .iter()
                .find_map(|own| list.strip_prefix(own))
                .unwrap_or(list);
            let listed = told.then(|| self.products(list, maker))??;
            // `Wexwool - WEXMOOR WOOLS`, where `Wexwool 40` and `Wexwool 60` are listed
            let mut names = listed.names.iter();
            let whole = names.all(|name| !self.ordinary.is_cut_short(&name.product));
            whole.then_some(listed)
        })
    }

    /// `Maker Co Product`, nothing between them: the maker ends as a firm does, and no product's name does.
    pub(super) fn behind_firm(self, words: &str) -> Option<Listed> {
        ends_of_makers(words).find_map(|at| {
            let (maker, list) = (words.get(..at)?, words.get(at + 1..)?);
            let told = ends_as_firm(maker)
                && self.is_maker(maker)
                && !maker.contains(',')
                && !list
                    .match_indices(' ')
                    .any(|(at, _)| list.get(..at).is_some_and(ends_as_firm));
            let listed = told.then(|| self.products(list, maker))??;
            let first = listed.names.first()?;
            let begins = first.product.split(' ').next()?;
            (is_coded(begins) || self.ordinary.coins_one(begins)).then_some(listed)
        })
    }
}

/// How long the words are, at the start of a text, that lead from a product to its maker: `, both made by the `.
pub(super) fn lead_to_maker(text: &str) -> Option<usize> {
    const OPENING: [&str; 2] = [", ", " "];
    const ALL: [&str; 4] = ["both ", "all ", "which is ", "which are "];
    const LEADING: [&str; 10] = [
        "made by ",
        "as made by ",
        "manufactured by ",
        "as manufactured by ",
        "produced by ",
        "supplied by ",
        "sold by ",
        "by ",
        "of ",
        "from ",
    ];
    let opening = OPENING.iter().find(|opening| text.starts_with(**opening))?;
    let mut len = opening.len();
    let rest = |len: usize| text.get(len..).unwrap_or_default();
    len += ALL
        .iter()
        .find(|all| rest(len).starts_with(**all))
        .map_or(0, |all| all.len());
    // In capitals, `OF` and `FROM` lead to much else: `3 IN. FROM FACE OF FRAMING`.
    let in_capitals = |lead: &str| {
        let head = rest(len).get(..lead.len());
        lead.ends_with("by ") && head.is_some_and(|head| head == lead.to_uppercase())
    };
    len += LEADING
        .iter()
        .find(|lead| rest(len).starts_with(**lead) || in_capitals(lead))?
        .len();
    len += if rest(len).starts_with("the ") { 4 } else { 0 };
    Some(len)
}

/// The maker that a lead names: `of the Pellowfield Rubber Company`, `(Ombrel Kemi)`.
fn led_maker(words: &str) -> Option<&str> {
    let words = words.trim().trim_end_matches(['.', ',']);
    if let Some(inside) = words.strip_prefix('(') {
        return inside.strip_suffix(')');
    }
    let words = words.trim_start_matches(", ");
    let behind = format!(" {words}");
    let len = lead_to_maker(&behind).map_or(0, |len| len - 1);
    words.get(len..).map(str::trim)
}
