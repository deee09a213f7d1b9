//! Numbers that are none of the properties their words bring to mind: what is added to something, what is left of something, how far a thing varies,
//! the size of a part of it.

mod joint;
mod pieces;
mod plausible;
mod varied;

pub(super) use self::joint::{joint_width, lettered_rating};
pub(super) use self::pieces::{names_wool, of_any_piece, screw_length};
pub(crate) use self::plausible::is_plausible;
pub(super) use self::plausible::{is_of_place, is_size};

use vocabulary::Property;

use self::joint::is_no_joint_width;
use self::pieces::{
    is_how_much_of_another, is_layered_of_another, is_of_a_part, is_of_contact, is_of_one_piece,
};
use self::plausible::{is_film, is_in_mils, is_no_sheet, is_no_wall};
use self::varied::{
    counts_a_measure, is_added, is_alternative, is_apart, is_how_near, is_left, is_per_measure,
    is_rate, is_variation,
};
use super::movements;
use crate::phrase::Amount;
use crate::rules::Sentence;

/// Whether the words about a number say that it is no property at all, whatever they name.
pub(super) fn stands_apart(sentence: &Sentence<'_>, index: usize) -> bool {
    sentence.amount(index).is_some_and(|amount| {
        is_alternative(sentence, index)
            || is_apart(sentence, amount.first)
            || counts_a_measure(sentence, amount)
            || is_left(sentence, amount)
            || is_variation(sentence, amount)
            || movements::is_one_of_several(sentence, amount)
    })
}

/// Whether a number is none that the property could have, or of a part of the thing: "flange 50 mm thick" of a slab.
pub(super) fn is_no_size_of(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    !is_plausible(amount.lo, amount.hi, amount.unit, property)
        || is_film(sentence, amount, property)
        || is_added(sentence, amount, property)
        || is_no_sheet(amount, property)
        || is_no_wall(amount, property)
        || is_in_mils(amount, property)
        || is_of_a_part(sentence, amount, property)
        || is_no_joint_width(sentence, amount, property)
        || is_per_measure(sentence, amount, property)
        || is_rate(sentence, amount, property)
        || is_how_near(sentence, amount, property)
        || is_layered_of_another(sentence, amount, property)
        || is_of_one_piece(sentence, amount, property)
        || is_of_contact(sentence, amount, property)
        || is_how_much_of_another(sentence, amount, property)
}
