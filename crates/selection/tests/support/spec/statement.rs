//! What a listing asks, as drawn: a property, a bound, and when it holds.

/// A value, in whole steps of its kind.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Amount {
    /// In 64ths of an inch.
    Length(usize),
    Percent(usize),
    /// In pounds per cubic foot.
    Density(usize),
    /// A gauge number of sheet steel: the lower, the heavier.
    Gauge(usize),
    Count(usize),
    /// In pounds per foot.
    Weight(usize),
    Hours(usize),
    /// In degrees Fahrenheit, of those that are whole in Celsius.
    Fahrenheit(usize),
}

/// How a value is bounded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ask {
    AtLeast(Amount),
    AtMost(Amount),
    Nominal(Amount),
    Between(Amount, Amount),
    Exactly(Amount),
}

/// When a statement holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum When {
    Always,
    /// For one rating, in hours.
    Rating(usize),
    /// In joints up to this width, in 64ths of an inch.
    UpTo(usize),
    /// In joints wider than this.
    Over(usize),
}

impl When {
    /// Whether it holds at a joint of such a rating and width.
    pub fn holds(self, rating: usize, width: usize) -> bool {
        match self {
            Self::Always => true,
            Self::Rating(of) => of == rating,
            Self::UpTo(of) => width <= of,
            Self::Over(of) => width > of,
        }
    }
}

/// One thing that a listing asks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Statement {
    /// Its number in the listing, by which its place in the text is found again.
    pub id: usize,
    pub property: &'static str,
    pub ask: Ask,
    pub when: When,
}
