//! Sentences no farther in than the lettered options above them. What they say is asked for whichever option is built. The wordings are invented; what they mean is
//! common practice.

mod common;

use common::clauses;

#[test]
fn what_stands_below_the_last_option_is_of_none() {
    const BELOW: &str = "The packing shall be recessed 1/2 in. from each face.";
    for item in [
        "Fill - Min 4 in. deep.\n   A. Spray option - Min 1/8 in. wet.\n   ",
        "Fill\nA. Sealant - Min 5/8 in. deep.\nB. Spray option - Min 1/8 in. wet.\n",
        "Fill - One of:\nA. Sealant - Min 5/8 in. deep.\nB. Spray - Min 1/8 in. wet.\n",
        "Fill - Either of:\n   A. Sealant - Min 5/8 in. deep.\n   B. Spray - Min 1/8 in. wet.\n   ",
        "Fill - One of:\n\n   A. Sealant - Min 5/8 in. deep over a backer rod that is pressed well into the gap\n   between the boards.\n   B. Spray - Min 1/8 in. wet over both of the boards, with\n   no pinholes left.\n   ",
    ] {
        let text = format!(
            "1. Floor - Min 5 in. thick.\n\n2. {item}{BELOW}\n\n3. Wall - Min 6 in. thick.\n"
        );
        let found = clauses(&text);
        let own = found.iter().find(|own| own.starts_with("packing.recess"));
        assert_eq!(
            own.map(String::as_str),
            Some("packing.recess: nominal 1/2 in"),
            "{text} {found:?}"
        );
    }
}
