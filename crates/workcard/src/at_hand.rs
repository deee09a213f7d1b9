//! What the installer has at hand, where the schedule doesn't say.

use measure::{Number, Quantity, Unit};

/// What the installer has at hand, where the schedule doesn't say.
#[derive(Debug, Clone)]
pub struct AtHand {
    /// Thicknesses of packing.
    pub stock: Vec<Quantity>,
    /// Width and length of a batt.
    pub batt: (Quantity, Quantity),
    /// Loss of coating and sealant, as a percentage of what is used.
    pub loss: Quantity,
    /// Volume of a package of sealant.
    pub package: Quantity,
    /// Who said so.
    pub said: Said,
}

/// Who said what is at hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Said {
    /// Whoever gave a command, by its options, which notes then name.
    ByOptions,
    /// Nobody: it is what is usual.
    AsUsual,
}

impl AtHand {
    /// What is usual, from common practice: batts of 24 by 48 in., from 1 to 4 in. thick; a tenth of coating and sealant lost; sealant in
    /// cartridges of 10.1 fl oz.
    pub fn usual() -> Self {
        let inches = |number: Number| Quantity::new(number, Unit::Inch);
        let tenths = |tenths: i32| Number::whole(tenths).over(Number::whole(10));
        let halves =
            [2, 3, 4, 6, 8].map(|halves: i32| Number::whole(halves).over(Number::whole(2)));
        Self {
            stock: halves.into_iter().flatten().map(inches).collect(),
            batt: (inches(Number::whole(24)), inches(Number::whole(48))),
            loss: Quantity::new(Number::whole(10), Unit::Percent),
            package: Quantity::new(tenths(101).unwrap_or(Number::whole(10)), Unit::FluidOunce),
            said: Said::AsUsual,
        }
    }

    /// How the notes name an option, behind what it says; nothing where nobody gave it.
    pub(crate) fn option(&self, name: &str) -> String {
        match self.said {
            Said::ByOptions => format!(" ({name})"),
            Said::AsUsual => String::new(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::AtHand;

    #[test]
    fn what_is_usual_is_as_it_is_sold() {
        let usual = AtHand::usual();
        let stock: Vec<String> = usual.stock.iter().map(ToString::to_string).collect();
        assert_eq!(stock, ["1 in.", "1-1/2 in.", "2 in.", "3 in.", "4 in."]);
        let (wide, long) = usual.batt;
        assert_eq!(format!("{wide} × {long}"), "24 in. × 48 in.");
        assert_eq!(usual.loss.to_string(), "10 %");
        assert_eq!(usual.package.to_string(), "10.1 fl oz");
    }
}
