//! Invitations: how people come in.

use axum::http::{StatusCode, header};
use server::people::invite;
use store::people::Role;
use store::{Key, Kind};

use crate::ground::{Ground, on_each};
use crate::hash_of;
use crate::support::{PASSWORD, project, team};

on_each![
    a_link_to_another_password_ends_with_the_next_password,
    an_invitation_leads_in_once_and_leaves_no_secret_behind,
    two_who_take_up_one_invitation_at_once_are_one_person,
    another_password_ends_every_session,
];

async fn an_invitation_leads_in_once_and_leaves_no_secret_behind(ground: Ground) {
    let desk = team(project(&ground).await).await;
    let invited = invite(&desk.store, "Kim", "Ada Venn", Role::Reviewer, false)
        .await
        .unwrap();
    let page = desk.get(&invited.path, "").await;
    assert!(page.text.contains("value=\"Ada Venn\"") && page.text.contains("reviewer"));
    // Looking at it uses nothing up; what can't be a password says why, and leaves it open.
    let short = desk.take_up(&invited.path, "Ada Venn", "short").await;
    assert_eq!(short.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(short.text.contains("at least 15 characters"));
    let done = desk.take_up(&invited.path, "Ada  Venn", PASSWORD).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    let set = done.headers[header::SET_COOKIE].to_str().unwrap();
    for part in [
        "__Host-everyclause=",
        "; Path=/",
        "; Secure",
        "; HttpOnly",
        "; SameSite=Lax",
    ] {
        assert!(set.contains(part), "{set}");
    }
    assert!(!set.contains("Domain"), "{set}");
    let cookie = done.cookie("__Host-everyclause").unwrap();
    assert!(desk.get("/", &cookie).await.text.contains("Ada Venn"));
    for path in [
        &invited.path,
        "/invitations/0000",
        &format!("/invitations/{}", "0".repeat(64)),
    ] {
        let again = desk.get(path, "").await;
        assert_eq!(again.status, StatusCode::NOT_FOUND);
        assert!(again.text.contains("was taken up"), "{}", again.text);
    }
    // The journal has who and what; nothing in it opens a door.
    let entries = desk.store.entries_after(0, 1000).await.unwrap();
    let journal = serde_json::to_string(&entries).unwrap();
    assert!(
        journal.contains("invited Ada Venn as reviewer")
            && journal.contains("took up the invitation as reviewer")
    );
    let token = cookie.split_once('=').unwrap().1;
    for secret in [
        PASSWORD,
        "argon2",
        token,
        &hash_of(&cookie),
        invited.path.rsplit('/').next().unwrap(),
    ] {
        assert!(!journal.contains(secret), "{secret}");
    }
    let key = Key::new(Kind::Person, "ada venn", "");
    let hash = desk.store.password(&key).await.unwrap().unwrap();
    assert!(
        hash.starts_with("$argon2id$v=19$m=19456,t=2,p=1$"),
        "{hash}"
    );
    assert_eq!(desk.store.verify(None).await.unwrap().flaws, []);
    // A name that is taken stays whose it is.
    let other = invite(&desk.store, "Kim", "Sam", Role::Administrator, false)
        .await
        .unwrap();
    let second = desk.take_up(&other.path, "ADA VENN", PASSWORD).await;
    assert_eq!(second.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(second.text.contains("is taken"), "{}", second.text);
    // Nor does anybody come in under one that looks like it: the first letter is a Cyrillic one.
    let second = desk.take_up(&other.path, "%D0%90da Venn", PASSWORD).await;
    assert_eq!(second.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(
        second.text.contains("looks like Ada Venn"),
        "{}",
        second.text
    );
    assert!(
        invite(&desk.store, "Kim", "ada venn", Role::Reader, false)
            .await
            .is_err()
    );
}

async fn two_who_take_up_one_invitation_at_once_are_one_person(ground: Ground) {
    let desk = team(project(&ground).await).await;
    let invited = invite(&desk.store, "Kim", "Ada", Role::Reviewer, false)
        .await
        .unwrap();
    let (one, other) = tokio::join!(
        desk.take_up(&invited.path, "Ada", PASSWORD),
        desk.take_up(&invited.path, "Bea", PASSWORD)
    );
    let in_ = [&one, &other].map(|done| done.status == StatusCode::SEE_OTHER);
    assert_ne!(in_[0], in_[1], "{} {}", one.status, other.status);
    assert_eq!(desk.store.people().await.unwrap().len(), 1);
}

async fn another_password_ends_every_session(ground: Ground) {
    let desk = team(project(&ground).await).await;
    let ada = desk.somebody("Ada", Role::Reader).await;
    let elsewhere = desk.sign_in("ada", PASSWORD, "192.0.2.7").await;
    let elsewhere = elsewhere.cookie("__Host-everyclause").unwrap();
    let is_in = async |cookie: &str| desk.get("/", cookie).await.status == StatusCode::OK;
    let form = |current: &str, new: &str| {
        format!("current={current}&password={new}&repeated={new}").replace(' ', "+")
    };
    let wrong = ada
        .post(
            "/account/password",
            &form("not it at all", "seven grey pebbles"),
        )
        .await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(is_in(&elsewhere).await);
    let done = ada
        .post("/account/password", &form(PASSWORD, "seven grey pebbles"))
        .await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert!(!is_in(&elsewhere).await && !is_in(&ada.cookie).await);
    assert!(is_in(&done.cookie("__Host-everyclause").unwrap()).await);
    let old = desk.sign_in("Ada", PASSWORD, "192.0.2.8").await;
    assert_eq!(old.status, StatusCode::UNAUTHORIZED);
    let new = desk.sign_in("Ada", "seven grey pebbles", "192.0.2.8").await;
    assert_eq!(new.status, StatusCode::SEE_OTHER);
    // A person who has forgotten it gets a link, and stays who they are.
    let invited = invite(&desk.store, "Kim", "Ada", Role::Administrator, true)
        .await
        .unwrap();
    let done = desk
        .take_up(&invited.path, "Mallory", "eleven tin kettles")
        .await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert!(!is_in(&new.cookie("__Host-everyclause").unwrap()).await);
    let people = desk.store.people().await.unwrap();
    assert_eq!((people.len(), people[0].value.role), (1, Role::Reader));
    let ada = desk.with(done.cookie("__Host-everyclause").unwrap()).await;
    let out = ada.post("/account/sign-out-everywhere", "").await;
    assert_eq!(out.status, StatusCode::SEE_OTHER);
    assert!(!is_in(&ada.cookie).await);
}

/// A link that was lost on the way, or taken, is worth nothing once its owner has set a password, or is shut out.
async fn a_link_to_another_password_ends_with_the_next_password(ground: Ground) {
    let desk = team(project(&ground).await).await;
    let ada = desk.somebody("Ada", Role::Reader).await;
    let link = async || {
        let invited = invite(&desk.store, "Kim", "Ada", Role::Reader, true).await;
        invited.unwrap().path
    };
    let (lost, kept) = (link().await, link().await);
    let other = invite(&desk.store, "Kim", "Bea", Role::Reader, false).await;
    let form =
        format!("current={PASSWORD}&password=seven+grey+pebbles&repeated=seven+grey+pebbles");
    let done = ada.post("/account/password", &form.replace(' ', "+")).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    for path in [&lost, &kept] {
        assert_eq!(desk.get(path, "").await.status, StatusCode::NOT_FOUND);
    }
    let other = other.unwrap().path;
    assert_eq!(desk.get(&other, "").await.status, StatusCode::OK);
    // By one of two links, too.
    let (lost, used) = (link().await, link().await);
    let done = desk.take_up(&used, "Ada", "eleven tin kettles").await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert_eq!(desk.get(&lost, "").await.status, StatusCode::NOT_FOUND);
    // And who is shut out keeps none for later.
    let lost = link().await;
    let cal = desk.somebody("Cal", Role::Administrator).await;
    let held = desk.store.person("Ada").await.unwrap().unwrap();
    let form = format!(
        "name=Ada&role=reader&may_sign_in=false&seen={}",
        held.version
    );
    let shut = cal.post("/people", &form).await;
    assert_eq!(shut.status, StatusCode::SEE_OTHER, "{}", shut.text);
    assert_eq!(desk.get(&lost, "").await.status, StatusCode::NOT_FOUND);
}
