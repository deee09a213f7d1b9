//! The answer to a condition, as tables, pages and JSON show it.

use conformance::{Question, Subject};
use schemars::JsonSchema;
use serde::Serialize;

use crate::asking::Asked;
use crate::index::{Index, Library};
use crate::rank::Rank;
use crate::search::{Finder, Found, Match, NotThere, Wanted};

/// A library whose listings go by names.
pub trait Named: Library {
    /// The listing's file name without its ending.
    fn stem(&self, at: usize) -> &str;

    /// The listing that a mark means by a name, where one does.
    fn which(&self, name: &str) -> Option<usize>;
}

/// What was found for one condition.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Answered {
    /// The joint or mark; empty where facts were given by themselves.
    pub name: String,
    /// The mark in words.
    pub title: String,
    /// The joints concerned.
    pub joints: Vec<String>,
    /// The listing they are to be built to, by its file's name without the ending.
    pub own: Option<String>,
    /// Where that listing stands.
    pub own_rank: Option<Rank>,
    /// What was supposed to be otherwise than known, each in words.
    pub supposed: Vec<String>,
    /// The listings that fit.
    pub fits: Vec<Listed>,
    /// Those with open questions only, the fewest first.
    pub open: Vec<Listed>,
    /// Those that would fit but for changes: the fewest first, of as many the cheapest.
    pub near: Vec<Listed>,
    /// How many aren't for such a joint.
    pub beyond: usize,
    /// How many others aren't told.
    pub untold: usize,
    /// Which listings enter and leave by what was supposed.
    pub turned: Option<Turned>,
    /// What was taken to be so, each in a sentence.
    pub notes: Vec<String>,
}

/// A listing of the answer.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Listed {
    /// Its file's name without the ending.
    pub listing: String,
    /// Its designation.
    pub designation: String,
    /// Its edition, as written.
    pub edition: String,
    /// What stands in its way.
    #[serde(flatten)]
    pub matched: Match,
    /// What to ask whom so that nothing stays open; told of those with open questions only.
    pub questions: Vec<Question>,
}

/// Which listings enter and leave the answer by what was supposed: those that fit, or have open questions only.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Turned {
    /// Those that nothing stands in the way of any more.
    pub enter: Vec<String>,
    /// Those that something stands in the way of now.
    pub leave: Vec<String>,
}

/// The search, made ready.
pub struct Search<'l> {
    library: &'l dyn Named,
    finder: &'l Finder<'l>,
    threads: usize,
}

impl<'l> Search<'l> {
    /// A search of a library by its index, on so many threads.
    pub const fn of(library: &'l dyn Named, finder: &'l Finder<'l>, threads: usize) -> Self {
        Self {
            library,
            finder,
            threads,
        }
    }

    /// What is found for each.
    ///
    /// # Errors
    /// When a listing can't be looked at.
    pub fn find(&self, asked: &[Asked], wanted: &Wanted) -> Result<Vec<Found>, NotThere> {
        let subjects: Vec<Subject<'_>> = asked.iter().map(Asked::subject).collect();
        self.finder
            .find_each(&self.library, &subjects, wanted, self.threads)
    }

    /// What is found for one condition.
    ///
    /// # Errors
    /// When a listing can't be looked at.
    pub fn find_one(&self, asked: &Asked, wanted: &Wanted) -> Result<Found, NotThere> {
        self.finder.find(&self.library, &asked.subject(), wanted)
    }

    /// The answer to each question; with the questions that are open where only one was asked.
    ///
    /// # Errors
    /// When a listing can't be looked at.
    pub fn answer(&self, asked: &[Asked], wanted: &Wanted) -> Result<Vec<Answered>, NotThere> {
        let found = self.find(asked, wanted)?;
        let with_questions = asked.len() == 1;
        let pairs = asked.iter().zip(found);
        Ok(pairs
            .map(|(asked, found)| self.told(asked, found, with_questions))
            .collect())
    }

    /// The answer were something otherwise than known, with what that turns.
    ///
    /// # Errors
    /// When a listing can't be looked at.
    pub fn answer_if(
        &self,
        known: &Asked,
        supposed: &Asked,
        wanted: &Wanted,
    ) -> Result<Vec<Answered>, NotThere> {
        let mut answers = self.answer(core::slice::from_ref(supposed), wanted)?;
        let every = Wanted {
            open: usize::MAX,
            near: 0,
            every_single_change: false,
        };
        let found = self.find(&[known.clone(), supposed.clone()], &every)?;
        if let ([before, after], Some(answer)) = (found.as_slice(), answers.first_mut()) {
            let (before, after) = (in_reach(before), in_reach(after));
            answer.turned = Some(Turned {
                enter: self.only(&after, &before),
                leave: self.only(&before, &after),
            });
        }
        Ok(answers)
    }

    fn only(&self, of: &[usize], but: &[usize]) -> Vec<String> {
        let mut only: Vec<usize> = of.iter().copied().filter(|at| !but.contains(at)).collect();
        only.sort_unstable();
        only.iter()
            .map(|at| self.library.stem(*at).to_owned())
            .collect()
    }

    /// What was found for a condition, told of a joint or mark that is of it.
    pub fn told(&self, asked: &Asked, found: Found, with_questions: bool) -> Answered {
        let subject = asked.subject();
        let list = |matches: Vec<Match>| -> Vec<Listed> {
            let listed = |one| self.listed(one, &subject, with_questions);
            matches.into_iter().map(listed).collect()
        };
        let own = asked
            .own
            .as_deref()
            .and_then(|name| self.library.which(name));
        Answered {
            name: asked.name.clone(),
            title: asked.title.clone(),
            joints: asked.joints.clone(),
            own: own.map(|at| self.library.stem(at).to_owned()),
            own_rank: own.and_then(|at| found.rank(at).or_else(|| self.rank(at, &subject))),
            supposed: asked.supposed.clone(),
            fits: list(found.fits),
            open: list(found.open),
            near: list(found.near),
            beyond: found.beyond,
            untold: found.untold,
            turned: None,
            notes: asked
                .notes
                .iter()
                .cloned()
                .chain(asked.note_of_left_out())
                .collect(),
        }
    }

    fn listed(&self, matched: Match, subject: &Subject<'_>, with_questions: bool) -> Listed {
        let is_open = matches!(matched.rank, Rank::Open { .. });
        let entry = self.index().entries().get(matched.at);
        let checklist = (with_questions && is_open)
            .then(|| self.library.checklist(matched.at))
            .flatten();
        let questions =
            checklist.map(|checklist| checklist.questions(subject, &checklist.decide(subject)));
        Listed {
            listing: self.library.stem(matched.at).to_owned(),
            designation: entry.map(|one| one.designation.clone()).unwrap_or_default(),
            edition: entry.map(|one| one.edition.clone()).unwrap_or_default(),
            questions: questions.unwrap_or_default(),
            matched,
        }
    }

    /// Where one listing stands for a condition.
    pub fn rank(&self, at: usize, subject: &Subject<'_>) -> Option<Rank> {
        let checklist = self
            .library
            .checklist(self.index().stands_for(at, subject))?;
        Some(crate::search::rank(checklist, &checklist.decide(subject)))
    }

    /// The library.
    pub const fn library(&self) -> &'l dyn Named {
        self.library
    }

    /// Its index.
    pub const fn index(&self) -> &'l Index {
        self.finder.index()
    }
}

impl Library for &dyn Named {
    fn checklist(&self, at: usize) -> Option<&conformance::Checklist<'_>> {
        (**self).checklist(at)
    }
}

/// The listings that fit or have open questions only.
fn in_reach(found: &Found) -> Vec<usize> {
    let in_reach = found.fits.iter().chain(&found.open);
    in_reach.map(|one| one.at).collect()
}

/// What must stand wherever matches are shown.
pub const MATCH_LINE: &str = "A match isn't an approval: what is known matches the listing as read and recorded here, and no more is said of it.";
