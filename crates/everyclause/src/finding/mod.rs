//! Which listings fit a condition, as one value that tables and JSON show.

mod asking;
pub(crate) mod request;
mod together;
mod wheres;

use schemars::JsonSchema;
use selection::answer::MATCH_LINE;
use selection::asking::of_schedule;
use selection::substitution::{self, Substitution};
use selection::{Answered, Asked, Finder, Search, Wanted};
use serde::Serialize;
use site::{Fact, Project};

use crate::checking::STANDING_LINES;
use crate::fault::{Fault, Faults};
use crate::library::{Checklists, Library, threads};

pub(crate) use asking::of_name;
pub(crate) use together::{Serving, Together};
pub(crate) use wheres::facts;

/// What was found.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct Finds {
    /// The building's name; empty where none was given.
    pub(crate) building: String,
    /// The folder of listings.
    pub(crate) folder: String,
    /// How many listings it holds.
    pub(crate) listings: usize,
    /// What was asked, and what was found for it; of a whole schedule each condition of each mark, the conditions of a mark one after the
    /// other.
    pub(crate) asked: Vec<Answered>,
    /// The few listings that together serve every joint; only where the whole schedule was asked.
    pub(crate) together: Option<Together>,
    /// What must stand wherever results are shown.
    pub(crate) standing_lines: Vec<String>,
}

/// The whole answer.
///
/// # Errors
/// When a listing can't be looked at.
pub(crate) fn found(
    project: Option<&Project>,
    library: &Library,
    asked: &Asked,
    wanted: &Wanted,
) -> Result<Finds, Faults> {
    let asked = core::slice::from_ref(asked);
    let answers = searched(library, |search| search.answer(asked, wanted))?;
    Ok(finds(project, library, answers, None))
}

/// The answer for every condition of every mark, and the few listings that together serve them.
///
/// # Errors
/// When a listing can't be looked at.
pub(crate) fn found_for_all(
    project: &Project,
    library: &Library,
    most: usize,
) -> Result<Finds, Faults> {
    let asked = of_schedule(project, &library.index);
    let every = Wanted {
        open: usize::MAX,
        near: 1,
        every_single_change: false,
    };
    let mut answers = searched(library, |search| search.answer(&asked, &every))?;
    let together = Together::of(project, &answers);
    for answer in &mut answers {
        let cut = answer.open.len().saturating_sub(most);
        answer.open.truncate(most);
        answer.untold += cut;
    }
    Ok(finds(Some(project), library, answers, Some(together)))
}

/// The answer were something otherwise, with what that turns.
///
/// # Errors
/// When a listing can't be looked at.
pub(crate) fn found_if(
    project: Option<&Project>,
    library: &Library,
    known: &Asked,
    supposed: &Asked,
    wanted: &Wanted,
) -> Result<Finds, Faults> {
    let answers = searched(library, |search| search.answer_if(known, supposed, wanted))?;
    Ok(finds(project, library, answers, None))
}

/// What another product would come to at every joint that has one of that component.
///
/// # Errors
/// When a listing can't be looked at.
pub(crate) fn substituted(
    project: &Project,
    library: &Library,
    product: &Fact,
    with: &[Fact],
    most: usize,
) -> Result<Substitution, Faults> {
    let lines = standing_lines();
    searched(library, |search| {
        substitution::substituted(project, search, product, with, most, &lines)
    })
}

/// Looks through a library.
///
/// # Errors
/// When a listing can't be looked at.
pub(crate) fn searched<T>(
    library: &Library,
    look: impl FnOnce(&Search<'_>) -> Result<T, selection::search::NotThere>,
) -> Result<T, Faults> {
    let checklists = Checklists::of(library);
    let finder = Finder::new(&library.index);
    let search = Search::of(&checklists, &finder, threads());
    look(&search).map_err(|error| damaged(library, error).into())
}

fn finds(
    project: Option<&Project>,
    library: &Library,
    asked: Vec<Answered>,
    together: Option<Together>,
) -> Finds {
    Finds {
        building: project
            .map(|one| one.building.name.clone())
            .unwrap_or_default(),
        folder: library.folder.clone(),
        listings: library.len(),
        asked,
        together,
        standing_lines: standing_lines(),
    }
}

/// What must stand wherever matches are shown.
pub(crate) fn standing_lines() -> Vec<String> {
    let [_, approval] = STANDING_LINES;
    vec![MATCH_LINE.to_owned(), approval.to_owned()]
}

fn damaged(library: &Library, error: selection::search::NotThere) -> Fault {
    let folder = &library.folder;
    Fault::of_file(
        format!("what is kept of `{}` is damaged", library.stem(error.0)),
        format!("{folder}.index"),
    )
    .help("remove the index: it is made anew from the listings")
}
