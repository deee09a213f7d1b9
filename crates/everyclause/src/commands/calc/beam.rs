use clap::{Args, ValueEnum};
use engineering::movement::section::{Shape, second_moment};
use engineering::movement::{BeamAsked, PointLoad, SpanAsked, Supports, deflection};
use engineering::{Error, Worked};
use measure::Quantity;

use super::quantity::{known, known_if, pair, quantity};

/// Deflection of a beam or slab strip: simple, fixed, cantilever or continuous
///
/// With several spans, give one --uniform for each, and forces as "16 kip at 12 ft in 2".
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause calc beam --span \"24 ft\" --uniform \"2 kip/ft\" --force \"16 kip at 12 ft\" \\
      --modulus \"29000 ksi\" --inertia \"1330 in4\" --limit 360
  everyclause calc beam --span \"30 ft\" \"30 ft\" --uniform \"1 kip/ft\" \"0 kip/ft\" \\
      --modulus \"29000 ksi\" --inertia \"510 in4\" --joint \"15 ft in 2\"")]
pub(super) struct Beam {
    /// Spans, from left to right
    #[arg(long, value_parser = quantity, num_args = 1.., required = true)]
    span: Vec<Quantity>,
    /// Uniform load of each span
    #[arg(long, value_parser = quantity, num_args = 1..)]
    uniform: Vec<Quantity>,
    /// Forces: "16 kip at 12 ft", "16 kip at 12 ft in 2"
    #[arg(long, value_parser = force, num_args = 1..)]
    force: Vec<(usize, Quantity, Quantity)>,
    /// How it is held
    #[arg(long, value_enum, default_value = "pinned")]
    supports: Held,
    /// Modulus of elasticity, E
    #[arg(long, value_parser = quantity)]
    modulus: Quantity,
    /// Second moment of area, I
    #[arg(long, value_parser = quantity)]
    inertia: Quantity,
    /// Where the joint is: "8 ft", "8 ft in 2"
    #[arg(long, value_parser = place)]
    joint: Option<(usize, Quantity)>,
    /// The n of a limit L/n
    #[arg(long)]
    limit: Option<u32>,
}

/// How a beam is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Held {
    /// Free to turn at the ends; several spans are continuous
    Pinned,
    /// Fixed at both ends
    Fixed,
    /// Fixed at the left end, free to turn at the right
    FixedLeft,
    /// Fixed at the left end, free at the right
    Cantilever,
}

fn place(text: &str) -> Result<(usize, Quantity), String> {
    match text.rsplit_once(" in ") {
        Some((place, span)) if span.trim().parse::<usize>().is_ok() => Ok((
            span.trim().parse().map_err(|_| "no span".to_owned())?,
            quantity(place)?,
        )),
        _ => Ok((1, quantity(text)?)),
    }
}

fn force(text: &str) -> Result<(usize, Quantity, Quantity), String> {
    let (force, at) = pair(text, "at", "16 kip at 12 ft")?;
    let (span, at) = place(at)?;
    Ok((span, quantity(force)?, at))
}

impl Beam {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        if self.uniform.len() > self.span.len() {
            return Err(Error::OutOfRange {
                input: "the number of uniform loads".to_owned(),
                value: self.uniform.len().to_string(),
                valid: format!("no more than one for each of {} spans", self.span.len()),
            });
        }
        if let Some((span, ..)) = self
            .force
            .iter()
            .find(|(span, ..)| *span == 0 || *span > self.span.len())
        {
            return Err(Error::OutOfRange {
                input: "the span of a force".to_owned(),
                value: span.to_string(),
                valid: format!("1 to {}", self.span.len()),
            });
        }
        let spans = self.span.iter().enumerate().map(|(at, length)| SpanAsked {
            length: known(*length),
            uniform: known_if(self.uniform.get(at).copied()),
            points: self
                .force
                .iter()
                .filter(|(span, ..)| *span == at + 1)
                .map(|(_, force, at)| PointLoad {
                    force: known(*force),
                    at: known(*at),
                })
                .collect(),
        });
        let asked = BeamAsked {
            spans: spans.collect(),
            supports: match self.supports {
                Held::Pinned => Supports::Pinned,
                Held::Fixed => Supports::Fixed,
                Held::FixedLeft => Supports::FixedLeft,
                Held::Cantilever => Supports::Cantilever,
            },
            modulus: known(self.modulus),
            inertia: known(self.inertia),
            joint: self.joint.map(|(span, place)| (span, known(place))),
            limit: self.limit,
        };
        Ok(deflection(&asked)?.worked)
    }
}

/// Second moment of area of a rectangle or of a wide-flange section
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause calc section --width \"12 in.\" --depth \"8 in.\"
  everyclause calc section --width \"8.24 in.\" --depth \"21 in.\" --flange \"0.615 in.\" \\
      --web \"0.4 in.\"")]
pub(super) struct Section {
    /// Width, of the flanges where there are some
    #[arg(long, value_parser = quantity)]
    width: Quantity,
    /// Depth over all
    #[arg(long, value_parser = quantity)]
    depth: Quantity,
    /// Thickness of the flanges
    #[arg(long, value_parser = quantity, requires = "web")]
    flange: Option<Quantity>,
    /// Thickness of the web
    #[arg(long, value_parser = quantity, requires = "flange")]
    web: Option<Quantity>,
}

impl Section {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let (width, depth) = (known(self.width), known(self.depth));
        let shape = match (self.flange, self.web) {
            (Some(flange), Some(web)) => Shape::WideFlange {
                depth,
                flange_width: width,
                flange_thickness: known(flange),
                web_thickness: known(web),
            },
            _ => Shape::Rectangle { width, depth },
        };
        Ok(second_moment(&shape)?.worked)
    }
}
