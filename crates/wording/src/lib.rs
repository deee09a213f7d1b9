//! What a reading holds, in plain words: the same in the terminal, on a page and on paper.
//!
//! | module | what it words |
//! |---|---|
//! | [`cell`] | a cell of a table, with its row and its column |
//! | [`choices`] | with which of a listing's choices a clause is built |
//! | [`clause`] | what a clause asks for, and of what |
//! | [`condition`] | when a clause applies |
//! | [`doubt`] | what is doubtful about a clause |
//! | [`head`] | what a head states, the choices left, how firm the reading is |
//! | [`joints`] | joints by their names, and those of a mark |
//! | [`property`] | properties by the names that facts go by |
//! | [`quantity`] | quantities as they are read on site |
//! | [`rule`] | what the reader's rules read |
//! | [`warning`] | what a warning says, and what to do about it |
//! | [`text`] | words of other people's files, made fit to be shown |
//!
//! What is absent: layout, colour and markup, which are the showing program's; and verdicts, which explain themselves.

pub mod cell;
pub mod choices;
pub mod clause;
pub mod condition;
pub mod doubt;
pub mod head;
pub mod joints;
pub mod property;
pub mod quantity;
pub mod rule;
pub mod text;
pub mod warning;
