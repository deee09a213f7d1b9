//! The words of a case: a rating, or joints that their width sets apart. Hours beside words of curing or heat are times.

use crate::phrase::count_word;

/// The classes that a rating may be of.
const CLASSES: &[&str] = &["e", "ei", "rei", "ew", "frl"];

/// Words beside a rating.
const BESIDE: &[&str] = &[
    "for",
    "where",
    "when",
    "f",
    "t",
    "fire",
    "rating",
    "ratings",
    "rated",
    "wall",
    "walls",
    "system",
    "systems",
    "joint",
    "joints",
    "assembly",
    "assemblies",
    "and",
    "or",
    "&",
    "only",
    "the",
    "resistance",
    "class",
    "over",
    "to",
    "up",
];

/// Several joints, which their width sets apart.
const JOINTS: &[&str] = &["joints", "gaps", "openings", "widths"];

/// What a width is of.
const NOUNS: &[&str] = &["joint", "gap", "opening", "width", "wide", "nominal", "nom"];

/// Words and signs that set joints apart.
const COMPARE: &[&str] = &[
    "over",
    "under",
    "above",
    "below",
    "exceeding",
    "up",
    "to",
    "than",
    "less",
    "more",
    "greater",
    "wider",
    "narrower",
    "larger",
    "smaller",
    "between",
    "thru",
    "through",
    "beyond",
    "<",
    ">",
    "≤",
    "≥",
];

/// Words that may stand in a case besides.
const SMALL: &[&str] = &[
    "for",
    "in",
    "with",
    "of",
    "and",
    "or",
    "not",
    "but",
    "including",
    "incl",
    "inclusive",
    "from",
    "no",
    "the",
    "&",
    "-",
    "–",
    "=",
    "w",
];

/// Whether the first word of a line may be one of a case: most lines need no more than that.
pub(super) fn may_open(line: &str) -> bool {
    let first = line
        .split([' ', '-', '.', ':', ',', '('])
        .next()
        .unwrap_or_default();
    let known = |list: &[&str]| list.iter().any(|word| first.eq_ignore_ascii_case(word));
    first.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '<' | '>' | '≤' | '≥'))
        || first.chars().any(|c| c.is_ascii_digit())
        || [JOINTS, NOUNS, COMPARE, SMALL, CLASSES, BESIDE]
            .iter()
            .any(|list| known(list))
}

/// Whether words speak of hours that pass, or of heat: hours beside them are no rating.
pub(super) fn speaks_of_time(words: &str) -> bool {
    const OF_TIME: &[&str] = &[
        "cure",
        "cured",
        "curing",
        "cures",
        "dry",
        "drying",
        "dries",
        "tack",
        "recoat",
        "set",
        "setting",
        "wait",
        "life",
        "old",
        "age",
        "rain",
        "interval",
        "intervals",
        "elapsed",
        "furnace",
        "temperature",
        "hose",
        "exposure",
        "test",
    ];
    let lower = words.to_lowercase();
    let mut each = lower.split(|c: char| !c.is_alphabetic());
    words.contains('°') || each.any(|word| OF_TIME.contains(&word))
}

/// Whether words are nothing but one rating or several: `1 and 2 Hr`, `F Rating 2 hr`, `EI 90, EI 120`, `3-hour walls`.
pub(super) fn is_rating(words: &str) -> bool {
    const HOURS: &[&str] = &["h", "hr", "hrs", "hour", "hours"];
    const MINUTES: &[&str] = &["min", "mins", "minute", "minutes"];
    const LONGEST_HOURS: f64 = 4.0;
    const SHORTEST_MINUTES: f64 = 15.0;
    let lower = words.to_lowercase();
    let mut parts = lower
        .split(|c: char| c.is_whitespace() || matches!(c, ',' | '(' | ')' | '-' | '/'))
        .map(|word| word.trim_end_matches('.'))
        .filter(|word| !word.is_empty());
    let (mut named, mut highest, mut numbered) = (None, 0_f64, false);
    let known = parts.all(|word| {
        let letters = word.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
        let digits = word.trim_start_matches(|c: char| c.is_ascii_alphabetic());
        let (number, unit) = if digits.len() < word.len() && !digits.is_empty() {
            (
                digits,
                word.get(..word.len() - digits.len()).unwrap_or_default(),
            )
        } else {
            (
                word.get(..word.len() - letters.len()).unwrap_or_default(),
                letters,
            )
        };
        highest = highest.max(number.parse().unwrap_or_default());
        // `2.1 1 h` is a number of an item, and hours.
        let runs_on = numbered && !number.is_empty() && !lower.contains([',', '-', '/']);
        numbered = !number.is_empty();
        let hours = HOURS.contains(&unit);
        let other = MINUTES.contains(&unit) || CLASSES.contains(&unit);
        if hours || other {
            named = Some(hours);
        }
        !runs_on
            && (number.is_empty() || number.parse::<f64>().is_ok())
            && (unit.is_empty() || hours || other || number.is_empty() && BESIDE.contains(&unit))
    });
    let plausible = named.is_some_and(|hours| {
        if hours {
            highest <= LONGEST_HOURS
        } else {
            highest >= SHORTEST_MINUTES
        }
    });
    known && plausible && highest > 0.0
}

/// Whether words are a rating and how many layers there are: `F Rating 2 Hr, two layers`.
pub(super) fn is_rating_and_layers(words: &str) -> bool {
    let Some((rating, layers)) = words.split_once(", ") else {
        return false;
    };
    let mut words = layers.split(' ').filter(|word| *word != "with");
    let count = words.next().unwrap_or_default();
    let counted = count_word(count).is_some() || count.parse::<u8>().is_ok();
    let named = words
        .next()
        .is_some_and(|word| matches!(word, "layer" | "layers"));
    is_rating(rating) && counted && named && words.next().is_none()
}

/// Whether words are nothing but joints, or a width, and what sets them apart from others.
pub(super) fn sets_joints_apart(words: &str) -> bool {
    const UNITS: &[&str] = &["in", "inch", "inches", "mm", "cm", "ft", "\""];
    let lower = words.to_lowercase();
    let mut told = Told::default();
    let known = lower
        .split(|c: char| c.is_whitespace() || matches!(c, '(' | ')'))
        .filter(|word| !word.is_empty())
        .all(|word| {
            let signed = word.trim_start_matches(['<', '>', '≤', '≥', '=']);
            let bare = signed.trim_end_matches('.');
            let unit = bare.trim_start_matches(|c: char| {
                c.is_ascii_digit() || matches!(c, '-' | '–' | '/' | '.')
            });
            let is_number =
                unit.len() < bare.len() && bare.starts_with(|c: char| c.is_ascii_digit());
            told.numbers += usize::from(is_number);
            told.measured |= UNITS.contains(&unit);
            told.compared |= signed.len() < word.len() || COMPARE.contains(&word);
            told.joints |= JOINTS.contains(&bare);
            bare.is_empty()
                || is_number && unit.is_empty()
                || UNITS.contains(&unit)
                || [JOINTS, NOUNS, COMPARE, SMALL]
                    .iter()
                    .any(|list| list.contains(&bare))
        });
    known && told.sets_apart()
}

/// What the words of a case tell.
#[derive(Default)]
struct Told {
    numbers: usize,
    measured: bool,
    compared: bool,
    joints: bool,
}

impl Told {
    /// Several joints of one width are as much a case as those over one: `2 in. joints`.
    fn sets_apart(&self) -> bool {
        const MOST: usize = 8;
        (1..=MOST).contains(&self.numbers) && self.measured && (self.compared || self.joints)
    }
}
