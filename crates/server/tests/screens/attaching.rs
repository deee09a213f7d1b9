//! Files come with a submittal, are kept by their hash, come back as they were, go along with an archive, and are looked after by `verify`.

use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use store::records::AttachmentRecord;
use store::{Place, Store};

use crate::ground::{Ground, on_each};
use crate::support::{Answered, Sat};

on_each![
    a_product_sheet_and_a_letter_are_attached_and_come_back_as_they_were,
    what_can_t_be_attached_is_told_and_nothing_is,
    an_archive_takes_the_files_along_and_verify_finds_one_that_was_changed,
];

const LISTING: &str = "hw-d-0412-ed4.txt";
const PAGE: &str = "/submittals/07%2084%2043%2D05";

/// A desk with a submittal.
async fn submitted(ground: &Ground) -> Sat {
    let sat = Sat::with(ground, &[LISTING]).await;
    let form = [
        ("number", "07 84 43-05"),
        ("title", "Head-of-wall joints"),
        ("from", "Contractor"),
        ("received", "2026-03-14"),
        ("marks", "HW1"),
        ("listing", LISTING),
        ("proposed", "packing.density = 4 pcf"),
        ("seen", "0"),
    ];
    let done = sat.post("/submittals", &form).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    sat
}

async fn attach(sat: &Sat, files: &[(&str, Vec<u8>)]) -> Answered {
    sat.bring_to(&format!("{PAGE}/files"), files).await
}

fn pdf() -> Vec<u8> {
    crate::support::demo_file("pdf/ff-d-1102.pdf")
}

async fn kept(store: &Store) -> Vec<AttachmentRecord> {
    let held = store.get_all("submittal:07 84 43-05").await.unwrap();
    held.into_iter().map(|held| held.value).collect()
}

async fn a_product_sheet_and_a_letter_are_attached_and_come_back_as_they_were(ground: Ground) {
    let sat = submitted(&ground).await;
    let letter = "Dear reviewer,\nthe packing is 4 pcf – as listed.\n".as_bytes();
    let done = attach(
        &sat,
        &[
            ("Ulmerpad 4 sheet.pdf", pdf()),
            ("letter.html", letter.to_vec()),
        ],
    )
    .await;
    assert_eq!(
        (done.status, done.to.as_str()),
        (StatusCode::SEE_OTHER, format!("{PAGE}#files").as_str()),
        "{}",
        done.text
    );
    let files = kept(&sat.store).await;
    let page = sat.get(PAGE).await.text;
    for file in &files {
        assert!(page.contains(&file.sha256), "{page}");
        assert!(page.contains(&format!(">{}</a>", file.file)), "{page}");
    }
    assert!(page.contains("attached by Lee"), "{page}");
    let letter_of = sat.get(&format!("{PAGE}/letter")).await.text;
    assert!(letter_of.contains(&files[0].sha256), "{letter_of}");
    for (name, media_type, bytes) in [
        ("Ulmerpad 4 sheet.pdf", "application/pdf", pdf()),
        (
            "letter.html.txt",
            "text/plain; charset=utf-8",
            letter.to_vec(),
        ),
    ] {
        let file = files.iter().find(|file| file.file == name).unwrap();
        let path = format!("{PAGE}/files/{}", file.sha256);
        let (headers, body) = sat.bytes(&path).await;
        assert_eq!(body, bytes, "{name}");
        assert_eq!(headers[header::CONTENT_TYPE], media_type);
        let disposition = headers[header::CONTENT_DISPOSITION].to_str().unwrap();
        assert!(
            disposition.starts_with(&format!("attachment; filename=\"{name}\"")),
            "{disposition}"
        );
        assert_eq!(headers[header::X_CONTENT_TYPE_OPTIONS], "nosniff");
    }
    let journal = sat.get("/journal").await.text;
    assert!(
        journal.contains("attached 2 files to submittal 07 84 43-05"),
        "{journal}"
    );
    // Taken off, it is gone from the submittal, and the journal and its bytes are whole.
    let path = format!("{PAGE}/files/{}", files[0].sha256);
    let done = sat
        .post(&format!("{path}/take-off"), &[("seen", "1")])
        .await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
    assert_eq!(sat.get(&path).await.status, StatusCode::NOT_FOUND);
    assert!(sat.store.attachment(&files[0].sha256).await.is_ok());
    let verified = sat.store.verify(None).await.unwrap();
    assert_eq!(verified.flaws, []);
    assert_eq!(
        verified.attachments, 3,
        "the listing's document and both files"
    );
}

async fn what_can_t_be_attached_is_told_and_nothing_is(ground: Ground) {
    let sat = submitted(&ground).await;
    let before = sat.store.head().await.unwrap();
    let large = [b"%PDF-1.7\n".as_slice(), &vec![b'x'; 16 << 20]].concat();
    for (files, says) in [
        (
            vec![("sheet.pdf", b"PK\x03\x04 no PDF".to_vec())],
            "sheet.pdf is nothing that can be attached, whatever its name says",
        ),
        (
            vec![("run.exe", b"MZ\x90\0".to_vec())],
            "bring it as PDF, PNG, JPEG, TIFF or plain text",
        ),
        (vec![("sheet.pdf", large)], "sheet.pdf is larger than 16 MB"),
        (
            vec![("sheet.pdf", vec![b'x'; (32 << 20) + 1])],
            "at most 16 MB each",
        ),
        (
            vec![("a.pdf", pdf()), ("b.pdf", pdf())],
            "the same as another",
        ),
        (
            vec![("a.pdf", pdf()), ("b.zip", b"PK\x03\x04".to_vec())],
            "b.zip is nothing",
        ),
        (vec![], "no file was chosen"),
    ] {
        let told = attach(&sat, &files).await;
        assert_eq!(told.status, StatusCode::UNPROCESSABLE_ENTITY, "{says}");
        assert!(
            told.text.to_lowercase().contains(&says.to_lowercase()),
            "{says}: {}",
            told.text
        );
    }
    assert_eq!(
        sat.store.head().await.unwrap(),
        before,
        "nothing was recorded"
    );
    let done = attach(&sat, &[("a.pdf", pdf())]).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER);
    let twice = attach(&sat, &[("b.pdf", pdf())]).await;
    assert!(
        twice.text.contains("attached already, as a.pdf"),
        "{}",
        twice.text
    );
    // Another submittal, none, and a hash that isn't this one's: a listing's document isn't to be had this way.
    let unknown = sat
        .bring_to("/submittals/none/files", &[("a.pdf", pdf())])
        .await;
    assert_eq!(unknown.status, StatusCode::NOT_FOUND);
    let listing = sat.store.listings().await.unwrap()[0].value.sha256.clone();
    for hash in [listing.as_str(), "none", "..%2F..%2Fclinic.sqlite"] {
        let none = sat.get(&format!("{PAGE}/files/{hash}")).await;
        assert_eq!(none.status, StatusCode::NOT_FOUND, "{hash}");
    }
}

async fn an_archive_takes_the_files_along_and_verify_finds_one_that_was_changed(ground: Ground) {
    let sat = submitted(&ground).await;
    attach(&sat, &[("sheet.pdf", pdf())]).await;
    let file = kept(&sat.store).await.remove(0);
    let folder = tempfile::tempdir().unwrap();
    let archive = folder.path().join("clinic.zip");
    sat.store.export(&archive).await.unwrap();
    let place = Place::File(folder.path().join("again.sqlite"));
    let attachments = place.attachments().unwrap();
    let restored = Store::restore(&archive, &place, &attachments)
        .await
        .unwrap();
    assert_eq!(kept(&restored).await, std::slice::from_ref(&file));
    assert_eq!(restored.attachment(&file.sha256).await.unwrap(), pdf());
    assert_eq!(restored.verify(None).await.unwrap().flaws, []);
    let store::AttachmentsPlace::Folder(kept_in) = attachments else {
        panic!("a file's attachments lie in a folder")
    };
    let (begin, _) = file.sha256.split_at(2);
    let path = kept_in.join(begin).join(&file.sha256);
    let mut bytes = std::fs::read(&path).unwrap();
    bytes[100] ^= 1;
    std::fs::write(&path, bytes).unwrap();
    let flaws = restored.verify(None).await.unwrap().flaws;
    assert_eq!(flaws.len(), 1, "{flaws:?}");
    assert!(flaws[0].problem.contains(&file.sha256), "{flaws:?}");
    // And the desk gives nobody what isn't what was attached.
    let desk = std::sync::Arc::new(server::Desk::over(restored).await.unwrap());
    let app = server::app(desk, server::Access::here("Lee", 8452));
    let request = Request::get(format!("{PAGE}/files/{}", file.sha256))
        .header(header::HOST, "localhost:8452");
    let answered = tower::ServiceExt::oneshot(app, request.body(Body::empty()).unwrap())
        .await
        .unwrap();
    assert_eq!(answered.status(), StatusCode::INTERNAL_SERVER_ERROR);
}
