use measure::{Dimension, Number, Quantity, Unit, print};

/// Whence a value is known.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Origin {
    /// A fact of the joint; where it comes from, in words.
    Fact(String),
    /// Nothing is known of the joint: this is what the listing asks for, in its words ("at least 2 in. (51 mm)").
    Listing(String),
    /// Neither says: a usual value, so that there is something to draw.
    Usual,
}

impl Origin {
    /// Whether the joint itself is known to be so.
    pub const fn is_fact(&self) -> bool {
        matches!(self, Self::Fact(_))
    }
}

/// A length that is drawn.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Length {
    /// The length exactly, in the unit its holder wrote.
    pub quantity: Quantity,
    /// Whence it is known.
    pub from: Origin,
}

impl Length {
    /// A length that is drawn; none when it is no length, or one that nothing built has: from nothing up to 20 m.
    pub fn new(quantity: Quantity, from: Origin) -> Option<Self> {
        let most = Quantity::new(Number::whole(20), Unit::Metre);
        let fits = quantity.dimension() == Dimension::Length
            && !quantity.number.is_negative()
            && quantity.compare(most)?.is_le();
        fits.then_some(Self { quantity, from })
    }

    /// A usual length in millimetres.
    pub(crate) fn usual(mm: i32) -> Self {
        Self {
            quantity: Quantity::new(Number::whole(mm), Unit::Millimetre),
            from: Origin::Usual,
        }
    }

    /// In millimetres.
    pub fn mm(&self) -> f64 {
        self.quantity
            .to(Unit::Millimetre)
            .map_or(0.0, |length| as_number(length.number))
    }

    /// In its own unit and in the other: `2-1/2 in. (63.5 mm)`.
    pub fn words(&self) -> String {
        print::both(self.quantity)
    }

    /// As words, with what it rests on where that isn't the joint itself.
    pub fn told(&self) -> String {
        match &self.from {
            Origin::Fact(_) => self.words(),
            Origin::Listing(words) => format!("not shown; listing: {words}"),
            Origin::Usual => format!("not stated; drawn {}", self.words()),
        }
    }
}

/// An exact number as one to draw with.
#[expect(
    clippy::cast_precision_loss,
    reason = "a drawing needs no more digits than a double has; verdicts never use it"
)]
pub(crate) fn as_number(number: Number) -> f64 {
    number.numerator() as f64 / number.denominator() as f64
}

/// A percentage as a share of one.
pub(crate) fn percent(quantity: Quantity) -> Option<Number> {
    (quantity.dimension() == Dimension::Fraction)
        .then(|| quantity.number.over(Number::whole(100)))
        .flatten()
}
