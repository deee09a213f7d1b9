//! Reads a listing into clauses.
