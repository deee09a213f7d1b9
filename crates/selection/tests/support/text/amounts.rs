//! Values and bounds as a house style writes them.

use super::super::spec::{Amount, Ask, Statement, When};
use super::places::mark;

/// Which unit a style writes first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum First {
    Inches,
    Metric,
    MetricAlone,
}

/// How a style says its bounds.
#[derive(Debug, Clone, Copy)]
pub struct Voice {
    pub first: First,
    pub at_least: &'static str,
    pub at_most: &'static str,
    pub nominal: &'static str,
    /// The hour, after a number.
    pub hour: &'static str,
    pub percent: &'static str,
}

impl Voice {
    /// A bound with its number marked.
    pub fn ask(&self, statement: &Statement) -> String {
        let mark = mark(statement.id);
        match statement.ask {
            Ask::AtLeast(amount) => format!("{} {mark}{}", self.at_least, self.amount(amount)),
            Ask::AtMost(amount) => format!("{} {mark}{}", self.at_most, self.amount(amount)),
            Ask::Nominal(amount) => format!("{} {mark}{}", self.nominal, self.amount(amount)),
            Ask::Exactly(amount) => format!("{mark}{}", self.amount(amount)),
            Ask::Between(low, high) => format!("{mark}{}", self.range(low, high)),
        }
    }

    /// When it holds, as it stands behind a bound; empty where it always does.
    pub fn when(&self, when: When) -> String {
        match when {
            When::Always => String::new(),
            When::Rating(hours) => format!(" for the {hours} {} rating", self.hour),
            When::UpTo(width) => format!(" in joints up to {} wide", self.length(width)),
            When::Over(width) => format!(" in joints wider than {}", self.length(width)),
        }
    }

    pub fn amount(&self, amount: Amount) -> String {
        match amount {
            Amount::Length(in_64ths) => self.length(in_64ths),
            Amount::Percent(percent) => format!("{percent} {}", self.percent),
            Amount::Density(pcf) => {
                self.pair(&format!("{pcf} pcf"), &format!("{} kg/m3", kilograms(pcf)))
            }
            Amount::Gauge(number) => gauge(number),
            Amount::Count(count) => ["no", "one", "two", "three", "four"][count].to_owned(),
            Amount::Hours(hours) => format!("{hours} hours"),
            Amount::Fahrenheit(degrees) => self.pair(
                &format!("{degrees}\u{b0}F"),
                &format!("{}\u{b0}C", celsius(degrees)),
            ),
            Amount::Weight(pounds) => self.pair(
                &format!("{pounds} lb/ft"),
                &format!("{} kg/m", per_metre(pounds)),
            ),
        }
    }

    pub fn length(&self, in_64ths: usize) -> String {
        self.pair(&inches(in_64ths), &format!("{} mm", millimetres(in_64ths)))
    }

    fn pair(&self, inch: &str, metric: &str) -> String {
        match self.first {
            First::Inches => format!("{inch} ({metric})"),
            First::Metric => format!("{metric} ({inch})"),
            First::MetricAlone => metric.to_owned(),
        }
    }

    fn range(&self, low: Amount, high: Amount) -> String {
        let (inch, metric) = match (low, high) {
            (Amount::Length(low), Amount::Length(high)) => (
                format!("{} to {}", inches(low), inches(high)),
                format!("{} to {} mm", millimetres(low), millimetres(high)),
            ),
            (Amount::Density(low), Amount::Density(high)) => (
                format!("{low} to {high} pcf"),
                format!("{} to {} kg/m3", kilograms(low), kilograms(high)),
            ),
            (Amount::Fahrenheit(low), Amount::Fahrenheit(high)) => (
                format!("{low} to {high}\u{b0}F"),
                format!("{} to {}\u{b0}C", celsius(low), celsius(high)),
            ),
            _ => panic!("no range of {low:?} and {high:?}"),
        };
        self.pair(&inch, &metric)
    }
}

/// `96` as "1-1/2 in."
pub fn inches(in_64ths: usize) -> String {
    let (whole, rest) = (in_64ths / 64, in_64ths % 64);
    if rest == 0 {
        return format!("{whole} in.");
    }
    let twos = rest.trailing_zeros();
    let (top, bottom) = (rest >> twos, 64 >> twos);
    match whole {
        0 => format!("{top}/{bottom} in."),
        _ => format!("{whole}-{top}/{bottom} in."),
    }
}

/// Below 10 mm with a tenth.
pub fn millimetres(in_64ths: usize) -> String {
    let tenths = tenths_of_millimetres(in_64ths);
    if tenths.is_multiple_of(10) {
        format!("{}", tenths / 10)
    } else {
        format!("{}.{}", tenths / 10, tenths % 10)
    }
}

/// As printed: to the tenth below 10 mm, else to the whole.
pub fn tenths_of_millimetres(in_64ths: usize) -> usize {
    let tenths = (in_64ths * 2540 + 320) / 640;
    if tenths < 100 {
        tenths
    } else {
        (tenths + 5) / 10 * 10
    }
}

pub const fn kilograms(pcf: usize) -> usize {
    (pcf * 16018 + 500) / 1000
}

/// Of degrees Fahrenheit that are whole in Celsius.
pub const fn celsius(fahrenheit: usize) -> usize {
    (fahrenheit - 32) * 5 / 9
}

/// Pounds per foot in whole kilograms per metre.
pub const fn per_metre(pounds: usize) -> usize {
    (pounds * 1488 + 500) / 1000
}

fn gauge(number: usize) -> String {
    let thick = match number {
        25 => "0.021",
        22 => "0.029",
        20 => "0.035",
        _ => "0.047",
    };
    format!("{number} MSG ({thick} in.)")
}

/// "1, 2 and 3 Hr"
pub fn hours(ratings: &[usize], unit: &str) -> String {
    let words: Vec<String> = ratings.iter().map(ToString::to_string).collect();
    match words.as_slice() {
        [one] => format!("{one} {unit}"),
        [rest @ .., last] => format!("{} and {last} {unit}", rest.join(", ")),
        [] => String::new(),
    }
}
