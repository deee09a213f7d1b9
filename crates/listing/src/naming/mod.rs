//! Step 5, second layer: which property a number bounds.
//!
//! The vocabulary names components by their nouns and attributes by the words beside a number. Where both fit, the
//! number stands on `component.attribute`; where they don't, it stands on a property local to its item, under the
//! listing's own words, and is checkable all the same. A property is only taken when a cue beside the number names it, or
//! when the component has but one property of that dimension: the wrong property is worse than a local one.

mod another;
mod apart;
mod behind;
mod beside;
mod between;
mod cited;
mod columns;
mod covering;
mod cues;
mod heard;
mod labelled;
mod laid_on;
mod laps;
mod leakage;
mod local;
mod mentions;
mod misheard;
mod movements;
mod neighbouring;
mod parts;
mod relative;
mod run;
mod score;
mod set_against;
mod subject;
mod title;
mod weights;
mod whereabouts;

pub(crate) use self::another::is_of_what_is_behind;
pub(crate) use self::apart::is_plausible;
pub(crate) use self::columns::name_heading;
pub(crate) use self::mentions::{Mention, components_in, mentions};
pub(crate) use self::subject::Subject;
pub(crate) use self::whereabouts::is_place;

use measure::Dimension;
use vocabulary::{Property, vocabulary};

use self::another::{counting_label, is_anothers, label_end};
use self::cues::Context;
use self::local::{local, opening};
use self::score::{Scored, Scorer};
use self::weights::component_weights;
use crate::phrase::{Amount, Shape};
use crate::rules::{Sentence, share};

/// What a number bounds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Name {
    pub(crate) property: Option<&'static Property>,
    /// A second property that the same number bounds: "max 25 percent compression or extension".
    pub(crate) also: Option<&'static Property>,
    pub(crate) component: String,
    pub(crate) attribute: String,
    /// Whether more than one property fitted nearly as well.
    pub(crate) doubtful: bool,
}

/// The component that an item's title names first: `runner` of "Ceiling runner", of "Strips, where the wall runs along the flutes" `strip`.
///
/// ```
/// assert_eq!(listing::component_of_title("CEILING RUNNER"), Some("runner"));
/// assert_eq!(listing::component_of_title("Notes"), None);
/// ```
pub fn component_of_title(title: &str) -> Option<&'static str> {
    let named = components_in(named_part(title)).into_iter();
    named
        .filter(|(component, weak, _)| !weak && !component.is_other())
        .map(|(component, ..)| component.name.as_str())
        .next()
}

/// The part of a title that names things, before the words that say where: "Strips, where the wall runs along the flutes".
pub(crate) fn named_part(title: &str) -> &str {
    const PLACING: &[&str] = &[
        "where", "when", "at", "over", "under", "between", "along", "parallel", "beside", "below",
        "above", "in", "within",
    ];
    let place = title
        .match_indices(' ')
        .filter_map(|(at, _)| Some((title.get(..at)?, title.get(at + 1..)?)))
        .filter(|(_, rest)| {
            let word = rest.split(' ').next().unwrap_or_default().to_lowercase();
            PLACING.contains(&word.as_str())
        })
        .map(|(head, _)| head)
        .find(|head| !components_in(head).is_empty());
    place.unwrap_or(title)
}

/// The least score with which a property is taken.
const ENOUGH: i32 = 11;

/// The weight of the part that an item's number stands for.
const OF_ITEM: i32 = 9;

/// How far ahead of the next the best must be to be without doubt.
const CLEAR: i32 = 2;

/// Names what an amount of a sentence bounds.
pub(crate) fn name(
    sentence: &Sentence<'_>,
    index: usize,
    subject: &Subject,
    mentions: &[Mention],
) -> Name {
    let Some(amount) = sentence.amount(index) else {
        return local(String::new(), subject, None);
    };
    let dimension = amount.unit.dimension();
    if let Some(item) = cited::cited(sentence, amount) {
        return name_of_item(sentence, amount, item, subject);
    }
    // A tolerance alone is no value of what it is a tolerance of; an angle is its own deviation.
    let tolerance = amount.shape == Shape::Deviation && dimension != Dimension::Angle;
    if tolerance || apart::stands_apart(sentence, index) {
        let mention = mentions
            .iter()
            .rev()
            .find(|mention| mention.last <= amount.first);
        return local(Context::of(sentence, amount).own_words(), subject, mention);
    }
    if let Some(property) = told_outright(sentence, index, amount) {
        return named(property, false);
    }
    if let Some(share) = share(sentence, index) {
        let found = name_heading(&share.words, dimension, subject);
        let is_own = |property: &Property| property.attribute == share.attribute;
        return if found.property.is_none_or(is_own) {
            found
        } else {
            local(share.words, subject, None)
        };
    }
    if let Some(label) = counting_label(sentence, amount) {
        let found = name_heading(label, dimension, subject);
        let of_board = found
            .property
            .is_some_and(|property| property.component == "board");
        return if of_board && apart::names_wool(label) {
            local(label.to_lowercase(), subject, None)
        } else {
            found
        };
    }
    let mentions = &spoken_of(sentence, amount, mentions);
    let mention = mentions
        .iter()
        .rev()
        .filter(|mention| !whereabouts::only_says_where(sentence, amount, mention))
        .find(|mention| mention.last <= amount.first);
    let scorer = Scorer::new(
        Context::of(sentence, amount),
        dimension,
        [&subject.title, opening(sentence, index)],
        &subject.titles,
    );
    let mut ranking = told(scorer.scores(component_weights(sentence, amount, subject, mentions)));
    ranking.retain(|scored| !apart::of_any_piece(scored.property, subject, mentions));
    let best = ranking.first().filter(|best| best.score >= ENOUGH);
    if let Some(of_part) = best.and_then(|best| fastened(sentence, amount.first, best, subject)) {
        return named(of_part, false);
    }
    let is_size = best.is_none_or(|best| !relative::is_relative(best.property));
    if let Some(against) = relative::measured_against(sentence, amount).filter(|_| is_size) {
        let attribute = scorer.spoken().unwrap_or_default();
        return local(
            format!("{attribute} {against}").trim().to_owned(),
            subject,
            mention,
        );
    }
    let Some(best) = best else {
        return local(scorer.attribute(), subject, mention);
    };
    if let Some(place) = behind::sized(sentence, amount, best.property, subject) {
        let own = behind::size_of(sentence, amount, &place);
        return own.map_or_else(
            || local(scorer.attribute(), subject, Some(&place)),
            |own| named(own, false),
        );
    }
    if is_anothers(sentence, amount, best.property, subject, mentions) {
        return local(scorer.attribute(), subject, mention);
    }
    let also = ranking
        .iter()
        .skip(1)
        .find(|other| scorer.names_both(best.property, other.property));
    if let Some(other) = also {
        return Name {
            also: Some(other.property),
            ..named(best.property, false)
        };
    }
    let ahead = best.score - rival(&ranking);
    // Of two that fit as well, and stand as near, neither is taken: the wrong property is worse than a local one.
    let as_near = ranking
        .get(1)
        .is_some_and(|second| second.weight == best.weight);
    if ahead == 0 && as_near {
        return Name {
            doubtful: true,
            ..local(scorer.attribute(), subject, mention)
        };
    }
    named(best.property, ahead < CLEAR)
}

/// What a number of another item is of: a property of the part that the item's title names, or one of that item in the listing's words.
fn name_of_item(sentence: &Sentence<'_>, amount: &Amount, item: &str, subject: &Subject) -> Name {
    let context = || Context::of(sentence, amount);
    let part = subject.parts.get(item).copied();
    let scorer = Scorer::new(context(), amount.unit.dimension(), [""; 2], &[]);
    let ranking = part.map(|part| told(scorer.scores(vec![(part, OF_ITEM)])));
    let best = ranking.as_ref().and_then(|ranking| ranking.first());
    let fits = |best: &&Scored| {
        best.score >= ENOUGH && !apart::is_no_size_of(sentence, amount, best.property)
    };
    match best.filter(fits) {
        Some(best) => named(best.property, false),
        None => Name {
            component: format!("item {item}"),
            ..local(scorer.attribute(), subject, None)
        },
    }
}

/// The property that a number's own words tell, whatever else is near.
fn told_outright(
    sentence: &Sentence<'_>,
    index: usize,
    amount: &Amount,
) -> Option<&'static Property> {
    apart::lettered_rating(sentence, amount)
        .or_else(|| apart::screw_length(sentence, index))
        .or_else(|| apart::joint_width(sentence, amount))
        .or_else(|| neighbouring::weld_length(sentence, amount))
        .or_else(|| leakage::at_heat(sentence, index))
        .or_else(|| movements::of_a_direction(sentence, amount))
}

/// The mentions that a number may be about: none that another number's words hold, or that what is meant is only compared with.
fn spoken_of(sentence: &Sentence<'_>, amount: &Amount, mentions: &[Mention]) -> Vec<Mention> {
    let mut meant = behind::still_spoken_of(sentence, amount, mentions);
    meant.retain(|mention| {
        let measure_of_another = sentence.amount_at(mention.first).is_some();
        let only_compared = set_against::is_set_against(sentence, mention.first)
            || misheard::is_of_what_is_matched(sentence, mention.first);
        mention.first >= amount.last || !measure_of_another && !only_compared
    });
    meant.retain(|mention| {
        !beside::is_beside(sentence, amount, mention)
            && !whereabouts::lies_under(sentence, amount, mention)
    });
    meant
}

/// The spacing of the fasteners of what an item is about, labelled without saying of what: "Screw spacing: 400 mm" of a runner.
fn fastened(
    sentence: &Sentence<'_>,
    first: usize,
    best: &Scored,
    subject: &Subject,
) -> Option<&'static Property> {
    let of_any = best.property.name == "fastener.spacing" && label_end(sentence, first).is_some();
    let (titled, _) = subject.titles.first().filter(|_| of_any)?;
    ["screw_spacing", "fastener_spacing"]
        .iter()
        .find_map(|attribute| titled.property(attribute))
}

/// The properties that the words tell from others of their attribute. One that they don't tell still shuts out what stands further off:
/// the thickness of angles on a floor is not the floor's.
fn told(ranking: Vec<Scored>) -> Vec<Scored> {
    let shut_out = ranking
        .first()
        .filter(|best| !best.told)
        .map_or(i32::MIN, |best| best.weight);
    ranking
        .into_iter()
        .filter(|scored| scored.told && scored.weight >= shut_out)
        .collect()
}

/// The score of the best property but one.
fn rival(scored: &[Scored]) -> i32 {
    scored.get(1).map_or(0, |second| second.score)
}

fn named(property: &'static Property, doubtful: bool) -> Name {
    let component = vocabulary().component(&property.component);
    Name {
        property: Some(property),
        also: None,
        component: component.map_or_else(String::new, |component| component.title.to_lowercase()),
        attribute: property.attribute.replace('_', " "),
        doubtful,
    }
}
