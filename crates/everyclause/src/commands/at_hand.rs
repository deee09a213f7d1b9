use clap::Args;
use measure::Quantity;
use workcard::AtHand;
use workcard::at_hand::Said;

use super::calc::quantity::quantity;
use crate::fault::Fault;

/// What the installer has at hand, apart from thicknesses of packing.
#[derive(Debug, Args)]
pub(super) struct Supplies {
    /// Width and length of a batt
    #[arg(long, value_parser = quantity, num_args = 2, default_values_t = [AtHand::usual().batt.0, AtHand::usual().batt.1], value_names = ["WIDTH", "LENGTH"])]
    batt: Vec<Quantity>,
    /// Loss of coating and sealant, as a percentage of what is used
    #[arg(long, value_parser = quantity, default_value_t = AtHand::usual().loss)]
    loss: Quantity,
    /// Volume of a package of sealant
    #[arg(long, value_parser = quantity, default_value_t = AtHand::usual().package)]
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
            said: Said::ByOptions,
        })
    }
}
