use clap::Args;
use measure::Quantity;

use super::calc::quantity::quantity;
use crate::fault::Fault;
use crate::working::AtHand;

/// What the installer has at hand, apart from thicknesses of packing.
#[derive(Debug, Args)]
pub(super) struct Supplies {
    /// Width and length of a batt
    #[arg(long, value_parser = quantity, num_args = 2, default_values = ["24 in.", "48 in."], value_names = ["WIDTH", "LENGTH"])]
    batt: Vec<Quantity>,
    /// Loss of coating and sealant, as a percentage of what is used
    #[arg(long, value_parser = quantity, default_value = "10 %")]
    loss: Quantity,
    /// Volume of a package of sealant
    #[arg(long, value_parser = quantity, default_value = "10.1 fl oz")]
    package: Quantity,
}

impl Supplies {
    /// The same with thicknesses of packing.
    pub(super) fn with(&self, stock: Vec<Quantity>) -> Result<AtHand, Fault> {
        let [wide, long] = self.batt.as_slice() else {
            return Err(Fault::of_command("a batt has a width and a length"));
        };
        Ok(AtHand {
            stock,
            batt: (*wide, *long),
            loss: self.loss,
            package: self.package,
        })
    }
}
