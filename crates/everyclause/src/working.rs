//! A project's joints, each with its listing and what was found there, as work cards and take-offs take them.

use site::Project;
use site::import::Import;
use workcard::quantities::{Quantities, quantities};
use workcard::{AtHand, BuiltTo, Card};

use crate::checking::{self, Checked};
use crate::fault::{Fault, Faults};
use crate::files;
use crate::shelf::{Held, Shelf};

/// Makes the card of a mark.
///
/// # Errors
/// When the project has no such mark, or a value of the schedule can't be computed with.
pub(crate) fn card(
    import: &Import,
    shelf: &Shelf,
    name: &str,
    at_hand: &AtHand,
) -> Result<Card, Faults> {
    let project = &import.project;
    let Some(mark) = project
        .marks
        .iter()
        .find(|mark| mark.name.eq_ignore_ascii_case(name.trim()))
    else {
        return Err(unknown(name, project).into());
    };
    let of_mark = project
        .joints
        .iter()
        .filter(|joint| joint.mark == mark.name);
    let mut found = Vec::new();
    for joint in of_mark {
        found.push((joint, checking::check_one(import, shelf, &joint.name)?));
    }
    let joints: Vec<_> = found
        .iter()
        .map(|(joint, (checked, held))| workcard::Checked {
            joint,
            place: checked.place(),
            facts: project.facts(joint),
            built_to: built_to(checked, *held),
        })
        .collect();
    Card::of(mark, &joints, at_hand).map_err(|error| of_values(&error))
}

/// Takes off a project.
///
/// # Errors
/// As a check does; and when a value of the schedule can't be computed with.
pub(crate) fn take_off(
    import: &Import,
    shelf: &Shelf,
    at_hand: &AtHand,
) -> Result<Quantities, Faults> {
    let project = &import.project;
    let checked = checking::check(import, shelf)?;
    let held = shelf.by_stem();
    let joints =
        project
            .joints_with_facts()
            .zip(&checked.joints)
            .map(|((joint, facts), checked)| workcard::Checked {
                joint,
                place: checked.place(),
                facts,
                built_to: {
                    let stem = checked.listing.as_deref();
                    built_to(checked, stem.and_then(|stem| held.get(stem)).copied())
                },
            });
    quantities(project, joints, at_hand).map_err(|error| of_values(&error))
}

fn built_to<'a>(checked: &'a Checked, held: Option<&'a Held>) -> Option<BuiltTo<'a>> {
    let (result, held) = checked.result.as_ref().zip(held)?;
    Some(BuiltTo {
        reading: held.reading(),
        result,
    })
}

fn of_values(error: &engineering::Error) -> Faults {
    Fault::of_command(error.to_string()).into()
}

fn unknown(name: &str, project: &Project) -> Fault {
    let fault = Fault::of_command(format!("the project has no mark `{name}`"));
    match files::nearest(name, project.marks.iter().map(|mark| mark.name.clone())) {
        Some(near) => fault.help(format!("is `{near}` meant?")),
        None => fault.help("give the mark's name as it stands in the column `mark`"),
    }
}
