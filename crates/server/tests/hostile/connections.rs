//! Clients that are too slow or send too much, on a port of this machine. Nothing of them reaches a database.

use std::net::SocketAddr;
use std::sync::Arc;
use std::time::{Duration, Instant};

use server::{Access, Desk, Listening};
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::TcpStream;
use tokio::time::timeout;

use crate::ground::Ground;
use crate::support::project;

/// A desk on a port of this machine.
async fn listening() -> SocketAddr {
    let ground = Ground::sqlite();
    let desk = Arc::new(Desk::over(project(&ground).await).await.unwrap());
    let listening = Listening::on(([127, 0, 0, 1], 0).into()).await.unwrap();
    let address = listening.address;
    tokio::spawn(async move {
        let _ground = ground;
        listening
            .serve(desk, Access::here("Lee", address.port()))
            .await
    });
    address
}

#[tokio::test(flavor = "multi_thread")]
async fn a_desk_without_accounts_isn_t_opened_to_other_machines() {
    let ground = Ground::sqlite();
    let desk = Arc::new(Desk::over(project(&ground).await).await.unwrap());
    let listening = Listening::on(([0, 0, 0, 0], 0).into()).await.unwrap();
    let access = Access::here("Lee", listening.address.port());
    let refused = timeout(Duration::from_secs(5), listening.serve(desk, access)).await;
    let refused = refused.unwrap().unwrap_err().to_string();
    assert!(refused.contains("nobody signs in"), "{refused}");
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
