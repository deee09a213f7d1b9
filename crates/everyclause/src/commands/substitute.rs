use clap::Args;
use selection::substitution::Outcome as Comes;
use site::{Fact, Value};

use crate::answer::{Answer, Outcome};
use crate::fault::{Fault, Faults};
use crate::finding;
use crate::inputs::Inputs;
use crate::library::Library;
use crate::show;

/// Says what another product would come to: which listings still hold, which joints need another, and which have none
///
/// What was known of the product before (its density, its thickness) isn't known of the other one; say what is with
/// `--with`.
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause substitute \"packing=Ulmeregg Mineral Fibre | Ulmerpad 4\" --project demo-project
  everyclause substitute \"packing=Vostrika Fibre Works | Vostmat 60\" --with \"packing.density=6 pcf\" --project demo-project")]
pub(crate) struct Substitute {
    /// The component and the product: `coating=Maker | Product`
    #[arg(value_name = "COMPONENT=PRODUCT")]
    product: String,
    /// What is known of the product besides: a property and its value each
    #[arg(long, value_name = "FACT", num_args = 1..)]
    with: Vec<String>,
    /// How many other listings to tell for each condition
    #[arg(long, value_name = "COUNT", default_value_t = 3)]
    most: usize,
    #[command(flatten)]
    inputs: Inputs,
    /// Print it as JSON (see `everyclause schema substitute`)
    #[arg(long)]
    json: bool,
}

impl Substitute {
    /// What the product would come to.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let import = self.inputs.import()?;
        let product = product(&self.product)?;
        let with = if self.with.is_empty() {
            Vec::new()
        } else {
            finding::facts(&self.with)?
        };
        let library = Library::open(&self.inputs.listings()?)?;
        let aside = show::find::aside(&library);
        let made = finding::substituted(&import.project, &library, &product, &with, self.most)?;
        let holds = made
            .conditions
            .iter()
            .all(|one| one.outcome == Comes::Holds);
        let answer = if self.json {
            Answer::json(&made)
        } else {
            Answer::of(show::substitution::substitution(&made))
        };
        Ok(answer
            .ending(Outcome::unsettled_if(!holds))
            .with_aside(aside))
    }
}

/// The product as a fact: `packing=...` is of `packing.product`.
fn product(given: &str) -> Result<Fact, Faults> {
    let given = match given.split_once('=') {
        Some((component, product)) if !component.contains('.') => {
            format!("{}.product={}", component.trim(), product.trim())
        }
        _ => given.to_owned(),
    };
    let facts = finding::facts(&[given])?;
    let is_product = |fact: &&Fact| matches!(fact.value, Value::Product(_));
    facts.iter().find(is_product).cloned().ok_or_else(|| {
        Fault::of_command("this is no product of a component")
            .help("write the component and the product: `packing=Maker | Product`")
            .into()
    })
}
