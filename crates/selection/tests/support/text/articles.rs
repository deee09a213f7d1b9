//! Sentences under articles.

use super::super::spec::Spec;
use super::{by_maker, density, gauge, hours, inches};

impl Spec {
    /// Sentences under articles.
    pub(super) fn articles(&self) -> Vec<String> {
        let mut lines = vec![
            "ONDRASTEL PROVING HOUSE                         REGISTER OF JOINTS".to_owned(),
            format!(
                "                                                     {}",
                self.designation()
            ),
            String::new(),
            "Proved to UL 2079 in October 2003".to_owned(),
            format!("Rating of the joint: {}", hours(self.ratings, "hours")),
            format!("Width of the joint: not over {}", inches(self.width)),
            format!(
                "Movement: Class {}; {} percent in compression, {} percent in extension",
                self.class, self.compression, self.extension
            ),
            String::new(),
            "Art. 1. The construction.".to_owned(),
            String::new(),
        ];
        let mut letters = 'a'..='z';
        let mut paragraph = |lines: &mut Vec<String>, words: String| {
            lines.push(format!("   ({}) {words}", letters.next().unwrap()));
            lines.push(String::new());
        };
        if self.kind.has_floor() {
            paragraph(
                &mut lines,
                format!(
                    "The floor shall be of concrete no less than {} thick.",
                    inches(self.floor)
                ),
            );
        }
        if self.kind.has_studs() {
            paragraph(
                &mut lines,
                format!(
                    "The runner shall be of galvanized steel no thinner than {}, its legs no less than {} long, and fastened no more than {} in. o.c.",
                    gauge(self.runner_gauge),
                    inches(self.runner_leg),
                    self.runner_spacing
                ),
            );
            paragraph(
                &mut lines,
                format!(
                    "The studs shall be no less than {} wide and spaced no more than {} in. o.c.",
                    inches(self.stud_width),
                    self.stud_spacing
                ),
            );
        } else if !self.kind.has_floor() {
            paragraph(
                &mut lines,
                format!(
                    "The walls shall be of concrete no less than {} thick.",
                    inches(self.wall)
                ),
            );
        }
        self.articles_joint(&mut lines);
        lines
    }

    fn articles_joint(&self, lines: &mut Vec<String>) {
        lines.push("Art. 2. The packing.".to_owned());
        lines.push(String::new());
        lines.push(format!(
            "   (a) Mineral wool with a {}density of {} {} is compressed by no less than {} percent and pushed in to a depth of {}.",
            if self.density_is_nominal { "nominal " } else { "" },
            if self.density_is_nominal { "" } else { "no less than" },
            density(self.packing_density),
            self.packing_compression,
            self.depths("no less than")
        ));
        lines.push(String::new());
        lines.push("Art. 3. The coating.".to_owned());
        lines.push(String::new());
        lines.push(format!(
            "   (a) The coating shall be sprayed to a wet thickness of no less than {} and lapped no less than {}.",
            inches(self.wet),
            self.laps("no less than ")
        ));
        lines.push(String::new());
        for (at, words) in self.words.iter().enumerate() {
            lines.push(format!("   ({}) {words}", ['b', 'c', 'd'][at]));
            lines.push(String::new());
        }
        lines.push("Art. 4. Materials that were proved.".to_owned());
        lines.push(String::new());
        for (letter, what, products) in [
            ("a", "Packing", &self.packings),
            ("b", "Coating", &self.coatings),
        ] {
            let makers: Vec<String> = by_maker(products)
                .iter()
                .map(|(maker, products)| {
                    let quoted: Vec<String> =
                        products.iter().map(|one| format!("\"{one}\"")).collect();
                    format!("{maker}, {}", quoted.join(" or "))
                })
                .collect();
            lines.push(format!("   ({letter}) {what}: {}.", makers.join("; ")));
            lines.push(String::new());
        }
    }
}
