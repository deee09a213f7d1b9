//! Files that a person brings: listings and tables. First what was understood of them is shown; nothing is taken until they say so.
//!
//! | module | what lives there |
//! |---|---|
//! | `arriving` | files on their way in, and how much may come |
//! | `waiting` | files that were looked at and not taken yet |
//! | `looking` | what was understood of them, and what taking them would change |
//! | `take` | the change itself |

pub(crate) mod arriving;
pub(crate) mod looking;
mod take;
pub(crate) mod waiting;

pub(crate) use take::Chosen;
