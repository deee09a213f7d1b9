//! What the desk does with input that is meant to harm: each is refused with words, and nothing is changed.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a step that fails must fail the test"
)]

mod support;

use std::convert::Infallible;
use std::net::SocketAddr;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Duration, Instant};

use axum::body::{Body, Bytes};
use axum::http::{Method, StatusCode, header};
use futures_util::{StreamExt, stream};
use percent_encoding::{NON_ALPHANUMERIC, utf8_percent_encode};
use server::{Access, Desk, Listening};
use store::people::Role;
use support::{Project, here, project, project_of, team};
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::TcpStream;
use tokio::time::timeout;

/// So many bytes as they would come from the network, and how many of them were taken.
fn flood(bytes: usize) -> (Body, Arc<AtomicUsize>) {
    const PIECE: usize = 16 << 10;
    let taken = Arc::new(AtomicUsize::new(0));
    let count = taken.clone();
    let pieces = stream::iter(0..bytes / PIECE).map(move |_| {
        count.fetch_add(PIECE, Ordering::Relaxed);
        Ok::<_, Infallible>(Bytes::from_static(&[b'a'; PIECE]))
    });
    (Body::from_stream(pieces), taken)
}

#[tokio::test(flavor = "multi_thread")]
async fn a_hundred_megabytes_are_cut_off_at_the_limit() {
    let desk = here(project().await).await;
    let before = desk.store.head().await.unwrap();
    for (method, path) in [
        ("POST", "/joints/J-004/facts"),
        ("POST", "/questions"),
        ("POST", "/listings/hw-d-0412-ed4.txt/confirm"),
        ("POST", "/nowhere"),
        ("PUT", "/api/v1/joints/J-004/facts/joint.width"),
    ] {
        for kind in [
            "application/x-www-form-urlencoded",
            "application/json",
            "text/plain",
            "multipart/form-data; boundary=b",
        ] {
            let (body, taken) = flood(100 << 20);
            let request = desk
                .request(method, path, "")
                .header(header::CONTENT_TYPE, kind)
                .body(body)
                .unwrap();
            let answered = desk.ask(request).await;
            assert!(
                answered.status.is_client_error(),
                "{path} {kind}: {}",
                answered.status
            );
            if !kind.starts_with("multipart") {
                assert_eq!(answered.status, StatusCode::PAYLOAD_TOO_LARGE);
                assert!(answered.text.contains("more than a form"));
            }
            let taken = taken.load(Ordering::Relaxed);
            assert!(
                taken <= 128 << 10,
                "{path} {kind}: {taken} bytes were taken"
            );
        }
    }
    // One that says beforehand how long it is isn't begun.
    let (body, taken) = flood(100 << 20);
    let request = desk
        .request("POST", "/questions", "")
        .header(header::CONTENT_LENGTH, 100 << 20)
        .body(body)
        .unwrap();
    assert_eq!(
        desk.ask(request).await.status,
        StatusCode::PAYLOAD_TOO_LARGE
    );
    assert_eq!(taken.load(Ordering::Relaxed), 0);
    assert_eq!(desk.store.head().await.unwrap(), before);
}

#[tokio::test(flavor = "multi_thread")]
async fn who_hasn_t_signed_in_sends_nothing() {
    let desk = team(project().await).await;
    let reader = desk.somebody("Ada", Role::Reader).await;
    for (cookie, kind, expected) in [
        (
            "",
            "multipart/form-data; boundary=b",
            StatusCode::UNAUTHORIZED,
        ),
        ("", "application/json", StatusCode::UNAUTHORIZED),
        (
            reader.cookie.as_str(),
            "multipart/form-data; boundary=b",
            StatusCode::FORBIDDEN,
        ),
    ] {
        let (body, taken) = flood(100 << 20);
        let request = desk
            .request("POST", "/joints/J-004/facts", cookie)
            .header(header::CONTENT_TYPE, kind)
            .body(body)
            .unwrap();
        assert_eq!(desk.ask(request).await.status, expected, "{kind}");
        let taken = taken.load(Ordering::Relaxed);
        assert!(taken <= 32 << 10, "{kind}: {taken} bytes were taken");
    }
}

const SCRIPT: &str = "<script>alert(1)</script>";
const IMAGE: &str = "\"><img src=x onerror=alert(2)>'";

/// A project all of whose names and words are scripts.
async fn scripted() -> Project {
    let cell = |text: &str| format!("\"{}\"", text.replace('"', "\"\""));
    let name = format!("J{SCRIPT}{IMAGE}");
    let schedule = format!(
        "joint,mark,storey,barrier,grid,joint.width,packing.product\n{},HW1,{},{},{},7/8 in.,{}\n",
        cell(&name),
        cell(&format!("L{SCRIPT}")),
        cell(&format!("FB{IMAGE}")),
        cell(&format!("A{SCRIPT}")),
        cell(&format!("Wool{SCRIPT}{IMAGE} | Four")),
    );
    let file = format!("hw-d-{SCRIPT}{IMAGE}.txt").replace('/', "\u{2215}");
    let marks = format!(
        "mark,title,listing\nHW1,{},{}\n",
        cell(&format!("Head{SCRIPT}")),
        cell(file.trim_end_matches(".txt"))
    );
    let text = format!(
        "System No. HW-D-{SCRIPT}\n\nJoint width - Max 1 in. (25 mm) {IMAGE}\n\n1. Floor Assembly - Min 4 in. thick concrete {SCRIPT}{IMAGE}.\n\n2. Forming Material - Min 4 pcf mineral wool {SCRIPT}, compressed 25 percent {IMAGE}.\n"
    );
    project_of(&schedule, &marks, &[(&file, text.into_bytes())]).await
}

#[tokio::test(flavor = "multi_thread")]
async fn scripts_in_names_and_texts_are_shown_and_never_run() {
    let desk = here(scripted().await).await;
    let project = desk.store.project().await.unwrap();
    let encode = |text: &str| utf8_percent_encode(text, NON_ALPHANUMERIC).to_string();
    let joint = encode(&project.joints[0].name);
    let file = encode(&desk.store.listings().await.unwrap()[0].key.name);
    // What is entered on the desk, too: a value, a source, an answer with its question.
    let fact = format!(
        "property=packing.product&value={}&source={}&seen=1",
        encode(&format!("W{SCRIPT} | {IMAGE}")),
        encode(&format!("stated: {SCRIPT}{IMAGE}"))
    );
    let entered = desk
        .post(&format!("/joints/{joint}/facts"), "", &fact)
        .await;
    assert_eq!(entered.status, StatusCode::SEE_OTHER, "{}", entered.text);
    let wrong = format!(
        "property={}&value={}&source={}&seen=0",
        encode(SCRIPT),
        encode(IMAGE),
        encode(SCRIPT)
    );
    let refused = desk
        .post(&format!("/joints/{joint}/facts"), "", &wrong)
        .await;
    assert_eq!(
        refused.status,
        StatusCode::UNPROCESSABLE_ENTITY,
        "{}",
        refused.text
    );
    let late = desk
        .post(&format!("/joints/{joint}/facts"), "", &fact)
        .await;
    assert_eq!(late.status, StatusCode::CONFLICT);
    let mut pages = vec![("refused".to_owned(), refused), ("late".to_owned(), late)];
    for path in [
        "/".to_owned(),
        format!("/joints/{joint}"),
        format!("/joints/{joint}/section.svg"),
        "/joints/%3Cscript%3Ealert(1)%3C%2Fscript%3E".to_owned(),
        "/listings".to_owned(),
        format!("/listings/{file}"),
        "/listings/%3Cscript%3Ealert(1)%3C%2Fscript%3E".to_owned(),
        "/questions".to_owned(),
        "/journal".to_owned(),
        "/journal?by=%3Cscript%3Ealert(1)%3C%2Fscript%3E".to_owned(),
        "/journal?before=%3Cscript%3Ealert(1)%3C%2Fscript%3E".to_owned(),
    ] {
        let page = desk.get(&path, "").await;
        pages.push((path, page));
    }
    let mut shown = 0;
    for (path, page) in pages {
        let kind = page.headers[header::CONTENT_TYPE].to_str().unwrap();
        let is_markup = kind.starts_with("text/html") || kind.starts_with("image/svg");
        let is_live = page.text.contains("<script>") || page.text.contains("<img src=x");
        assert!(!(is_markup && is_live), "{path}: {}", page.text);
        shown += usize::from(page.text.contains("&lt;script&gt;alert(1)"));
        assert!(
            page.headers.contains_key(header::CONTENT_SECURITY_POLICY),
            "{path}"
        );
        assert_eq!(
            page.headers[header::X_CONTENT_TYPE_OPTIONS],
            "nosniff",
            "{path}"
        );
    }
    assert!(shown >= 9, "the names are shown on {shown} pages");
    // Programs get them as they are, as what no browser takes for a page.
    let answered = desk.get("/api/v1/joints", "").await;
    assert!(answered.text.contains(SCRIPT));
    assert_eq!(answered.headers[header::CONTENT_TYPE], "application/json");
}

#[tokio::test(flavor = "multi_thread")]
async fn odd_addresses_are_refused_with_words() {
    let desk = here(project().await).await;
    let before = desk.store.head().await.unwrap();
    for (path, expected) in [
        ("/joints/%27%20OR%20%271%27%3D%271", StatusCode::NOT_FOUND),
        (
            "/joints/J-004%27%3B%20DROP%20TABLE%20journal%3B--",
            StatusCode::NOT_FOUND,
        ),
        (
            "/journal?before=1%3BDROP%20TABLE%20journal",
            StatusCode::BAD_REQUEST,
        ),
        (
            "/journal?before=9999999999999999999999",
            StatusCode::BAD_REQUEST,
        ),
        ("/journal?before=-1", StatusCode::OK),
        (
            "/listings/..%2F..%2F..%2Fetc%2Fpasswd",
            StatusCode::NOT_FOUND,
        ),
        ("/listings/%2Fetc%2Fpasswd", StatusCode::NOT_FOUND),
        ("/assets/..%2Fdesk.rs", StatusCode::NOT_FOUND),
        ("/joints/%FF", StatusCode::BAD_REQUEST),
        ("/joints/%C3%28", StatusCode::BAD_REQUEST),
        ("/joints/J-004%00", StatusCode::NOT_FOUND),
        ("/joints/%", StatusCode::NOT_FOUND),
        ("/joints/%zz", StatusCode::NOT_FOUND),
        ("/journal?by=%FF", StatusCode::OK),
        ("/api/v1/joints/%FF", StatusCode::BAD_REQUEST),
    ] {
        let answered = desk.get(path, "").await;
        assert_eq!(answered.status, expected, "{path}: {}", answered.text);
        assert!(answered.text.len() > 10, "{path} says nothing");
    }
    let by = desk.get("/journal?by=%27%20OR%20%271%27%3D%271", "").await;
    assert!(by.text.contains("Nothing was ever changed"), "{}", by.text);
    for length in [5_000, 60_000] {
        let long = desk
            .get(&format!("/journal?by={}", "a".repeat(length)), "")
            .await;
        assert_eq!(long.status, StatusCode::URI_TOO_LONG);
        assert!(long.text.contains("longer than any"));
    }
    for form in [
        "property=%FF&value=%C3%28&source=&seen=1",
        "seen=99999999999999999999",
        "=&&&=",
        "\u{0}",
    ] {
        let answered = desk.post("/joints/J-004/facts", "", form).await;
        assert!(
            answered.status.is_client_error(),
            "{form}: {}",
            answered.status
        );
        assert!(answered.text.len() > 10, "{form}");
    }
    let raw = desk
        .request("POST", "/joints/J-004/facts", "")
        .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
        .body(Body::from(vec![0xff, 0xfe, b'=', 0xc3, 0x28]))
        .unwrap();
    assert!(desk.ask(raw).await.status.is_client_error());
    for method in [
        Method::DELETE,
        Method::OPTIONS,
        Method::TRACE,
        Method::PATCH,
    ] {
        let request = desk
            .request(method.as_str(), "/joints/J-004", "")
            .body(Body::empty());
        let status = desk.ask(request.unwrap()).await.status;
        assert_eq!(status, StatusCode::METHOD_NOT_ALLOWED, "{method}");
    }
    assert_eq!(desk.store.head().await.unwrap(), before);
    assert_eq!(desk.store.verify(None).await.unwrap().flaws, []);
}

/// A desk on a port of this machine.
async fn listening() -> SocketAddr {
    let Project { store, folder } = project().await;
    let desk = Arc::new(Desk::over(store).await.unwrap());
    let listening = Listening::on(([127, 0, 0, 1], 0).into()).await.unwrap();
    let address = listening.address;
    tokio::spawn(async move {
        let _folder = folder;
        listening
            .serve(desk, Access::here("Lee", address.port()))
            .await
    });
    address
}

#[tokio::test(flavor = "multi_thread")]
async fn a_desk_without_accounts_isn_t_opened_to_other_machines() {
    let Project { store, folder } = project().await;
    let desk = Arc::new(Desk::over(store).await.unwrap());
    let listening = Listening::on(([0, 0, 0, 0], 0).into()).await.unwrap();
    let access = Access::here("Lee", listening.address.port());
    let refused = timeout(Duration::from_secs(5), listening.serve(desk, access)).await;
    let refused = refused.unwrap().unwrap_err().to_string();
    assert!(refused.contains("nobody signs in"), "{refused}");
    drop(folder);
}

/// Sends bytes and reads what is answered until the connection ends.
async fn sent(address: SocketAddr, bytes: &[u8]) -> String {
    let mut stream = TcpStream::connect(address).await.unwrap();
    // What is refused early may not be read to its end.
    let _ = stream.write_all(bytes).await;
    let mut answer = Vec::new();
    let ended = timeout(Duration::from_mins(1), stream.read_to_end(&mut answer)).await;
    assert!(ended.is_ok(), "the connection is held open");
    String::from_utf8_lossy(&answer).into_owned()
}

#[tokio::test(flavor = "multi_thread")]
async fn headers_that_are_too_long_or_no_headers_are_refused() {
    let address = listening().await;
    let close = "Connection: close\r\n\r\n";
    let fine = sent(
        address,
        format!("GET /journal HTTP/1.1\r\nHost: {address}\r\n{close}").as_bytes(),
    )
    .await;
    assert!(fine.starts_with("HTTP/1.1 200"), "{fine}");
    let long = format!(
        "GET / HTTP/1.1\r\nHost: {address}\r\nX: {}\r\n{close}",
        "a".repeat(20_000)
    );
    let many = format!(
        "GET / HTTP/1.1\r\nHost: {address}\r\n{}{close}",
        "X: a\r\n".repeat(100)
    );
    for request in [long, many] {
        let answer = sent(address, request.as_bytes()).await;
        assert!(answer.starts_with("HTTP/1.1 431"), "{answer}");
    }
    let query = format!(
        "GET /?{} HTTP/1.1\r\nHost: {address}\r\n{close}",
        "a".repeat(10_000)
    );
    let answer = sent(address, query.as_bytes()).await;
    assert!(answer.starts_with("HTTP/1.1 414"), "{answer}");
    let endless = format!(
        "GET /?{} HTTP/1.1\r\nHost: {address}\r\n{close}",
        "a".repeat(1 << 20)
    );
    let answer = sent(address, endless.as_bytes()).await;
    assert!(
        answer.is_empty()
            || answer.starts_with("HTTP/1.1 414")
            || answer.starts_with("HTTP/1.1 431"),
        "{answer}"
    );
    for nonsense in [
        &b"\xff\xfe\x00\x00\r\n\r\n"[..],
        b"GET / HTTP/1.1\r\nHo st: a\r\n\r\n",
        b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03",
    ] {
        let answer = sent(address, nonsense).await;
        assert!(
            answer.is_empty() || answer.starts_with("HTTP/1.1 400"),
            "{answer}"
        );
    }
    // Two lengths for one body: where a proxy reads one and the desk the other, a request could hide in it (RFC 9112, section 6.3).
    let smuggled = format!(
        "POST /questions HTTP/1.1\r\nHost: {address}\r\nOrigin: http://{address}\r\nContent-Length: 5\r\nContent-Length: 6\r\n\r\nseen=1"
    );
    let answer = sent(address, smuggled.as_bytes()).await;
    assert!(answer.starts_with("HTTP/1.1 400"), "{answer}");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_client_that_is_too_slow_is_sent_away() {
    let address = listening().await;
    let begun = Instant::now();
    // Headers that never end, a byte now and then; a body that never ends; and nothing at all.
    let dripping = async |head: String, drip: &'static [u8]| {
        let mut stream = TcpStream::connect(address).await.unwrap();
        stream.write_all(head.as_bytes()).await.unwrap();
        let (mut reading, mut writing) = stream.split();
        let drip = async {
            while writing.write_all(drip).await.is_ok() {
                tokio::time::sleep(Duration::from_millis(500)).await;
            }
            std::future::pending::<()>().await;
        };
        let mut answer = Vec::new();
        tokio::select! {
            _ = reading.read_to_end(&mut answer) => {}
            () = drip => {}
            () = tokio::time::sleep(Duration::from_secs(50)) => panic!("the connection is held open"),
        }
        String::from_utf8_lossy(&answer).into_owned()
    };
    let headers = format!("GET / HTTP/1.1\r\nHost: {address}\r\n");
    let body = format!(
        "POST /questions HTTP/1.1\r\nHost: {address}\r\nOrigin: http://{address}\r\nConnection: close\r\n\
         Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 60000\r\n\r\n"
    );
    let (headers, body, nothing) = tokio::join!(
        dripping(headers, b"X-A: b\r\n"),
        dripping(body, b"a"),
        sent(address, b"")
    );
    assert!(
        headers.is_empty() || headers.starts_with("HTTP/1.1 408"),
        "{headers}"
    );
    assert!(
        body.starts_with("HTTP/1.1 408") && body.contains("took too long"),
        "{body}"
    );
    assert_eq!(nothing, "");
    assert!(begun.elapsed() < Duration::from_secs(45));
    // Others were served all the while.
    let fine = sent(
        address,
        format!("GET / HTTP/1.1\r\nHost: {address}\r\nConnection: close\r\n\r\n").as_bytes(),
    )
    .await;
    assert!(fine.starts_with("HTTP/1.1 200"), "{fine}");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_client_that_reads_nothing_is_sent_away() {
    const PAGES: usize = 4000;
    let address = listening().await;
    let mut stream = TcpStream::connect(address).await.unwrap();
    let ask = format!("GET /assets/desk.css HTTP/1.1\r\nHost: {address}\r\n\r\n");
    // More than the system holds for a client that doesn't read. When nobody reads these either, the client waits, too.
    let all = ask.repeat(PAGES);
    let _ = timeout(Duration::from_secs(40), stream.write_all(all.as_bytes())).await;
    tokio::time::sleep(Duration::from_secs(20)).await;
    let mut answer = Vec::new();
    let read = timeout(Duration::from_secs(20), stream.read_to_end(&mut answer)).await;
    assert!(read.is_ok(), "the connection is held open");
    let answered = String::from_utf8_lossy(&answer)
        .matches("HTTP/1.1 200")
        .count();
    assert!((1..PAGES).contains(&answered), "{answered} of {PAGES}");
}
