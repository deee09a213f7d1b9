//! Inches first, capitals and letters.

use super::super::spec::{Product, Spec};
use super::{by_maker, density, gauge, hours, inches, kilograms};

impl Spec {
    /// Inches first, capitals and letters.
    pub(super) fn directory(&self) -> Vec<String> {
        let mut lines = vec![
            "ONDRASTEL PROVING HOUSE -- Directory of Joint Systems".to_owned(),
            String::new(),
            format!(
                "                          System No. {}",
                self.designation()
            ),
            "                           September 14, 2015".to_owned(),
            String::new(),
            "                          STANDARD -- UL 2079".to_owned(),
            format!(
                "              ASSEMBLY RATINGS -- {}",
                hours(self.ratings, "Hr")
            ),
            format!("         JOINT WIDTH -- Max {}", inches(self.width)),
            format!(
                "      CLASS {} MOVEMENT -- {} Percent Compression",
                self.class, self.compression
            ),
            format!(
                "      CLASS {} MOVEMENT -- {} Percent Extension",
                self.class, self.extension
            ),
            String::new(),
        ];
        let mut item = 0;
        let mut next = || {
            item += 1;
            item
        };
        if self.kind.has_floor() {
            lines.push(format!(
                "{}. FLOOR -- Concrete, {} to {} pcf ({} to {} kg/m3), min {} thick.",
                next(),
                self.density.0,
                self.density.1,
                kilograms(self.density.0),
                kilograms(self.density.1),
                inches(self.floor)
            ));
            lines.push(String::new());
        }
        if self.kind.has_studs() {
            let wall = next();
            lines.push(format!("{wall}. WALL"));
            lines.push(String::new());
            lines.push(format!(
                "   A. RUNNER -- Channel of galv steel, min {}, with legs min {} long, fastened at max {} in. o.c.",
                gauge(self.runner_gauge),
                inches(self.runner_leg),
                self.runner_spacing
            ));
            lines.push(String::new());
            lines.push(format!(
                "   B. STUDS -- Galv steel studs, min {} wide, max {} in. o.c.",
                inches(self.stud_width),
                self.stud_spacing
            ));
            lines.push(String::new());
            lines.push(format!(
                "   C. GYPSUM BOARD* -- Board 5/8 in. (16 mm) thick, {}. Uppermost screws min {} below the floor.",
                self.layers(),
                inches(self.screw)
            ));
            lines.push(String::new());
            push_makers(&mut lines, &self.boards);
        } else if !self.kind.has_floor() {
            lines.push(format!(
                "{}. WALLS -- Concrete walls, min {} thick.",
                next(),
                inches(self.wall)
            ));
            lines.push(String::new());
        }
        let joint = next();
        self.directory_joint(joint, &mut lines);
        lines
    }

    fn directory_joint(&self, joint: usize, lines: &mut Vec<String>) {
        lines.push(format!("{joint}. JOINT SYSTEM -- It consists of:"));
        lines.push(String::new());
        let qualifier = if self.density_is_nominal {
            "nominal"
        } else {
            "min"
        };
        let splice = self.splice.map_or_else(String::new, |apart| {
            format!(" Seams spaced min {apart} in. apart.")
        });
        let words: Vec<String> = self.words.iter().map(|words| format!(" {words}")).collect();
        let words = words.concat();
        lines.push(format!(
            "   A. PACKING* -- Mineral wool batt, {qualifier} density {}, compressed min {} percent in thickness. Depth of packing {}.{splice}{words}",
            density(self.packing_density),
            self.packing_compression,
            self.depths("min")
        ));
        lines.push(String::new());
        push_makers(lines, &self.packings);
        if let Some((product, pcf)) = self.alternate {
            lines.push(format!(
                "      A1. PACKING* -- (As an alternate to Item {joint}A) -- Mineral wool batt, nominal density {}, compressed min 33 percent in thickness.",
                density(pcf)
            ));
            lines.push(String::new());
            push_makers(lines, &[product]);
        }
        lines.push(format!(
            "   B. COATING* -- Min {} wet thickness of coating, overlapping min {}.",
            inches(self.wet),
            self.laps("")
        ));
        lines.push(String::new());
        push_makers(lines, &self.coatings);
        if self.optional_angles {
            lines.push(
                "   C. STEEL ANGLES -- (Optional) -- Galv steel angles, min 22 MSG (0.029 in.), fastened at max 12 in. o.c."
                    .to_owned(),
            );
            lines.push(String::new());
        }
    }
}

fn push_makers(lines: &mut Vec<String>, products: &[Product]) {
    for (maker, products) in by_maker(products) {
        lines.push(format!(
            "      {} -- {}",
            maker.to_uppercase(),
            products.join(", ")
        ));
    }
    lines.push(String::new());
}
