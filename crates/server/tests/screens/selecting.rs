//! Which listings fit, what stands in the way of the rest, and what turns it: the same as the command line says of the demo.

use axum::http::StatusCode;

use crate::ground::{Ground, on_each};
use crate::support::Sat;

on_each![
    a_mark_finds_its_listings_and_what_the_rest_would_take,
    what_isn_t_there_or_can_t_be_read_is_told,
    a_product_at_hand_says_which_listings_hold,
];

const LISTINGS: [&str; 4] = [
    "hw-d-0412-ed4.txt",
    "ff-d-1102.txt",
    "hw-d-0437.txt",
    "hw-d-0455.txt",
];

async fn a_mark_finds_its_listings_and_what_the_rest_would_take(ground: Ground) {
    let sat = Sat::with(&ground, &LISTINGS).await;
    let page = sat.get("/selection").await.text;
    assert!(page.contains("/selection?of=HW1"), "{page}");
    let found = sat.get("/selection?of=hw1").await;
    assert_eq!(found.status, StatusCode::OK);
    for says in [
        "<strong>4</strong> listings",
        "hw-d-0412-ed4",
        "Provisional",
        "The listing that the schedule names",
    ] {
        assert!(found.text.contains(says), "{says}: {}", found.text);
    }
    let supposed = sat
        .get("/selection?of=HW1&property=joint.width&value=9+in.")
        .await
        .text;
    assert!(
        supposed.contains("Supposing Joint width: 9 in."),
        "{supposed}"
    );
    let (_, leave) = supposed.split_once("Ruled out then: ").unwrap();
    assert!(leave.starts_with("hw-"), "{leave}");
}

async fn what_isn_t_there_or_can_t_be_read_is_told(ground: Ground) {
    let sat = Sat::with(&ground, &LISTINGS).await;
    for (path, says) in [
        ("/selection?of=HW99", "no joint and no mark `HW99`"),
        (
            "/selection?of=HW1&property=joint.width&value=9",
            "has no unit",
        ),
        (
            "/selection?of=HW1&property=joint.widht&value=9+in.",
            "joint.width",
        ),
        (
            "/selection/substitute?component=joint&product=x",
            "joint.product",
        ),
    ] {
        let told = sat.get(path).await.text;
        assert!(told.contains("role=\"alert\""), "{path}");
        assert!(told.contains(says), "{says}: {told}");
    }
    let elsewhere = ground.another().await;
    let empty = Sat::down(&elsewhere).await;
    assert!(
        empty
            .get("/selection")
            .await
            .text
            .contains("There are no marks yet")
    );
}

async fn a_product_at_hand_says_which_listings_hold(ground: Ground) {
    let sat = Sat::with(&ground, &LISTINGS).await;
    let page = sat
        .get(
            "/selection/substitute?component=packing&product=Ulmeregg+Mineral+Fibre+%7C+Ulmerpad+4",
        )
        .await
        .text;
    assert!(page.contains("In place of what"), "{page}");
    assert!(page.contains("Its listing, hw-d-0412-ed4"), "{page}");
}
