//! Any text is no quantity, or one that prints and reads back: `cargo fuzz run quantity`.
#![no_main]

use libfuzzer_sys::fuzz_target;
use measure::{Quantity, print};

fuzz_target!(|text: &str| {
    if let Ok(quantity) = Quantity::parse(text) {
        let printed = print::trade(quantity);
        if !printed.starts_with('≈') {
            let _ = Quantity::parse(&printed);
        }
    }
});
