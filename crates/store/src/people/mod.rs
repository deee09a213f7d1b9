//! People: who there is, and what each may do.

mod role;

pub use role::Role;
