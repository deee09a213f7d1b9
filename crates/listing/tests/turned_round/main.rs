//! Words that turn a limit round, lift it, or give it to another number: read the right way or not at all, since a limit that is turned lets a wrong joint
//! pass. The wordings are invented; what they mean is common practice.

#[path = "../common/mod.rs"]
mod common;
mod denied;
mod ends;
mod ruled_out;
mod whose;
