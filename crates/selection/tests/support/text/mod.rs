//! A listing written out, in one of three house styles.

mod articles;
mod decimal;
mod directory;

use super::spec::{Product, Spec};

/// `96` as "1-1/2 in. (38 mm)".
pub fn inches(in_64ths: usize) -> String {
    format!("{} ({} mm)", inches_alone(in_64ths), millimetres(in_64ths))
}

/// "1-1/2 in."
pub fn inches_alone(in_64ths: usize) -> String {
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

fn millimetres(in_64ths: usize) -> String {
    let tenths = (in_64ths * 2540 + 320) / 640;
    if tenths < 100 {
        format!("{}.{}", tenths / 10, tenths % 10)
    } else {
        format!("{}", (tenths + 5) / 10)
    }
}

/// "38 mm (1-1/2 in.)"
pub(super) fn metric(in_64ths: usize) -> String {
    format!("{} mm ({})", millimetres(in_64ths), inches_alone(in_64ths))
}

pub(super) fn density(pcf: usize) -> String {
    format!("{pcf} pcf ({} kg/m3)", kilograms(pcf))
}

pub(super) const fn kilograms(pcf: usize) -> usize {
    (pcf * 16018 + 500) / 1000
}

pub(super) fn hours(ratings: &[usize], unit: &str) -> String {
    let words: Vec<String> = ratings.iter().map(ToString::to_string).collect();
    match words.as_slice() {
        [one] => format!("{one} {unit}"),
        [rest @ .., last] => format!("{} and {last} {unit}", rest.join(", ")),
        [] => String::new(),
    }
}

pub(super) fn gauge(number: usize) -> &'static str {
    match number {
        25 => "25 MSG (0.021 in.)",
        22 => "22 MSG (0.029 in.)",
        20 => "20 MSG (0.035 in.)",
        _ => "18 MSG (0.047 in.)",
    }
}

pub(super) fn by_maker(products: &[Product]) -> Vec<(&'static str, Vec<&'static str>)> {
    let mut makers: Vec<(&str, Vec<&str>)> = Vec::new();
    for (maker, product) in products {
        match makers.iter_mut().find(|known| known.0 == *maker) {
            Some(known) => known.1.push(product),
            None => makers.push((maker, vec![product])),
        }
    }
    makers
}

impl Spec {
    /// The listing's text.
    pub fn text(&self) -> String {
        let lines = match self.style {
            0 => self.directory(),
            1 => self.decimal(),
            _ => self.articles(),
        };
        lines.join("\n") + "\n"
    }

    fn layers(&self) -> String {
        let each: Vec<String> = self
            .ratings
            .iter()
            .enumerate()
            .map(|(at, rating)| {
                let layers = ["one layer", "two layers", "three layers"][at.min(2)];
                format!("{layers} each side for the {rating} Hr Rating")
            })
            .collect();
        each.join(", ")
    }

    fn depths(&self, min: &str) -> String {
        match self.ratings {
            [only] => format!("{min} {}", inches(self.depth_for(*only))),
            ratings => {
                let each = ratings.iter().map(|rating| {
                    format!(
                        "{min} {} for the {rating} Hr Rating",
                        inches(self.depth_for(*rating))
                    )
                });
                each.collect::<Vec<_>>().join(", ")
            }
        }
    }

    fn laps(&self, min: &str) -> String {
        let concrete = format!("{} onto the concrete", inches(self.overlap_concrete));
        if self.kind.has_studs() {
            format!(
                "{} onto the board and {min}{}{concrete}",
                inches(self.overlap_board),
                if min.is_empty() { "min " } else { "" }
            )
        } else {
            concrete
        }
    }
}
