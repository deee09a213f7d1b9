//! Step 6: a person confirms a reading.
