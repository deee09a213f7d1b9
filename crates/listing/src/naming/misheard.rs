//! Words beside a number that seem to say what it measures, and are about something else: the "wide" of "12 in. in wide walls", the "wider" of "spacing
//! wider than 12 in.", the clip of "splices 24 in. apart, between clips".
//!
//! What it would misread: an adjective behind a preposition that is the number's own, "4 in. for deep packing".

use measure::Unit;
use vocabulary::Property;

use super::between::is_between_parts;
use super::set_against::is_denied;
use super::{Mention, Subject, apart};
use crate::phrase::Amount;
use crate::rules::{Sentence, is_spaced};

/// Whether a word that seems to name a measure is said of another thing than a number.
pub(super) fn is_of_another_thing(sentence: &Sentence<'_>, at: usize) -> bool {
    is_attributive(sentence, at)
        || compares_a_spacing(sentence, at)
        || is_a_rate(sentence, at)
        || is_only_matched(sentence, at)
        || is_denied(sentence, at)
        || is_of_a_recess(sentence, at)
}

/// `Recess max 1/2 in. deep`: how deep the recess is, and not what is recessed.
fn is_of_a_recess(sentence: &Sentence<'_>, at: usize) -> bool {
    const REACH: usize = 6;
    let opens = |at: &usize| *at == 0 || sentence.is_stop(at - 1) || sentence.is_sign(at - 1, '.');
    sentence.is_any(at, &["deep", "deeper"])
        && (at.saturating_sub(REACH)..at)
            .any(|before| sentence.is_word(before, "recess") && opens(&before))
}

/// `depth equal to joint width, min 4 in.`, `to match floor thickness but min 4 in.`: a measure that another is as large as. A comma or a "but" parts
/// it from what is asked of that other; "to match a width of 4 in." is the measure's own number.
pub(super) fn is_only_matched(sentence: &Sentence<'_>, at: usize) -> bool {
    const MEASURES: &[&str] = &[
        "depth",
        "width",
        "thickness",
        "height",
        "length",
        "diameter",
    ];
    if !sentence.is_any(at, MEASURES) {
        return false;
    }
    is_of_what_is_matched(sentence, at)
}

/// The same of a thing: the wall of "depth to equal thickness of wall, max 8 in.".
pub(super) fn is_of_what_is_matched(sentence: &Sentence<'_>, at: usize) -> bool {
    // "equal to width of joint, min 4 in."
    let limits = |at: usize| {
        sentence.is_any(at, &["not", "no", "min", "minimum", "max", "maximum"])
            || sentence.is_word(at, "at") && sentence.is_any(at + 1, &["least", "most"])
    };
    let goes_on =
        |at: usize| sentence.is_word(at, "but") || sentence.is_word(at, "and") && limits(at + 1);
    let end = (at + 1..at + 5)
        .find(|at| sentence.token(*at).is_none_or(|t| t.word().is_none()) || goes_on(*at));
    let parted = end.is_some_and(|end| {
        (sentence.is_sign(end, ',') || goes_on(end))
            && (at..end).all(|at| sentence.amount_at(at).is_none())
    });
    parted && is_matched(sentence, at)
}

/// Whether the words before a token say that something is as large as what it names, with nothing but nouns between.
fn is_matched(sentence: &Sentence<'_>, at: usize) -> bool {
    const REACH: usize = 5;
    let matches = |at: usize| {
        sentence.is_any(at, &["match", "matches", "matching", "equals", "equalling"])
            || at > 0 && sentence.is_word(at, "equal") && sentence.is_any(at - 1, &["to", "shall"])
            || at > 0 && sentence.is_word(at, "to") && sentence.is_word(at - 1, "equal")
            || at > 0
                && sentence.is_word(at, "by")
                && sentence.is_any(at - 1, &["thick", "wide", "deep", "long", "high"])
            || at > 0 && sentence.is_word(at, "as") && sentence.is_word(at - 1, "same")
    };
    let ends = |at: &usize| {
        sentence.is_stop(*at) || sentence.amount_at(*at).is_some() || sentence.is_word(*at, "or")
    };
    let before = || (at.saturating_sub(REACH)..at).rev();
    before().take_while(|at| !ends(at)).any(matches)
        || before().find(ends).is_some_and(|at| is_share(sentence, at))
}

/// Whether a token is a share of what is named behind it: the `2/3` of "2/3 of the wall thickness and not less than 4 in."
fn is_share(sentence: &Sentence<'_>, at: usize) -> bool {
    let amount = sentence.amount_at(at).and_then(|at| sentence.amount(at));
    let behind = amount.map_or(at + 1, |amount| amount.last);
    let is_part = |amount: &Amount| {
        let words = amount.at.of(sentence.text);
        let in_percent = words.contains('%') || words.contains("per");
        amount.unit == Unit::Percent && !in_percent
    };
    amount.is_some_and(is_part) && sentence.is_any(behind, &["of", "the"])
}

/// `in wide walls`, `for thick floors`, `along the long edge`, `wide joints: max 12 in. OC`: an adjective before its noun, with no number before it.
fn is_attributive(sentence: &Sentence<'_>, at: usize) -> bool {
    const ADJECTIVES: &[&str] = &["wide", "thick", "deep", "long", "high", "tall"];
    const NOUNS: &[&str] = &[
        "wall", "walls", "floor", "floors", "joint", "joints", "slab", "slabs", "edge", "edges",
        "side", "sides", "gap", "gaps", "opening", "openings", "deck", "decks", "flute", "flutes",
        "section", "sections", "run", "runs", "span", "spans",
    ];
    const LEADING: &[&str] = &[
        "in", "for", "along", "at", "of", "over", "on", "to", "through", "with", "the", "a", "an",
        "each", "per", "very", "where", "both",
    ];
    let leads = at == 0
        || sentence.is_stop(at - 1)
        || sentence.is_sign(at - 1, '.')
        || sentence.is_any(at - 1, LEADING);
    let numbered = sentence
        .amounts
        .iter()
        .any(|amount| sentence.skip_parentheses(amount.last) == at);
    leads && !numbered && sentence.is_any(at, ADJECTIVES) && sentence.is_any(at + 1, NOUNS)
}

/// `spacing wider than 12 in.`, `spaced wider`: how far things stand apart, and no width.
fn compares_a_spacing(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(at, &["wider", "narrower", "longer", "shorter", "deeper"])
        && at > 0
        && sentence.is_any(
            at - 1,
            &[
                "spacing", "spacings", "spaced", "apart", "centers", "centres",
            ],
        )
}

/// `three per length, max 16 in. OC`: what something is counted on.
fn is_a_rate(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(at, &["length", "width", "height", "depth"])
        && at > 0
        && sentence.is_any(at - 1, &["per", "each", "every"])
        && !sentence.has_word(at + 1)
}

/// Whether a property is none of the number's: a size of what is a spacing, the joint of what only reaches past it, the place of what is between things
/// of its kind, a board of what are layers of wool.
pub(super) fn is_misheard(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
    subject: &Subject,
    mentions: &[Mention],
) -> bool {
    apart::is_size(property) && is_spaced(sentence, amount.last)
        || property.attribute == "width" && reaches_past_the_joint(sentence, amount)
        || is_between_parts(sentence, amount, property)
        || property.name == "joint.spacing"
            && (0..amount.first)
                .any(|at| is_attributive(sentence, at) || is_joint_width(sentence, at))
        || is_fastened(sentence, amount, property)
        || apart::is_size(property) && extends_over(sentence, amount)
        || is_of_what_no_component_is(sentence, amount, property, mentions)
        || is_for_a_layer(sentence, amount, property, mentions)
        || is_between_others(sentence, amount, property, subject, mentions)
        || is_layer_of_another(property, subject, mentions)
        || property.name == "joint.width" && is_of_gaps_to_close(sentence, amount, subject)
        || is_of_a_hollow(sentence, amount, property)
}

/// `to leave a 1/2 in. deep recess for sealant`: the size of what is left free, and of nothing that stands there.
fn is_of_a_hollow(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const HOLLOWS: &[&str] = &["recess", "rabbet", "rebate", "groove", "pocket", "reveal"];
    let behind = sentence.skip_parentheses(amount.last);
    let adjective = sentence.is_any(behind, &["deep", "wide", "high", "thick"]);
    adjective
        && sentence.is_any(behind + 1, HOLLOWS)
        && !property.attribute.contains(sentence.word(behind + 1))
}

/// `max 1 in. wide gaps filled with sealant`: gaps that something is closed with, and not the joint, in an item that is about something else.
fn is_of_gaps_to_close(sentence: &Sentence<'_>, amount: &Amount, subject: &Subject) -> bool {
    const GAPS: &[&str] = &["gaps", "voids", "holes", "cracks"];
    const CLOSED: &[&str] = &["filled", "sealed", "caulked", "closed", "packed", "plugged"];
    const REACH: usize = 3;
    let of_joint = subject
        .titles
        .iter()
        .any(|(title, _)| title.name == "joint");
    let behind = sentence.skip_parentheses(amount.last);
    let gaps = behind + usize::from(sentence.is_any(behind, &["wide", "high", "deep"]));
    let closed = sentence.has_any(gaps + 1, gaps + 1 + REACH, CLOSED);
    !of_joint && sentence.is_any(gaps, GAPS) && closed
}

/// `the joint width or max 12 in. OC`: the joint is named for its width, and stands nowhere apart from others.
fn is_joint_width(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_word(at, "joint") && sentence.is_word(at + 1, "width")
}

/// `laps deck 1 in., nailed max 12 in. OC`: how far nails stand apart, and not flutes, slots or splices.
fn is_fastened(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const FASTENED: &[&str] = &[
        "nailed", "screwed", "fastened", "anchored", "stapled", "welded", "bolted", "pinned",
        "riveted", "secured", "attached",
    ];
    const OF_A_PART: &[&str] = &[
        "flute_spacing",
        "slot_spacing",
        "splice_spacing",
        "mullion_spacing",
    ];
    OF_A_PART.contains(&property.attribute.as_str())
        && (0..amount.first)
            .rev()
            .take_while(|at| !sentence.is_stop(*at) && sentence.amount_at(*at).is_none())
            .any(|at| sentence.is_any(at, FASTENED))
}

/// `legs extend 1 in. min over board`: how far something reaches, and no length of it.
fn extends_over(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    let mut behind = sentence.skip_parentheses(amount.last);
    behind += usize::from(sentence.is_any(behind, &["min", "minimum", "max", "maximum"]));
    let over = sentence.is_any(behind, &["over", "past", "beyond", "onto"]);
    let verb = (0..amount.first)
        .rev()
        .find(|at| !super::cues::is_bounding(sentence.word(*at)));
    over && verb.is_some_and(|at| {
        sentence.is_any(
            at,
            &[
                "extend",
                "extends",
                "extending",
                "reach",
                "reaches",
                "project",
                "projects",
            ],
        )
    })
}

/// `void behind max 4 in. wide`, `vision glass max 6 ft above slab`: of what the vocabulary knows no component for. What is filled or covered is only
/// where something else stands.
fn is_of_what_no_component_is(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
    mentions: &[Mention],
) -> bool {
    const THINGS: &[&str] = &[
        "void", "voids", "cavity", "cavities", "glass", "glazing", "pipe", "pipes", "duct",
        "ducts", "conduit", "conduits",
    ];
    let stretch = (0..amount.first)
        .rev()
        .take_while(|at| !sentence.is_stop(*at) && sentence.amount_at(*at).is_none());
    let start = stretch.last().unwrap_or(amount.first);
    let spoken = (start..start + 3).find(|at| *at < amount.first && sentence.is_any(*at, THINGS));
    spoken.is_some_and(|thing| {
        let own = |mention: &Mention| {
            mention.component.name == property.component
                && start <= mention.first
                && mention.last <= amount.first
                && !(mention.first..mention.last).contains(&thing)
        };
        let named = property.attribute.contains(sentence.word(thing));
        let done = (thing..amount.first).any(|at| sentence.word(at).ends_with("ed"));
        let led = (start..thing).any(|at| {
            sentence.is_any(
                at,
                &[
                    "fill", "pack", "in", "into", "cover", "over", "behind", "fills",
                ],
            )
        });
        !named && !done && !led && !mentions.iter().any(own)
    })
}

/// `screws 1 in. long for first layer, 1-5/8 in. for second`: a layer of board that the number before is only for.
fn is_for_a_layer(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
    mentions: &[Mention],
) -> bool {
    let boards = || {
        mentions
            .iter()
            .filter(|mention| mention.component.name == "board" && mention.last <= amount.first)
    };
    let fastens = mentions
        .iter()
        .any(|mention| mention.component.name == "fastener" && mention.last <= amount.first);
    let only_for = |mention: &Mention| {
        mention.words.starts_with("layer")
            && (mention.first.saturating_sub(4)..mention.first)
                .any(|at| sentence.is_any(at, &["for", "in", "through"]))
    };
    property.component == "board"
        && apart::is_size(property)
        && fastens
        && sentence.is_word(sentence.skip_parentheses(amount.last), "for")
        && boards().next().is_some()
        && boards().all(only_for)
}

/// `width 1/2 in. past joint`, `extend past joint width min 1 in.`
fn reaches_past_the_joint(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const REACH: usize = 5;
    let past = |at: usize| {
        let the = usize::from(sentence.is_any(at + 1, &["the", "each", "either"]));
        sentence.is_any(at, &["past", "beyond"])
            && sentence.is_any(at + 1 + the, &["joint", "joints", "opening", "gap"])
    };
    let ends = |at: &usize| sentence.is_stop(*at) || sentence.amount_at(*at).is_some();
    let before = (amount.first.saturating_sub(REACH)..amount.first)
        .rev()
        .take_while(|at| !ends(at));
    let behind = amount.last..amount.last + REACH;
    before.chain(behind.take_while(|at| !ends(at))).any(past)
}

/// `one splice between clips, min 24 in. apart`, `splices not within 6 in. of clip`: things that only say where, in an item about none of them.
fn is_between_others(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
    subject: &Subject,
    mentions: &[Mention],
) -> bool {
    let placing =
        property.attribute.ends_with("spacing") || property.attribute.ends_with("distance");
    let titled = subject.is_about(&property.component);
    let mut own = mentions
        .iter()
        .filter(|mention| mention.component.name == property.component)
        .peekable();
    let only_places = |mention: &Mention| {
        let article = (0..mention.first)
            .rev()
            .find(|at| !sentence.is_any(*at, &["the", "a", "an", "any", "each", "two"]));
        article.is_some_and(|at| {
            sentence.is_any(at, &["between", "from"])
                || at >= amount.last && at <= amount.last + 1 && sentence.is_word(at, "of")
        })
    };
    // Another thing is spoken of first: `splices`, `joints`.
    let spoken = (0..amount.first).any(|at| {
        sentence.is_any(
            at,
            &[
                "splice", "splices", "butt", "butts", "seam", "seams", "lap", "laps",
            ],
        )
    });
    placing && spoken && !titled && own.peek().is_some() && own.all(only_places)
}

/// `batts in two layers, for a total of 4 in.`, `sealant in two layers of 5 mm`: layers of what is packed or laid on, in an item about no board.
fn is_layer_of_another(property: &Property, subject: &Subject, mentions: &[Mention]) -> bool {
    const LAYERED: &[&str] = &["packing", "sealant", "coating", "fireproofing", "seal"];
    let counted = property.attribute.ends_with("thickness") || property.attribute == "layers";
    let layered = LAYERED.iter().any(|laid| {
        subject.titles_name(laid)
            || mentions
                .iter()
                .any(|mention| mention.component.name == *laid)
    });
    let mut boards = mentions
        .iter()
        .filter(|mention| mention.component.name == "board");
    property.component == "board"
        && counted
        && layered
        && !subject.titles_name("board")
        && boards
            .all(|mention| matches!(mention.words.as_str(), "layer" | "layers" | "ply" | "plies"))
}
