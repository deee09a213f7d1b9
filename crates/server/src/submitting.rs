//! What a contractor proposes for some marks, and its review. The program says how each clause stands; what comes of a submittal, a person
//! says.

use std::sync::Arc;

use conformance::{JointResult, check_confirmed, check_draft};
use jiff::Zoned;
use jiff::civil::Date;
use selection::Asked;
use selection::substitution::supposing;
use shelf::State;
use site::import::entered;
use site::{Fact, GoesBy};
use store::records::{CommentRecord, Held, Outcome, OutcomeRecord, SubmittalRecord};
use store::{Done, Edit, Key, Kind};

use crate::attaching::Attached;
use crate::desk::Desk;
use crate::listings::{Read, working};
use crate::person::{By, Inspector, Reviewer};
use crate::trouble::Trouble;

/// The most marks of one submittal.
const MOST_MARKS: usize = 40;

/// The most characters of a comment, and of a note.
pub(crate) const MOST_IN_COMMENT: usize = 4000;

/// A submittal as a form sends it.
#[derive(Debug, Clone, Default, serde::Deserialize)]
pub(crate) struct Submitted {
    pub(crate) number: String,
    pub(crate) title: String,
    pub(crate) from: String,
    pub(crate) received: String,
    /// One a line, or parted by commas.
    pub(crate) marks: String,
    /// The listing's file.
    pub(crate) listing: String,
    /// One a line: `packing.product = Maker | Product`.
    pub(crate) proposed: String,
    /// The version that was seen; 0 for a new one.
    #[serde(default)]
    pub(crate) seen: i64,
}

/// A submittal with how each clause of its listing stands at each of its marks.
pub(crate) struct Review {
    pub(crate) number: String,
    pub(crate) held: Held<SubmittalRecord>,
    /// The listing as read; none where it isn't in the store.
    pub(crate) read: Option<Arc<Read>>,
    /// What was found at each mark, with the condition; none where the listing isn't in the store.
    pub(crate) marks: Vec<(Asked, Option<JointResult>)>,
    pub(crate) comments: Vec<Held<CommentRecord>>,
    /// The files that came with it.
    pub(crate) files: Vec<Attached>,
}

impl Review {
    /// Whether a person has corrected how a clause of the listing was read.
    pub(crate) fn is_corrected(&self, clause: &str) -> bool {
        let read = self.read.as_ref();
        read.is_some_and(|read| read.is_corrected(clause))
    }

    /// What was said of a clause at a mark.
    pub(crate) fn comment(&self, mark: &str, clause: &str) -> Option<&Held<CommentRecord>> {
        let mut comments = self.comments.iter();
        comments.find(|held| held.value.mark == mark && held.value.clause == clause)
    }
}

fn refused(message: impl Into<String>, help: impl Into<String>) -> Trouble {
    Trouble::Refused {
        message: message.into(),
        help: help.into(),
    }
}

fn key(number: &str) -> Key {
    Key::new(Kind::Submittal, number, "")
}

/// What is proposed, a property and its value a line. What is a listing's own is said of the listing that is proposed.
fn proposed(lines: &str, number: &str, listing: &GoesBy<'_>) -> Result<Vec<Fact>, Trouble> {
    let mut facts = Vec::new();
    for line in lines.lines().map(str::trim).filter(|line| !line.is_empty()) {
        let (property, value) = line.split_once('=').ok_or_else(|| {
            refused(
                format!("`{line}` is no property with its value"),
                "write one a line, as `packing.product = Maker | Product` or `packing.density = 4 pcf`",
            )
        })?;
        let mut fact: Fact = entered(property, value, &format!("submittal {number}"))?;
        if fact.said_of().is_some_and(|said| !listing.is_meant(said)) {
            return Err(refused(
                format!(
                    "{} is said of another listing than is proposed",
                    fact.property
                ),
                "leave out the `@` and what follows",
            ));
        }
        fact.property = listing.saying(&fact.property);
        if facts
            .iter()
            .any(|known: &Fact| known.property == fact.property)
        {
            return Err(refused(
                format!("{} stands twice", fact.property),
                "say each property once",
            ));
        }
        facts.push(fact);
    }
    Ok(facts)
}

impl Review {
    /// Whether a comment is of a clause that stands there, with the words that it quotes; or of the whole.
    fn has(&self, said: &CommentRecord) -> bool {
        if said.clause.is_empty() {
            return said.mark.is_empty() && said.words.is_empty();
        }
        let mut marks = self.marks.iter();
        let result = marks.find(|(asked, _)| asked.name == said.mark);
        let finding = result
            .and_then(|(_, result)| result.as_ref())
            .and_then(|result| result.finding(&said.clause));
        finding.is_some_and(|finding| {
            // A form sends line ends as it likes.
            let words = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
            words(&finding.explanation.words) == words(&said.words)
        })
    }
}

impl Desk {
    /// Every submittal, in the order they came.
    ///
    /// # Errors
    /// When the store can't be read.
    pub(crate) async fn submittals(&self) -> Result<Vec<Held<SubmittalRecord>>, Trouble> {
        self.catch_up().await?;
        let mut submittals = Vec::new();
        self.store
            .each(&[Kind::Submittal], |held| {
                submittals.push(held.read()?);
                Ok(())
            })
            .await?;
        Ok(submittals)
    }

    pub(crate) async fn submittal(&self, number: &str) -> Result<Held<SubmittalRecord>, Trouble> {
        let held = self.store.get::<SubmittalRecord>(&key(number)).await?;
        held.ok_or_else(|| Trouble::Unknown(format!("There is no submittal {number}.")))
    }

    /// Enters a submittal, or what is otherwise of it. What came of an earlier review doesn't hold for what is submitted anew.
    ///
    /// # Errors
    /// When something of it isn't right, or somebody else was first.
    pub(crate) async fn submit(
        &self,
        person: &By<Inspector>,
        said: &Submitted,
    ) -> Result<Done, Trouble> {
        self.catch_up().await?;
        let number = said.number.trim();
        let record = self.submitted(said)?;
        let verb = if said.seen == 0 { "entered" } else { "changed" };
        let edit = Edit::put(key(number), said.seen, &record)?;
        let what = format!("{verb} submittal {number} of {}", record.from);
        self.change(person, what, vec![edit]).await
    }

    fn submitted(&self, said: &Submitted) -> Result<SubmittalRecord, Trouble> {
        for (what, text) in [
            ("number", &said.number),
            ("title", &said.title),
            ("submitter", &said.from),
        ] {
            if text.trim().is_empty()
                || text.chars().count() > 200
                || text.chars().any(char::is_control)
            {
                return Err(refused(
                    format!("the {what} isn't one line of words"),
                    "write one line of at most 200 characters",
                ));
            }
        }
        let received: Date = said.received.trim().parse().map_err(|_| {
            refused(
                format!("`{}` is no day", said.received),
                "write it as 2026-03-14",
            )
        })?;
        let project = self.project();
        let names = said.marks.split(['\n', ',']).map(str::trim);
        let mut marks = Vec::new();
        for name in names.filter(|name| !name.is_empty()) {
            let mut known = project.marks.iter();
            let mark = known
                .find(|mark| mark.name.eq_ignore_ascii_case(name))
                .ok_or_else(|| {
                    refused(
                        format!("the project has no mark `{name}`"),
                        "name marks of the schedule, parted by commas",
                    )
                })?;
            if !marks.contains(&mark.name) {
                marks.push(mark.name.clone());
            }
        }
        if marks.is_empty() || marks.len() > MOST_MARKS {
            return Err(refused(
                "the submittal names no marks, or too many",
                format!("name from one to {MOST_MARKS} marks that it is for"),
            ));
        }
        let headings = self.listings.headings();
        let mut listings = headings.iter();
        let heading = listings.find(|heading| heading.file == said.listing);
        let heading = heading.ok_or_else(|| {
            refused(
                format!("the store has no listing `{}`", said.listing),
                "import the listing that is proposed, then choose it",
            )
        })?;
        let listing = heading.goes_by();
        Ok(SubmittalRecord {
            title: said.title.trim().to_owned(),
            from: said.from.trim().to_owned(),
            received,
            marks,
            listing: said.listing.clone(),
            proposed: proposed(&said.proposed, said.number.trim(), &listing)?,
            outcome: None,
        })
    }

    /// A submittal, and how each clause of what is proposed stands at its marks.
    ///
    /// # Errors
    /// When there is no such submittal, or the store can't be read.
    pub(crate) async fn review(&self, number: &str) -> Result<Review, Trouble> {
        self.catch_up().await?;
        let held = self.submittal(number).await?;
        let read = self.listings.read(&self.store, &held.value.listing).await?;
        let mut marks = Vec::new();
        for mark in &held.value.marks {
            let known = match self.asked(mark).await {
                Ok(known) => known,
                // The mark is gone from the schedule since.
                Err(Trouble::Refused { .. }) => continue,
                Err(trouble) => return Err(trouble),
            };
            let asked = supposing(&known, &held.value.proposed);
            let read = read.clone();
            let found = working(move || {
                let result = read.map(|read| match &read.state {
                    State::Draft(reading) => check_draft(reading, &asked.subject()).into(),
                    State::Confirmed(listing) => check_confirmed(listing, &asked.subject()).into(),
                });
                (asked, result)
            })
            .await?;
            marks.push(found);
        }
        Ok(Review {
            number: number.to_owned(),
            comments: self.store.get_all::<CommentRecord>(number).await?,
            files: self.attached(number).await?,
            held,
            read,
            marks,
        })
    }

    /// Records what a reviewer says of a clause, or of the whole; an empty comment takes back what was said.
    ///
    /// # Errors
    /// When there is no such submittal, the comment is too long, or somebody else was first.
    pub(crate) async fn comment(
        &self,
        person: &By<Reviewer>,
        number: &str,
        said: CommentRecord,
        seen: i64,
    ) -> Result<Done, Trouble> {
        let review = self.review(number).await?;
        let comment = said.comment.trim();
        let is_taken_back = comment.is_empty() && seen > 0;
        if !is_taken_back && !review.has(&said) {
            return Err(refused(
                "the submittal has no such clause at such a mark, or its words are others now",
                "look at the submittal again, and comment on what stands there",
            ));
        }
        if comment.chars().count() > MOST_IN_COMMENT {
            return Err(refused(
                format!("the comment has more than {MOST_IN_COMMENT} characters"),
                "say it shorter, or attach a document to the letter",
            ));
        }
        let key = Key::new(
            Kind::Comment,
            number,
            format!("{}|{}", said.mark, said.clause),
        );
        let of = if said.clause.is_empty() {
            "the whole".to_owned()
        } else {
            said.clause.clone()
        };
        let edit = if comment.is_empty() {
            if seen == 0 {
                return Err(refused(
                    "the comment says nothing",
                    "write what is to be said",
                ));
            }
            Edit::remove(key, seen)
        } else {
            let record = CommentRecord {
                comment: comment.to_owned(),
                by: person.name.clone(),
                when: Zoned::now().date(),
                ..said
            };
            Edit::put(key, seen, &record)?
        };
        let what = format!("commented on {of} in submittal {number}");
        self.change(person, what, vec![edit]).await
    }

    /// Records what a reviewer says came of a submittal.
    ///
    /// # Errors
    /// When there is no such submittal, or somebody else was first.
    pub(crate) async fn decide(
        &self,
        person: &By<Reviewer>,
        number: &str,
        outcome: Outcome,
        note: &str,
        seen: i64,
    ) -> Result<Done, Trouble> {
        let held = self.submittal(number).await?;
        if note.chars().count() > MOST_IN_COMMENT {
            return Err(refused(
                format!("the note has more than {MOST_IN_COMMENT} characters"),
                "say it shorter",
            ));
        }
        let record = SubmittalRecord {
            outcome: Some(OutcomeRecord {
                outcome,
                note: note.trim().to_owned(),
                by: person.name.clone(),
                when: Zoned::now().date(),
            }),
            ..held.value
        };
        let what = format!("reviewed submittal {number}: {}", outcome.words());
        let edit = Edit::put(key(number), seen, &record)?;
        self.change(person, what, vec![edit]).await
    }
}
