//! Metric first, decimal numbers, makers in notes.

use super::super::spec::Spec;
use super::{by_maker, gauge, hours, metric};

impl Spec {
    /// Metric first, decimal numbers, makers in notes.
    pub(super) fn decimal(&self) -> Vec<String> {
        let mut lines = vec![
            "Ondrastel Proving House | Joint Systems Volume".to_owned(),
            String::new(),
            format!("System {}", self.designation()),
            String::new(),
            "Standard:               UL 2079".to_owned(),
            format!("Assembly rating:        {}", hours(self.ratings, "h")),
            format!("Joint width:            max {}", metric(self.width)),
            format!(
                "Movement:               Class {}, {} % compression, {} % extension",
                self.class, self.compression, self.extension
            ),
            String::new(),
            "1   SUPPORTING CONSTRUCTION".to_owned(),
            String::new(),
        ];
        let mut part = 0;
        if self.kind.has_floor() {
            part += 1;
            lines.push(format!(
                "1.{part}  Floor. Slab of reinforced concrete, min {} thick, density {} to {}.",
                metric(self.floor),
                self.density.0 * 16,
                format_args!("{} kg/m3", self.density.1 * 16)
            ));
            lines.push(String::new());
        }
        part += 1;
        if self.kind.has_studs() {
            lines.push(format!("1.{part}  Wall."));
            lines.push(String::new());
            lines.push(format!(
                "  1.{part}.1  Runner: galvanized steel channel, min {}, legs min {}, fastened at max {} o.c.",
                gauge(self.runner_gauge),
                metric(self.runner_leg),
                metric(self.runner_spacing * 64)
            ));
            lines.push(String::new());
            lines.push(format!(
                "  1.{part}.2  Studs: galvanized steel, min {} wide, max {} o.c.",
                metric(self.stud_width),
                metric(self.stud_spacing * 64)
            ));
            lines.push(String::new());
            lines.push(format!(
                "  1.{part}.3  Board [a]: 16 mm (5/8 in.) thick, {}. Uppermost screws min {} below the slab.",
                self.layers().replace(" Hr Rating", " h rating"),
                metric(self.screw)
            ));
        } else {
            lines.push(format!(
                "1.{part}  Walls. Concrete, min {} thick.",
                metric(self.wall)
            ));
        }
        lines.push(String::new());
        self.decimal_joint(&mut lines);
        lines
    }

    fn decimal_joint(&self, lines: &mut Vec<String>) {
        lines.push("2   PACKING AND COATING".to_owned());
        lines.push(String::new());
        let qualifier = if self.density_is_nominal {
            "nominal"
        } else {
            "min"
        };
        lines.push(format!(
            "2.1  Packing [b]: mineral wool, {qualifier} {} kg/m3 ({} pcf).",
            self.packing_density * 16,
            self.packing_density
        ));
        lines.push(String::new());
        lines.push(format!(
            "  2.1.1  Compression: min {} %.",
            self.packing_compression
        ));
        lines.push(String::new());
        lines.push(format!(
            "  2.1.2  Depth: {}.",
            self.depths("min").replace(" Hr Rating", " h rating")
        ));
        lines.push(String::new());
        lines.push(format!(
            "2.2  Coating [c]: min {} wet; overlap min {}.",
            metric(self.wet),
            self.laps("")
        ));
        lines.push(String::new());
        for (at, words) in self.words.iter().enumerate() {
            lines.push(format!("2.{}  {words}", at + 3));
            lines.push(String::new());
        }
        let notes = [
            ("a", &self.boards),
            ("b", &self.packings),
            ("c", &self.coatings),
        ];
        for (note, products) in notes {
            if note == "a" && !self.kind.has_studs() {
                continue;
            }
            let makers = by_maker(products);
            let makers: Vec<String> = makers
                .iter()
                .map(|(maker, products)| format!("{maker}: {}", products.join(", ")))
                .collect();
            lines.push(format!("[{note}]  {}.", makers.join("; ")));
        }
    }
}
