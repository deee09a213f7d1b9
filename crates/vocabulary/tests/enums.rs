//! Trades, stages and natures: names, titles, JSON.

use vocabulary::{Nature, Stage, Trade};

#[test]
fn json_carries_the_kebab_case_name() {
    for trade in Trade::ALL {
        assert_eq!(
            serde_json::to_string(trade).unwrap(),
            format!("\"{}\"", trade.name())
        );
        assert_eq!(trade.name().parse(), Ok(*trade));
    }
    for stage in Stage::ALL {
        assert_eq!(
            serde_json::to_string(stage).unwrap(),
            format!("\"{}\"", stage.name())
        );
        assert_eq!(stage.name().parse(), Ok(*stage));
    }
    for nature in Nature::ALL {
        assert_eq!(
            serde_json::to_string(nature).unwrap(),
            format!("\"{}\"", nature.name())
        );
        assert_eq!(nature.name().parse(), Ok(*nature));
    }
}

#[test]
fn an_unknown_name_says_which_are_known() {
    let error = "plumbing".parse::<Trade>().unwrap_err().to_string();
    assert_eq!(
        error,
        "`plumbing` is not a trade; known are design, structure, steel, fireproofing, framing, board, firestop"
    );
}

#[test]
fn stages_follow_the_work() {
    assert!(Stage::ALL.windows(2).all(|pair| pair[0] < pair[1]));
}

#[test]
fn titles_pad_in_tables() {
    assert_eq!(format!("{:<10}|", Stage::Wet), "while wet |");
}
