//! Words that a stop shortens, and those behind which a sentence may end all the same.

/// Words that a stop shortens without ending the sentence, unless a capital follows one of [`MAY_END`].
pub(super) const ABBREVIATIONS: &[&str] = &[
    "in", "ft", "max", "min", "nom", "tol", "n.t.e", "n.m.t", "n.l.t", "approx", "dia", "diam",
    "no", "nos", "o.c", "oc", "e.g", "i.e", "vs", "incl", "fig", "figs", "ref", "refs", "ga", "sq",
    "cu", "lb", "lbs", "hr", "hrs", "avg", "ind", "galv", "alum", "comp", "ext", "thk", "typ",
    "conc", "horiz", "vert", "sect", "alt", "art", "lin", "temp", "wt", "spec", "specs", "cont",
    "equiv", "resp", "mfr", "mfg", "assy", "ea", "sim", "reqd", "cl", "ctr", "ctrs", "lg", "st",
    "int", "exp", "appr", "int'l", "dept", "cf", "viz", "w.g", "o.d", "i.d", "od", "id", "per",
    "p", "pp", "vol", "ed", "rev", "sched", "gyp", "bd", "fl", "flr", "jt", "jts", "thru", "adj",
    "perp", "par", "ht", "wd", "lgth", "oz", "gal", "pcs", "deg", "mtl", "i.l.o", "ilo", "u.n.o",
    "uno", "n.i.c", "bldg", "sht", "dwg", "dwgs", "btm", "flg", "flgs", "stl", "bds", "clr", "dim",
    "dims", "compr", "mvmt", "defl", "reinf", "chan", "susp", "attn", "pt", "pts", "mins", "secs",
    "sec", "config", "configs", "embed", "opng", "gage", "rtg", "std", "ltwt", "lt", "nwc", "e.s",
    "n.s", "f.s", "b.o", "t.o", "amb", "rtgs", "recd", "supp", "mech", "fastnr", "intermed",
    "longit", "transv", "contin", "matl", "dp", "mo", "mos", "yr", "yrs", "wk", "wks", "pen",
    "hvr", "abt", "qty",
];

/// Abbreviations that also end sentences: a capital after one begins the next.
pub(super) const MAY_END: &[&str] = &[
    "in", "ft", "max", "min", "hr", "hrs", "o.c", "oc", "lb", "lbs", "gal", "ga", "o.d", "i.d",
    "ea", "ctrs", "pcs", "dia", "diam", "thk", "lg", "dp", "mo", "mos", "yr", "yrs", "wk", "wks",
    "hvr",
];

/// Firms' names that end in a stop.
pub(super) const FIRMS: &[&str] = &[
    "inc", "co", "corp", "ltd", "s.a", "a.g", "b.v", "s.p.a", "llc", "bros", "mfg", "intl",
];

/// Capitalised words that go on after an abbreviation rather than begin a sentence.
pub(super) const GO_ON: &[&str] = &[
    "OC", "O.C", "MSG", "GSG", "SWG", "AWG", "CFM", "LF", "X", "C",
];

/// Whether a word is one that a stop shortens.
pub(crate) fn is_abbreviation(word: &str) -> bool {
    ABBREVIATIONS
        .iter()
        .any(|own| own.eq_ignore_ascii_case(word))
}

/// Whether a text ends in a word that a stop shortens.
pub(crate) fn ends_in_abbreviation(text: &str) -> bool {
    let word = last_word(text).to_lowercase();
    ABBREVIATIONS.contains(&word.as_str()) || FIRMS.contains(&word.as_str()) || word.len() == 1
}

pub(super) fn last_word(text: &str) -> &str {
    let start = text
        .rfind(|c: char| !(c.is_alphanumeric() || matches!(c, '.' | '\'')))
        .map_or(0, |at| {
            at + text
                .get(at..)
                .and_then(|rest| rest.chars().next())
                .map_or(1, char::len_utf8)
        });
    text.get(start..).unwrap_or_default()
}
