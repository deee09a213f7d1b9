//! Which strips of the stock at hand make a thickness.

use measure::{Number, Quantity, Unit, print};

use crate::error::Error;
use crate::exact::{count, exact};

/// The most strips that are laid side by side in one joint; thicker stock is the answer beyond it.
pub const MOST_STRIPS: u64 = 24;

/// Strips of one thickness.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Layer {
    /// How many.
    pub strips: u64,
    /// How thick each is before it is compressed.
    pub thickness: Quantity,
}

/// Strips side by side, of one thickness or two.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stack {
    /// The layers, the thicker first.
    pub layers: Vec<Layer>,
    /// Their thickness together.
    pub thickness: Quantity,
}

impl Stack {
    /// A stack of these layers.
    ///
    /// # Errors
    /// When no strip is in it, or a thickness isn't above zero.
    pub fn of(layers: Vec<Layer>, unit: Unit) -> Result<Self, Error> {
        let mut sum = exact(0);
        for layer in &layers {
            let known = crate::Known::new(layer.thickness, "");
            let number = known.above_zero("the thickness of a strip", unit)?;
            sum = sum + exact(number) * count(layer.strips)?;
        }
        let sum = sum.get("the thickness of the stack")?;
        if sum.is_zero() {
            return Err(Error::range("the number of strips", "0", "1 or more"));
        }
        Ok(Self {
            layers,
            thickness: Quantity::new(sum, unit),
        })
    }

    /// How many strips lie side by side.
    pub fn strips(&self) -> u64 {
        self.layers.iter().map(|layer| layer.strips).sum()
    }

    /// In words: "2 strips of 1 in. and 1 of 2 in.".
    pub fn words(&self) -> String {
        let parts: Vec<String> = self
            .layers
            .iter()
            .map(|layer| {
                let strips = if layer.strips == 1 { "strip" } else { "strips" };
                format!(
                    "{} {strips} of {}",
                    layer.strips,
                    print::both(layer.thickness)
                )
            })
            .collect();
        parts.join(" and ")
    }
}

/// Every stack of one or two thicknesses that is at most so thick, and the first of each kind beyond it.
///
/// # Errors
/// When a thickness of the stock isn't a length above zero.
pub(crate) fn stacks(stock: &[Quantity], unit: Unit, most: Number) -> Result<Vec<Stack>, Error> {
    let mut found = Vec::new();
    let mut thicknesses: Vec<(Number, Quantity)> = Vec::new();
    for quantity in stock {
        let known = crate::Known::new(*quantity, "");
        thicknesses.push((
            known.above_zero("a thickness of the stock", unit)?,
            *quantity,
        ));
    }
    thicknesses.sort_by_key(|(number, _)| core::cmp::Reverse(*number));
    thicknesses.dedup_by(|one, other| one.0 == other.0);
    for (at, (_, thick)) in thicknesses.iter().enumerate() {
        let thinner = thicknesses.get(at + 1..).unwrap_or_default();
        for of_thick in 1..=MOST_STRIPS {
            let alone = Layer {
                strips: of_thick,
                thickness: *thick,
            };
            let only = Stack::of(vec![alone], unit)?;
            let is_beyond = only.thickness.number > most;
            found.push(only);
            if is_beyond {
                break;
            }
            for (_, thin) in thinner {
                for of_thin in 1..=MOST_STRIPS.saturating_sub(of_thick) {
                    let second = Layer {
                        strips: of_thin,
                        thickness: *thin,
                    };
                    let mixed = Stack::of(vec![alone, second], unit)?;
                    let is_beyond = mixed.thickness.number > most;
                    found.push(mixed);
                    if is_beyond {
                        break;
                    }
                }
            }
        }
    }
    Ok(found)
}
