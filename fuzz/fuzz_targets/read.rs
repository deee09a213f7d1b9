//! Any bytes are refused or read into a whole: `cargo fuzz run read`.
#![no_main]

use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let Ok(reading) = listing::read("fuzz", bytes) else {
        return;
    };
    let mut at = 0;
    for place in &reading.places {
        assert_eq!(place.span.start(), at);
        at = place.span.end();
    }
    assert_eq!(
        (at, reading.accounted.bytes),
        (reading.accounted.of, reading.accounted.of)
    );
});
