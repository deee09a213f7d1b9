//! The work card of a joint: what the command line works out, each line leading to its words, with the cautions of the trade.

use std::collections::BTreeSet;

use axum::http::StatusCode;

use crate::ground::{Ground, on_each};
use crate::support::Sat;

on_each![
    the_card_says_what_to_make_and_bring_and_what_to_hold_it_against,
    each_line_leads_to_the_words_of_its_clauses,
    without_a_listing_there_is_nothing_to_make,
    programs_get_the_card_too,
];

const LISTING: &str = "hw-d-0412-ed4.txt";

/// What stands between two texts, everywhere.
fn between<'t>(text: &'t str, begin: &str, end: &str) -> Vec<&'t str> {
    let rest = text.split(begin).skip(1);
    rest.filter_map(|rest| rest.split(end).next()).collect()
}

async fn the_card_says_what_to_make_and_bring_and_what_to_hold_it_against(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let card = sat.get("/joints/J-004/card").await;
    assert_eq!(card.status, StatusCode::OK, "{}", card.text);
    // As the command line's card of the mark has it.
    for says in [
        "2-1/4 in. in all, as scheduled, each of 2 faces",
        "narrowest ≈ 48.6 % to ≈ 51.4 %; widest ≈ 40.3 % to ≈ 43.1 %",
        "1/8 in. (≈ 3.2 mm) wet, band 2-13/16 in. (≈ 71.4 mm), ≈ 1.01 gal (≈ 3.82 L)",
        "16 fasteners of the runner (item 2A), 20 in. apart at most",
        "Joint width is 1-5/16 in. (≈ 33.3 mm); the listing asks for at most 1 in.",
        "packing: Vostmat 60, 6 pcf, 2-1/4 in. thick, batts 24 in. × 48 in.",
        "Provisional",
        "respirable silica (29 CFR 1926.1153)",
        "29 CFR 1926.501",
        "may hold asbestos",
        "repair it the same day",
        "the authority having jurisdiction and licensed practice decide",
    ] {
        assert!(card.text.contains(says), "{says}: {}", card.text);
    }
    assert!(!card.text.contains("--batt"), "the desk has no options");
}

async fn each_line_leads_to_the_words_of_its_clauses(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let card = sat.get("/joints/J-004/card").await.text;
    let reading = sat
        .get(&format!(
            "/listings/{}",
            LISTING.replace('-', "%2D").replace('.', "%2E")
        ))
        .await
        .text;
    let places: BTreeSet<&str> = between(&reading, " id=\"", "\"").into_iter().collect();
    let cited: BTreeSet<&str> = between(&card, "%2Etxt#", "\"").into_iter().collect();
    assert!(cited.len() > 30, "{cited:?}");
    for clause in &cited {
        assert!(places.contains(clause), "{clause}");
    }
    // And each verdict that applies leads to its line on the card.
    let joint = sat.get("/joints/J-004").await.text;
    let on_card: BTreeSet<&str> = between(&joint, "/card#", "\"").into_iter().collect();
    let held: BTreeSet<&str> = between(&card, "<li id=\"", "\"").into_iter().collect();
    assert_eq!(on_card, held);
}

async fn without_a_listing_there_is_nothing_to_make(ground: Ground) {
    let sat = Sat::with(&ground, &[]).await;
    let card = sat.get("/joints/J-004/card").await;
    assert_eq!(card.status, StatusCode::OK);
    assert!(card.text.contains("There is no listing to build it to"));
    assert!(
        card.text.contains("may hold asbestos"),
        "the cautions stand all the same"
    );
    let for_programs = sat.get("/api/v1/joints/J-004/card").await;
    assert_eq!(for_programs.text, "null");
    let none = sat.get("/joints/J-999/card").await;
    assert_eq!(none.status, StatusCode::NOT_FOUND);
}

async fn programs_get_the_card_too(ground: Ground) {
    let sat = Sat::with(&ground, &[LISTING]).await;
    let card = sat.get("/api/v1/joints/J-004/card").await;
    let card: serde_json::Value = serde_json::from_str(&card.text).unwrap();
    assert_eq!(card["work"]["joint"], "J-004");
    let packing = &card["lines"][0];
    assert_eq!(
        packing["words"],
        "2-1/4 in. in all, as scheduled, each of 2 faces"
    );
    assert!(packing["clauses"][0].as_str().unwrap().starts_with("3A/"));
}
