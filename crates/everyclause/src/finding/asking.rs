//! What is asked: the condition of a joint or mark that the schedule has.

use selection::Asked;
use site::Project;

use crate::fault::{Fault, Faults};
use crate::files;

/// The condition of the joint or mark of that name.
///
/// # Errors
/// When the schedule has neither.
pub(crate) fn of_name(project: &Project, name: &str) -> Result<Asked, Faults> {
    selection::asking::of_name(project, name).ok_or_else(|| unknown(project, name.trim()).into())
}

fn unknown(project: &Project, name: &str) -> Fault {
    let fault = Fault::of_command(format!("the project has no joint and no mark `{name}`"));
    let names = project
        .joints
        .iter()
        .flat_map(|joint| [joint.name.clone(), joint.mark.clone()]);
    match files::nearest(name, names) {
        Some(near) => fault.help(format!("is `{near}` meant?")),
        None => fault.help("name a joint or mark of the schedule, or ask by facts: `--where \"joint.width=1 in.\"`"),
    }
}
