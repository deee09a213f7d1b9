use clap::Args;
use engineering::movement::{
    self, Cause, Contribution, DriftAsked, EnvelopeAsked, JointWidthAsked, RunnerAsked, Sense,
    ShareAsked, When,
};
use engineering::{Error, Worked};
use measure::{Number, Quantity};

use super::quantity::{known, known_if, number, quantity, readings};

/// Deflection limit L/n as a bound, where the deflection itself isn't known
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc limit --span \"24 ft\" --n 360")]
pub(super) struct Limit {
    /// Span
    #[arg(long, value_parser = quantity)]
    span: Quantity,
    /// The n of L/n
    #[arg(long)]
    n: u32,
}

impl Limit {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        Ok(movement::deflection_limit(&known(self.span), self.n)?.worked)
    }
}

/// Change of length with temperature
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause calc thermal --length \"100 ft\" --material steel --difference \"100 °F rise\"
  everyclause calc thermal --length \"30 m\" --coefficient \"0.0000117 1/K\" \\
      --difference \"40 K\"")]
pub(super) struct Thermal {
    /// Length that is free to move
    #[arg(long, value_parser = quantity)]
    length: Quantity,
    /// Material of the table: steel, reinforced-concrete, gypsum-board
    #[arg(long, required_unless_present = "coefficient")]
    material: Option<String>,
    /// Coefficient of expansion
    #[arg(long, value_parser = quantity, conflicts_with = "material")]
    coefficient: Option<Quantity>,
    /// Difference of temperature, as "100 °F rise" or "40 K"
    #[arg(long, value_parser = quantity)]
    difference: Quantity,
}

impl Thermal {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let coefficient = match self.coefficient {
            Some(coefficient) => known(coefficient),
            None => movement::expansion(self.material.as_deref().unwrap_or_default())?,
        };
        Ok(movement::thermal(&known(self.length), &coefficient, &known(self.difference))?.worked)
    }
}

/// Design storey drift, against its limit
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc drift --elastic \"0.25 in.\" --cd 5.5 --ie 1 --height \"13 ft\" \\
      --limit 0.020")]
pub(super) struct Drift {
    /// Elastic drift of the storey
    #[arg(long, value_parser = quantity)]
    elastic: Quantity,
    /// Deflection amplification factor, Cd
    #[arg(long, value_parser = number)]
    cd: Number,
    /// Importance factor, Ie
    #[arg(long, value_parser = number)]
    ie: Number,
    /// Storey height
    #[arg(long, value_parser = quantity, requires = "limit")]
    height: Option<Quantity>,
    /// Limit as a part of the height
    #[arg(long, value_parser = number, requires = "height")]
    limit: Option<Number>,
}

impl Drift {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let asked = DriftAsked {
            elastic: known(self.elastic),
            amplification: self.cd,
            importance: self.ie,
            height: known_if(self.height),
            limit: self.limit,
        };
        Ok(movement::design_drift(&asked)?.worked)
    }
}

/// Least width of a sealant joint for its movements
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc sealant-joint --capability \"50 %\" --movement \"0.082 in.\" \"0.173 in.\" \\
      --tolerance \"0.125 in.\"")]
pub(super) struct SealantJoint {
    /// What the sealant can move, as a percentage of its width
    #[arg(long, value_parser = quantity)]
    capability: Quantity,
    /// Movements it must follow
    #[arg(long, value_parser = quantity, num_args = 1.., required = true)]
    movement: Vec<Quantity>,
    /// Tolerance of construction
    #[arg(long, value_parser = quantity)]
    tolerance: Option<Quantity>,
}

impl SealantJoint {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let asked = JointWidthAsked {
            capability: known(self.capability),
            movements: self.movement.iter().map(|one| known(*one)).collect(),
            tolerance: known_if(self.tolerance),
        };
        Ok(movement::sealant_joint_width(&asked)?.worked)
    }
}

/// What moves a joint, added up into closing, opening and shear
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc demand --move \"dead closes before 1/4 in.\" \"live closes after 3/8 in.\" \\
      \"thermal either after 1/16 in.\" \"seismic shears after 1 in.\"")]
pub(super) struct Demand {
    /// Movements, as "CAUSE WAY WHEN AMOUNT": dead, live, creep, thermal, wind or seismic; closes, opens, either or
    /// shears; before or after the width is read
    #[arg(long = "move", value_name = "MOVEMENT", value_parser = contribution, num_args = 1.., required = true)]
    moves: Vec<Contribution>,
}

fn contribution(text: &str) -> Result<Contribution, String> {
    let mut words = text.trim().splitn(4, ' ');
    let (cause, sense, when, amount) = (words.next(), words.next(), words.next(), words.next());
    let example = "write it as `live closes after 3/8 in.`";
    let cause = match cause {
        Some("dead") => Cause::DeadLoad,
        Some("live") => Cause::LiveLoad,
        Some("creep") => Cause::Creep,
        Some("thermal") => Cause::Thermal,
        Some("wind") => Cause::Wind,
        Some("seismic") => Cause::Seismic,
        _ => {
            return Err(format!(
                "the cause is dead, live, creep, thermal, wind or seismic; {example}"
            ));
        }
    };
    let sense = match sense {
        Some("closes") => Sense::Closes,
        Some("opens") => Sense::Opens,
        Some("either") => Sense::EitherWay,
        Some("shears") => Sense::Shears,
        _ => {
            return Err(format!(
                "a movement closes, opens, either or shears; {example}"
            ));
        }
    };
    let when = match when {
        Some("before") => When::Before,
        Some("after") => When::After,
        _ => {
            return Err(format!(
                "it happens before or after the width is read; {example}"
            ));
        }
    };
    let amount = amount.ok_or_else(|| format!("how far it moves is missing; {example}"))?;
    Ok(Contribution {
        cause,
        sense,
        when,
        amount: known(quantity(amount)?),
    })
}

impl Demand {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        Ok(movement::combine(&self.moves)?.worked)
    }
}

/// A movement as a percentage of the width as found, against what was tested
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc share --movement \"0.2 in.\" --found \"13/16 in.\" \"3/4 in.\" \\
      --resolution \"1/16 in.\" --tested \"25 %\"")]
pub(super) struct Share {
    /// How far the joint closes, opens or shears after its width was read
    #[arg(long, value_parser = quantity)]
    movement: Quantity,
    /// Width as found; several readings where there are some
    #[arg(long, value_parser = quantity, num_args = 1.., required = true)]
    found: Vec<Quantity>,
    /// Smallest division of the tape
    #[arg(long, value_parser = quantity)]
    resolution: Option<Quantity>,
    /// Percentage tested in that direction
    #[arg(long, value_parser = quantity)]
    tested: Option<Quantity>,
}

impl Share {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let asked = ShareAsked {
            movement: known(self.movement),
            found: readings(&self.found, self.resolution),
            tested: known_if(self.tested),
        };
        Ok(movement::share(&asked)?.worked)
    }
}

/// Widths a joint will see, from the width as found, against what was tested
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc envelope --found \"1-3/4 in.\" \"2 in.\" --resolution \"1/16 in.\" \\
      --nominal \"2 in.\" --closing \"0.45 in.\" --opening \"0 in.\" --compression \"25 %\" \\
      --extension \"25 %\"")]
pub(super) struct Envelope {
    /// Width as found; several readings where there are some
    #[arg(long, value_parser = quantity, num_args = 1.., required = true)]
    found: Vec<Quantity>,
    /// Smallest division of the tape
    #[arg(long, value_parser = quantity)]
    resolution: Option<Quantity>,
    /// Nominal width drawn
    #[arg(long, value_parser = quantity)]
    nominal: Quantity,
    /// How far it closes after the width was read
    #[arg(long, value_parser = quantity)]
    closing: Quantity,
    /// How far it opens
    #[arg(long, value_parser = quantity)]
    opening: Quantity,
    /// Compression tested
    #[arg(long, value_parser = quantity)]
    compression: Option<Quantity>,
    /// Extension tested
    #[arg(long, value_parser = quantity)]
    extension: Option<Quantity>,
}

impl Envelope {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let asked = EnvelopeAsked {
            found: readings(&self.found, self.resolution),
            nominal: known(self.nominal),
            closing: known(self.closing),
            opening: known(self.opening),
            compression: known_if(self.compression),
            extension: known_if(self.extension),
        };
        Ok(movement::envelope(&asked)?.worked)
    }
}

/// A slotted or deep-leg runner through its range: what jams, what unlaps, at which deflection
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc runner --slot \"1-1/2 in.\" --screw \"1/8 in.\" --leg \"2-1/2 in.\" \\
      --stud-gap \"3/4 in.\" --board-gap \"3/4 in.\" --top-screw \"3-1/2 in.\" \\
      --least-overlap \"3/4 in.\" --down \"1/2 in.\" --up \"1/4 in.\"")]
pub(super) struct Runner {
    /// Length of the slots; leave it out for a runner without
    #[arg(long, value_parser = quantity)]
    slot: Option<Quantity>,
    /// Height of the screw above the lower end of its slot; its middle where nothing is said
    #[arg(long, value_parser = quantity, requires = "slot")]
    screw_at: Option<Quantity>,
    /// Diameter of the screw
    #[arg(long, value_parser = quantity, requires = "slot")]
    screw: Option<Quantity>,
    /// Length of the runner's legs
    #[arg(long, value_parser = quantity)]
    leg: Quantity,
    /// Gap between the studs and the runner's web; several readings where there are some
    #[arg(long, value_parser = quantity, num_args = 1.., required = true)]
    stud_gap: Vec<Quantity>,
    /// Gap between the board and the structure above; likewise
    #[arg(long, value_parser = quantity, num_args = 1.., required = true)]
    board_gap: Vec<Quantity>,
    /// How far the uppermost screws of the board are below the structure above; likewise
    #[arg(long, value_parser = quantity, num_args = 1..)]
    top_screw: Vec<Quantity>,
    /// Least overlap of studs and legs that must be left
    #[arg(long, value_parser = quantity)]
    least_overlap: Option<Quantity>,
    /// Smallest division of the tape
    #[arg(long, value_parser = quantity)]
    resolution: Option<Quantity>,
    /// How far the structure comes down
    #[arg(long, value_parser = quantity)]
    down: Quantity,
    /// How far it goes up
    #[arg(long, value_parser = quantity)]
    up: Quantity,
}

impl Runner {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let read = |values: &[Quantity]| readings(values, self.resolution);
        let read_if = |value: Option<Quantity>| value.map(|value| read(&[value]));
        let asked = RunnerAsked {
            slot: read_if(self.slot),
            screw_at: read_if(self.screw_at),
            screw_diameter: known_if(self.screw),
            leg: read(&[self.leg]),
            stud_gap: read(&self.stud_gap),
            board_gap: read(&self.board_gap),
            top_screw: (!self.top_screw.is_empty()).then(|| read(&self.top_screw)),
            least_overlap: known_if(self.least_overlap),
            down: known(self.down),
            up: known(self.up),
        };
        Ok(movement::runner(&asked)?.worked)
    }
}
