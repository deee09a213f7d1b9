use clap::Args;
use engineering::leakage::{
    self, JointLeakage, JointsAsked, Opening, OpeningsAsked, joints::code_limit,
};
use engineering::{Error, Known, Worked};
use measure::Quantity;

use super::quantity::{known, quantity};

/// Air through the joints of a barrier, against the limit for each length
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc leakage \\
      --joint \"J-1: 20 ft; 1 cfm/ft; 2 cfm/ft\" \"J-2: 12 ft; 6 cfm/ft; none\"")]
pub(super) struct Leakage {
    /// Joints, as "NAME: LENGTH; L AMBIENT; L ELEVATED", "none" where there is no rating
    #[arg(long, value_parser = joint, num_args = 1.., required = true)]
    joint: Vec<JointLeakage>,
    /// Limit for each length, instead of the code's 5 cfm/ft
    #[arg(long, value_parser = quantity)]
    limit: Option<Quantity>,
}

fn joint(text: &str) -> Result<JointLeakage, String> {
    let example = "write it as `J-1: 20 ft; 1 cfm/ft; 2 cfm/ft`";
    let (name, rest) = text.split_once(':').ok_or(example)?;
    let parts: Vec<&str> = rest.split(';').map(str::trim).collect();
    let [length, ambient, elevated] = parts.as_slice() else {
        return Err(example.to_owned());
    };
    Ok(JointLeakage {
        name: name.trim().to_owned(),
        length: known(quantity(length)?),
        ambient: rating(ambient)?,
        elevated: rating(elevated)?,
    })
}

fn rating(text: &str) -> Result<Option<Known>, String> {
    if text.eq_ignore_ascii_case("none") {
        return Ok(None);
    }
    quantity(text).map(|quantity| Some(known(quantity)))
}

impl Leakage {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let limit = self.limit.map_or_else(code_limit, known);
        Ok(leakage::barrier_leakage(&JointsAsked {
            joints: self.joint.clone(),
            limit,
        })?
        .worked)
    }
}

/// Air through openings of a smoke barrier, for each and together
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc openings \\
      --opening \"P-1: 12.6 sq in.; 5 cfm/sq ft\" \"P-2: 1 sq ft; 3 cfm/sq ft\" \\
      --within \"100 sq ft\"")]
pub(super) struct Openings {
    /// Openings, as "NAME: AREA; L RATING"
    #[arg(long, value_parser = opening, num_args = 1.., required = true)]
    opening: Vec<Opening>,
    /// Area of barrier they are in
    #[arg(long, value_parser = quantity, default_value = "100 sq ft")]
    within: Quantity,
}

fn opening(text: &str) -> Result<Opening, String> {
    let example = "write it as `P-1: 12.6 sq in.; 5 cfm/sq ft`";
    let (name, rest) = text.split_once(':').ok_or(example)?;
    let (area, rating) = rest.split_once(';').ok_or(example)?;
    Ok(Opening {
        name: name.trim().to_owned(),
        area: known(quantity(area.trim())?),
        rating: known(quantity(rating.trim())?),
    })
}

impl Openings {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let asked = OpeningsAsked {
            openings: self.opening.clone(),
            within: known(self.within),
        };
        Ok(leakage::opening_leakage(&asked)?.worked)
    }
}
