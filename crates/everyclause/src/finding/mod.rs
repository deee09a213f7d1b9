//! Which listings fit a condition, as one value that tables and JSON show.

mod asking;
pub(crate) mod request;
pub(crate) mod substitution;
mod together;
mod wheres;

use conformance::{Question, Subject, questions};
use schemars::JsonSchema;
use selection::{Finder, Found, Library as _, Match, Rank, Wanted};
use serde::Serialize;
use site::Project;

use crate::checking::STANDING_LINES;
use crate::fault::{Fault, Faults};
use crate::library::{Checklists, Library, threads};

pub(crate) use asking::{Asked, of_name, of_schedule};
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

/// What was found for one condition.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct Answered {
    /// The joint or mark; empty where facts were given by themselves.
    pub(crate) name: String,
    /// The mark in words.
    pub(crate) title: String,
    /// The joints concerned.
    pub(crate) joints: Vec<String>,
    /// The listing they are to be built to, by its file's name without the ending.
    pub(crate) own: Option<String>,
    /// Where that listing stands.
    pub(crate) own_rank: Option<Rank>,
    /// What was supposed to be otherwise than known, each in words.
    pub(crate) supposed: Vec<String>,
    /// The listings that fit.
    pub(crate) fits: Vec<Listed>,
    /// Those with open questions only, the fewest first.
    pub(crate) open: Vec<Listed>,
    /// Those that would fit but for changes: the fewest first, of as many the cheapest.
    pub(crate) near: Vec<Listed>,
    /// How many aren't for such a joint.
    pub(crate) beyond: usize,
    /// How many others aren't told.
    pub(crate) untold: usize,
    /// Which listings enter and leave by what was supposed.
    pub(crate) turned: Option<Turned>,
    /// What was taken to be so, each in a sentence.
    pub(crate) notes: Vec<String>,
}

/// A listing of the answer.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct Listed {
    /// Its file's name without the ending.
    pub(crate) listing: String,
    /// Its designation.
    pub(crate) designation: String,
    /// Its edition, as written.
    pub(crate) edition: String,
    /// What stands in its way.
    #[serde(flatten)]
    pub(crate) matched: Match,
    /// What to ask whom so that nothing stays open; told of those with open questions only.
    pub(crate) questions: Vec<Question>,
}

/// Which listings enter and leave the answer by what was supposed: those that fit, or have open questions only.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct Turned {
    /// Those that nothing stands in the way of any more.
    pub(crate) enter: Vec<String>,
    /// Those that something stands in the way of now.
    pub(crate) leave: Vec<String>,
}

/// The search, made ready.
pub(crate) struct Search<'l> {
    library: &'l Library,
    finder: Finder<'l>,
    checklists: Checklists<'l>,
}

impl<'l> Search<'l> {
    pub(crate) fn of(library: &'l Library) -> Self {
        Self {
            library,
            finder: Finder::new(&library.index),
            checklists: Checklists::of(library),
        }
    }

    /// What is found for each.
    ///
    /// # Errors
    /// When a listing can't be looked at.
    pub(crate) fn find(&self, asked: &[Asked], wanted: &Wanted) -> Result<Vec<Found>, Faults> {
        let subjects: Vec<Subject<'_>> = asked.iter().map(Asked::subject).collect();
        let found = self
            .finder
            .find_each(&self.checklists, &subjects, wanted, threads());
        found.map_err(|error| damaged(self.library, error).into())
    }

    /// The answer to each question; with the questions that are open where only one was asked.
    ///
    /// # Errors
    /// When a listing can't be looked at.
    pub(crate) fn answer(&self, asked: &[Asked], wanted: &Wanted) -> Result<Vec<Answered>, Faults> {
        let found = self.find(asked, wanted)?;
        let with_questions = asked.len() == 1;
        let mut answers = Vec::new();
        for (asked, found) in asked.iter().zip(found) {
            answers.push(self.answered(asked, found, with_questions));
        }
        Ok(answers)
    }

    fn answered(&self, asked: &Asked, found: Found, with_questions: bool) -> Answered {
        let subject = asked.subject();
        let list = |matches: Vec<Match>| -> Vec<Listed> {
            let listed = |one| self.listed(one, &subject, with_questions);
            matches.into_iter().map(listed).collect()
        };
        let own = asked
            .own
            .as_deref()
            .and_then(|name| self.library.find(name));
        Answered {
            name: asked.name.clone(),
            title: asked.title.clone(),
            joints: asked.joints.clone(),
            own: own.map(|at| self.library.stem(at).to_owned()),
            own_rank: own.and_then(|at| self.rank(at, &subject)),
            supposed: asked.supposed.clone(),
            fits: list(found.fits),
            open: list(found.open),
            near: list(found.near),
            beyond: found.beyond,
            untold: found.untold,
            turned: None,
            notes: asked.notes.clone(),
        }
    }

    fn listed(&self, matched: Match, subject: &Subject<'_>, with_questions: bool) -> Listed {
        let header = self
            .library
            .reading(matched.at)
            .map(|reading| &reading.header);
        let is_open = matches!(matched.rank, Rank::Open { .. });
        let checklist = self.checklists.checklist(matched.at);
        let questions = checklist
            .filter(|_| with_questions && is_open)
            .map(|checklist| {
                let decided = checklist.decide(subject);
                questions([&checklist.explain(subject, &decided)])
            });
        Listed {
            listing: self.library.stem(matched.at).to_owned(),
            designation: header
                .map(|one| one.designation.clone())
                .unwrap_or_default(),
            edition: header.map(|one| one.edition.clone()).unwrap_or_default(),
            questions: questions.unwrap_or_default(),
            matched,
        }
    }

    /// Where one listing stands for a condition.
    pub(crate) fn rank(&self, at: usize, subject: &Subject<'_>) -> Option<Rank> {
        let checklist = self.checklists.checklist(at)?;
        Some(selection::search::rank(
            checklist,
            &checklist.decide(subject),
        ))
    }

    pub(crate) const fn checklists(&self) -> &Checklists<'l> {
        &self.checklists
    }
}

/// The whole answer.
///
/// # Errors
/// When a listing can't be looked at.
pub(crate) fn found(
    project: Option<&Project>,
    library: &Library,
    asked: &[Asked],
    wanted: &Wanted,
) -> Result<Finds, Faults> {
    let search = Search::of(library);
    Ok(Finds {
        building: project
            .map(|one| one.building.name.clone())
            .unwrap_or_default(),
        folder: library.folder.clone(),
        listings: library.len(),
        asked: search.answer(asked, wanted)?,
        together: None,
        standing_lines: standing_lines(),
    })
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
    let search = Search::of(library);
    let every = Wanted {
        open: usize::MAX,
        near: 1,
        every_single_change: false,
    };
    let mut answers = search.answer(&asked, &every)?;
    let together = Together::of(project, &answers);
    for answer in &mut answers {
        let cut = answer.open.len().saturating_sub(most);
        answer.open.truncate(most);
        answer.untold += cut;
    }
    Ok(Finds {
        building: project.building.name.clone(),
        folder: library.folder.clone(),
        listings: library.len(),
        asked: answers,
        together: Some(together),
        standing_lines: standing_lines(),
    })
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
    let mut finds = found(project, library, std::slice::from_ref(supposed), wanted)?;
    let search = Search::of(library);
    let every = Wanted {
        open: usize::MAX,
        near: 0,
        every_single_change: false,
    };
    let both = [known.clone(), supposed.clone()];
    let found = search.find(&both, &every)?;
    let in_reach = |found: &Found| -> Vec<usize> {
        found
            .fits
            .iter()
            .chain(&found.open)
            .map(|one| one.at)
            .collect()
    };
    if let [before, after] = found.as_slice() {
        let (before, after) = (in_reach(before), in_reach(after));
        let names = |of: &[usize], but: &[usize]| -> Vec<String> {
            let mut only: Vec<usize> = of.iter().copied().filter(|at| !but.contains(at)).collect();
            only.sort_unstable();
            only.iter().map(|at| library.stem(*at).to_owned()).collect()
        };
        if let Some(answer) = finds.asked.first_mut() {
            answer.turned = Some(Turned {
                enter: names(&after, &before),
                leave: names(&before, &after),
            });
        }
    }
    Ok(finds)
}

/// What must stand wherever matches are shown.
pub(crate) fn standing_lines() -> Vec<String> {
    let match_line = "A match isn't an approval: what is known matches the listing as read and recorded here, and no more is said of it.";
    let [_, approval] = STANDING_LINES;
    vec![match_line.to_owned(), approval.to_owned()]
}

fn damaged(library: &Library, error: selection::search::NotThere) -> Fault {
    let folder = &library.folder;
    Fault::of_file(
        format!("what is kept of `{}` is damaged", library.stem(error.0)),
        format!("{folder}.index"),
    )
    .help("remove the index: it is made anew from the listings")
}
