//! Which column holds what, by its heading.

/// What a column of such a schedule holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Role {
    /// The number of the item.
    Number,
    /// The item's name.
    Name,
    /// What is asked of it.
    Property,
    /// A limit of its value, or its unit.
    Value,
    /// The ratings or the cases that a row is for.
    Case,
    /// Who makes it and what it is called.
    Product,
    /// Words on a row.
    Remark,
}

const NUMBERS: &[&str] = &[
    "item", "items", "no", "nos", "ref", "pos", "cl", "clause", "mark", "nr", "#", "id", "key",
    "code", "row", "line", "item no", "ref no", "pt",
];
const NAMES: &[&str] = &[
    "component",
    "components",
    "part",
    "element",
    "member",
    "material",
    "description",
    "item",
    "constituent",
    "assembly",
];
/// Headings of what is asked, and of nothing else.
const PROPERTIES: &[&str] = &[
    "property",
    "properties",
    "parameter",
    "characteristic",
    "attribute",
    "feature",
    "dimension",
    "quantity",
    "measure",
    "what",
    "what is checked",
    "what is measured",
    "component and property",
    "component and requirement",
    "part and property",
    "part and requirement",
    "item and property",
    "item and requirement",
    "description and property",
    "component / property",
    "component/property",
    "part / property",
    "part/property",
];
/// Headings of what is asked, which may be of values elsewhere.
const REQUIREMENTS: &[&str] = &[
    "requirement",
    "requirements",
    "provision",
    "detail",
    "aspect",
    "criterion",
    "what is required",
    "subject",
    "check",
];
const LIMITS: &[&str] = &[
    "min",
    "max",
    "minimum",
    "maximum",
    "least",
    "most",
    "at least",
    "at most",
    "not less than",
    "not more than",
    "lower limit",
    "upper limit",
    "min value",
    "max value",
];
/// Headings of values that no limit stands over.
const VALUES: &[&str] = &[
    "nom",
    "nominal",
    "value",
    "values",
    "figure",
    "target",
    "exact",
    "tol",
    "tolerance",
    "limit",
];
const PRODUCTS: &[&str] = &[
    "maker",
    "maker / type",
    "maker/type",
    "maker and type",
    "maker, type",
    "maker / product",
    "maker and product",
    "manufacturer",
    "product",
    "products",
    "product / maker",
    "type",
    "make",
    "supplier",
    "brand",
    "trade name",
];
const UNITS: &[&str] = &["unit", "units", "uom"];
const CASES: &[&str] = &[
    "rating",
    "ratings",
    "rating, h",
    "rating, hr",
    "rating h",
    "rating hr",
    "rating (h)",
    "rating (hr)",
    "hours",
    "hr",
    "applies to",
    "for rating",
    "case",
    "when",
    "where",
    "for",
];
const REMARKS: &[&str] = &[
    "note", "notes", "remark", "remarks", "comment", "comments", "see", "see note", "fn",
];

/// What a heading says that its column holds; none where no list knows it.
pub(super) fn role(words: &str) -> Option<Role> {
    let bare = bare(words);
    [
        (PROPERTIES, Role::Property),
        (REQUIREMENTS, Role::Property),
        (LIMITS, Role::Value),
        (VALUES, Role::Value),
        (UNITS, Role::Value),
        (CASES, Role::Case),
        (REMARKS, Role::Remark),
        (NAMES, Role::Name),
        (PRODUCTS, Role::Product),
        (NUMBERS, Role::Number),
    ]
    .into_iter()
    .find(|(names, _)| names.contains(&bare.as_str()))
    .map(|(_, role)| role)
    .or_else(|| is_of_joints(words).then_some(Role::Value))
}

/// Whether a heading says what its column asks: `Property`, `What is measured`.
pub(crate) fn heads_properties(words: &str) -> bool {
    PROPERTIES.contains(&bare(words).as_str())
}

/// Whether a heading is the code of a sort of joints, `F1`, which other words explain.
pub(crate) fn is_code(words: &str) -> bool {
    const LONGEST: usize = 3;
    let number = words.trim_start_matches(|c: char| c.is_ascii_uppercase());
    let letters = words.len() - number.len();
    (1..LONGEST).contains(&letters)
        && words.len() <= LONGEST
        && !number.is_empty()
        && number.bytes().all(|byte| byte.is_ascii_digit())
}

/// Whether a heading says for which joints the values below it are: `1 hr`, `EI 60`, `F1 1 hr`.
fn is_of_joints(words: &str) -> bool {
    let words: Vec<&str> = words.split_whitespace().collect();
    let rest = match words.as_slice() {
        [code, rest @ ..] if is_code(code) => rest,
        rest => rest,
    };
    let number = |word: &str| {
        word.starts_with(|c: char| c.is_ascii_digit())
            && word
                .chars()
                .all(|c| c.is_ascii_digit() || "-/.".contains(c))
    };
    let time = |word: &str| {
        ["h", "hr", "hrs", "hour", "hours", "min", "minutes"].contains(&bare(word).as_str())
    };
    match rest {
        [] => true,
        [amount, unit] => {
            number(amount) && time(unit)
                || ["E", "EI", "EW", "REI"].contains(amount) && number(unit)
        }
        _ => false,
    }
}

/// Whether a heading numbers items. "Item" may, and may name them.
pub(in crate::outline) fn heads_numbers(words: &str) -> bool {
    NUMBERS.contains(&bare(words).as_str())
}

/// Whether a heading is of limits.
pub(super) fn heads_limits(words: &str) -> bool {
    LIMITS.contains(&bare(words).as_str())
}

/// Whether a heading is of units.
pub(super) fn heads_units(words: &str) -> bool {
    UNITS.contains(&bare(words).as_str())
}

/// A heading in small letters, without the stops that shorten it.
fn bare(words: &str) -> String {
    words.trim().to_lowercase().replace('.', "")
}
