//! Step 5, second layer: which property a number bounds.
//!
//! The vocabulary names components by their nouns and attributes by the words beside a number. Where both fit, the
//! number stands on `component.attribute`; where they don't, it stands on a property local to its item, under the
//! listing's own words, and is checkable all the same. A property is only taken when a cue beside the number names it, or
//! when the component has but one property of that dimension: the wrong property is worse than a local one.

mod apart;
mod behind;
mod beside;
mod between;
mod cited;
mod covering;
mod cues;
mod heard;
mod labelled;
mod laid_on;
mod laps;
mod leakage;
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

use measure::{Dimension, Unit};
use vocabulary::{Property, vocabulary};

pub(crate) use apart::is_plausible;
pub(crate) use mentions::{Mention, components_in, mentions};
pub(crate) use subject::Subject;
pub(crate) use whereabouts::is_place;

use crate::phrase::{Amount, Shape};
use crate::rules::{Sentence, share};
use cues::Context;
use score::{Scored, Scorer};
use weights::component_weights;

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

/// Whether a number is of something else than the property that fits its words best.
fn is_anothers(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
    subject: &Subject,
    mentions: &[Mention],
) -> bool {
    of_another_thing(sentence, amount.first, property, mentions)
        || labelled_as_another(sentence, amount.first, property, mentions)
        || labelled::goes_on(sentence, amount, property, mentions)
        || apart::is_no_size_of(sentence, amount, property)
        || behind::is_before_another(sentence, amount, property, mentions)
        || misheard::is_misheard(sentence, amount, property, subject, mentions)
        || neighbouring::is_neighbours(sentence, amount, property, subject, mentions)
        || movements::is_movement(sentence, amount, property)
        || covering::is_of_a_cover(sentence, amount, property, subject)
        || laid_on::is_laid_on(sentence, amount, property)
        || parts::is_another_parts(sentence, amount, property, subject, mentions)
        || whereabouts::may_be_the_places(sentence, amount, property, subject, mentions)
}

/// Whether a number is the size of what a preposition leads to right before it, "4 in. in floors min 5 in. thick", or a distance from something else, and
/// not what was named before.
pub(crate) fn is_of_what_is_behind(
    sentence: &Sentence<'_>,
    index: usize,
    held: &Name,
    subject: &Subject,
) -> bool {
    let held = held.property.zip(sentence.amount(index));
    held.is_some_and(|(taken, amount)| {
        behind::sized(sentence, amount, taken, subject).is_some()
            || neighbouring::is_from_the_other(sentence, amount, taken)
    })
}

/// The label that a count stands right behind: "Layers" of `Layers: 2 each side`, whose sides it doesn't count.
fn counting_label<'a>(sentence: &Sentence<'a>, amount: &Amount) -> Option<&'a str> {
    const MOST_WORDS: usize = 5;
    let colon = amount.first.checked_sub(1)?;
    let labelled = amount.unit == Unit::Count
        && (1..=MOST_WORDS).contains(&colon)
        && sentence.is_sign(colon, ':')
        && (0..colon).all(|at| {
            sentence
                .token(at)
                .is_some_and(|token| token.word().is_some())
        });
    labelled.then(|| sentence.words(0, colon))
}

/// Whether the sentence speaks of another thing just before a number, and of what the property is about not at all: an item's title says what
/// the item is about, not what each thing in it is.
fn of_another_thing(
    sentence: &Sentence<'_>,
    first: usize,
    property: &Property,
    mentions: &[Mention],
) -> bool {
    let carried = (apart::is_size(property) && !apart::is_of_place(property))
        .then(|| weights::carrier(sentence, first, mentions))
        .flatten();
    let other = carried
        .or_else(|| weights::subject(sentence, first, mentions))
        .filter(|mention| !mention.is_weak() || mention.is_fill_of(property));
    // A size is that of the thing named last, "safing on clips 1 in. wide"; how deep or far something reaches is said past other things.
    let from = other
        .filter(|_| apart::is_size(property))
        .map_or(0, |other| other.first);
    let named = mentions
        .iter()
        .filter(|mention| mention.first >= from)
        .any(|mention| {
            let inner = mention.inner().iter().copied();
            inner
                .chain([mention.component])
                .any(|component| component.name == property.component)
        });
    // The distance of the top screw is the board's, and is said of screws.
    let said_of = |mention: &Mention| {
        property
            .attribute
            .split('_')
            .any(|part| part.len() > 3 && mention.words.contains(part))
    };
    other.is_some_and(|mention| (!named || mention.component.is_other()) && !said_of(mention))
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

/// The colon of a label that a number stands right behind, but for what bounds it.
fn label_end(sentence: &Sentence<'_>, first: usize) -> Option<usize> {
    let bounds =
        |at: &usize| cues::is_bounding(sentence.word(*at)) || cues::is_comparing(sentence, *at);
    let before = (0..first).rev().find(|at| !bounds(at))?;
    sentence.is_sign(before, ':').then_some(before)
}

/// Whether the label that a number stands behind names another thing than the property's, which is only spoken of further on: "Height of joint: max 5 m
/// without support (clips, see below)".
fn labelled_as_another(
    sentence: &Sentence<'_>,
    first: usize,
    property: &Property,
    mentions: &[Mention],
) -> bool {
    let Some(colon) = label_end(sentence, first) else {
        return false;
    };
    let is_own = |mention: &Mention| mention.component.name == property.component;
    let own_is_behind = mentions
        .iter()
        .all(|mention| !is_own(mention) || mention.first >= first)
        && mentions.iter().any(is_own);
    own_is_behind
        && mentions
            .iter()
            .any(|mention| mention.last <= colon && !mention.is_weak())
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

/// Names what a table's column bounds, from its heading.
pub(crate) fn name_heading(heading: &str, dimension: Dimension, subject: &Subject) -> Name {
    let mentioned = components_in(heading);
    // What stands after "in the" says where: "depth in the joint" is no depth of the joint.
    let place = [
        " in the ",
        " at the ",
        " to the ",
        " of each ",
        " to each ",
        " from ",
        " onto ",
        " between ",
    ]
    .iter()
    .filter_map(|words| heading.to_ascii_lowercase().find(words))
    .min()
    .filter(|_| !subject.titles.is_empty())
    .unwrap_or(heading.len());
    // Under "Packing", layers are the packing's, and no board's.
    let counted = dimension == Dimension::Count && !subject.titles.is_empty();
    let (weak_weight, title) = if counted { (5, 6) } else { (6, 5) };
    let weighed = mentioned
        .iter()
        .filter(|(.., at)| at.start < place)
        .map(|(component, weak, _)| (*component, if *weak { weak_weight } else { 9 }));
    let weights: Vec<_> = weighed
        .chain(
            subject
                .titles
                .first()
                .map(|(component, _)| (*component, title)),
        )
        .collect();
    let nouns: Vec<_> = mentioned.iter().map(|(.., at)| at.clone()).collect();
    let scored = |nouns: &[_]| {
        let context = Context::of_heading(heading, nouns);
        Scorer::new(context, dimension, [""; 2], &[]).cued_scores(weights.clone())
    };
    // The part's own noun may name an attribute ("Board, in."), but none of a spacing ("Studs o.c.").
    let scored = if cues::is_spacing(heading) {
        scored(&nouns)
    } else {
        scored(&[])
    };
    match scored
        .first()
        .filter(|best| best.score >= ENOUGH && speaks_of(best.property, heading))
    {
        Some(best) => named(best.property, best.score - rival(&scored) < CLEAR),
        None => Name {
            component: mentioned.first().map_or_else(
                || subject.title.to_lowercase(),
                |(component, ..)| component.title.to_lowercase(),
            ),
            ..local(heading.to_lowercase(), subject, None)
        },
    }
}

/// Whether a heading speaks of a property of the joint itself: "Edge screws from joint" is no width of it, and "Compression" alone is as soon
/// the packing's as a movement.
fn speaks_of(property: &Property, heading: &str) -> bool {
    const WIDTH: &[&str] = &["width", "wide", "opening", "gap", "jt", "linear"];
    let lower = heading.to_lowercase();
    let says = |words: &[&str]| words.iter().any(|word| lower.contains(word));
    match property.attribute.as_str() {
        _ if property.component != "joint" => true,
        "width" => lower.trim_start().starts_with("joint") || says(WIDTH),
        // A movement that names no direction is one of both, or nobody knows of which.
        "movement_compression" => says(&["movement", "clos"]) && says(&["compr", "clos"]),
        "movement_extension" => says(&["movement", "open"]) && says(&["exten", "open"]),
        _ => true,
    }
}

/// The words that open a sentence before its first comma or number, when the number stands further on: "Width when installed, measured
/// between ..., max 1 in." A number with a label of its own behind another number is not what they name.
fn opening<'a>(sentence: &Sentence<'a>, index: usize) -> &'a str {
    const OWN_MEASURES: &[&str] = &[
        "depth",
        "width",
        "thickness",
        "height",
        "length",
        "recess",
        "overlap",
        "lap",
        "spacing",
        "density",
        "compression",
    ];
    let first = sentence.amount(index).map_or(0, |amount| amount.first);
    if index > 0 && has_label(sentence, sentence.floor(index), first) {
        return "";
    }
    let end = (0..first).find(|at| sentence.is_stop(*at) || sentence.amount_at(*at).is_some());
    // "Joint width over 2 in.: min 4 in.": the case names nothing of the number.
    let sized = |other: &Amount| {
        other.last <= first
            && other.unit.dimension() == Dimension::Length
            && sentence.in_condition(other.first)
    };
    let begins = (0..first).find(|at| {
        sentence
            .token(*at)
            .is_some_and(|token| token.word().is_some())
    });
    if begins.is_some_and(|at| sentence.in_condition(at)) && sentence.amounts.iter().any(sized) {
        return "";
    }
    // "Min depth 3 in.; max recess for 1 hr, 1/2 in.": what stands behind the semicolon has a measure of its own.
    let semicolon = (0..first).rev().find(|at| sentence.is_sign(*at, ';'));
    let anew = |at: usize| {
        sentence.is_any(at, &["min", "minimum", "max", "maximum"])
            && sentence.is_any(at + 1, OWN_MEASURES)
    };
    if semicolon.is_some_and(|at| (at..first).any(anew)) {
        return "";
    }
    sentence.words(0, end.unwrap_or(first).min(8))
}

/// Whether a label stands between a stop and a number, "overlap ≥ 12 mm; *voids*: ≤ 3 mm": a word or two and then a colon or a sign.
fn has_label(sentence: &Sentence<'_>, floor: usize, first: usize) -> bool {
    const MOST_WORDS: usize = 3;
    let Some(stop) = (floor..first).find(|at| sentence.is_stop(*at)) else {
        return false;
    };
    let plain = |at: &usize| {
        sentence
            .token(*at)
            .is_some_and(|token| token.word().is_some())
            && !cues::is_bounding(sentence.word(*at))
    };
    let end = (stop + 1..first).find(|at| !plain(at)).unwrap_or(first);
    let led = sentence.is_sign(end, ':') || cues::is_comparing(sentence, end);
    (1..=MOST_WORDS).contains(&(end - stop - 1)) && end < first && led
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

/// How many words of a title stand in a name of the item's own.
const TITLE: usize = 4;

/// A name of the item's own, in the listing's words.
fn local(attribute: String, subject: &Subject, mention: Option<&Mention>) -> Name {
    let component = match (mention, subject.titles.first()) {
        (Some(mention), _) => mention.words.clone(),
        (None, Some((component, _))) if !component.is_other() => component.title.to_lowercase(),
        // A caption's words would leave none of the attribute's in the property.
        (None, _) => {
            let words = subject.title.split_whitespace().take(TITLE);
            words.collect::<Vec<_>>().join(" ").to_lowercase()
        }
    };
    Name {
        property: None,
        also: None,
        component,
        attribute,
        doubtful: false,
    }
}
