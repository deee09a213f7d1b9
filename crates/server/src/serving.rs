//! Connections: how many there are, and how long each may take over what.
//!
//! A client that sends a byte now and then holds a place for as long as it likes, unless somebody says how long. So headers must come soon and be
//! short, bodies have their own time (`body`), answers must be read, and no connection lasts for ever.

use std::convert::Infallible;
use std::future::Future;
use std::io;
use std::pin::pin;
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::body::Body;
use hyper::Request;
use hyper::body::Incoming;
use hyper::server::conn::http1;
use hyper::service::service_fn;
use hyper_util::rt::{TokioIo, TokioTimer};
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::{Semaphore, watch};
use tokio::time::{sleep, timeout};
use tokio_io_timeout::TimeoutStream;
use tower::ServiceExt;

use crate::people::Peer;

/// How many connections there are at most. Others wait until one ends.
const MOST_CONNECTIONS: usize = 512;

/// How long the headers of a request may take to come, and how long a connection may say nothing between requests.
const HEADERS_WITHIN: Duration = Duration::from_secs(15);

/// The most bytes of a request's first line and headers.
const MOST_IN_HEADERS: usize = 16 << 10;

/// The most headers.
const MOST_HEADERS: usize = 64;

/// How long a client may take to read some of what it is answered.
const READ_WITHIN: Duration = Duration::from_secs(15);

/// How long a connection lasts; then it is told to end what it is at.
const LASTS: Duration = Duration::from_mins(30);

/// How long ending may take.
const ENDS_WITHIN: Duration = Duration::from_secs(10);

/// Answers whoever connects, until `stop` is done.
pub(crate) async fn serve(
    listener: TcpListener,
    app: Router,
    stop: impl Future<Output = ()>,
) -> io::Result<()> {
    let places = Arc::new(Semaphore::new(MOST_CONNECTIONS));
    let (stopping, stopped) = watch::channel(());
    let mut stop = pin!(stop);
    loop {
        let accepted = async {
            let place = places.clone().acquire_owned().await;
            (listener.accept().await, place)
        };
        let (accepted, place) = tokio::select! {
            () = &mut stop => break,
            accepted = accepted => accepted,
        };
        let Ok((stream, peer)) = accepted else {
            // This one went, or there are no more files to open: others may come.
            sleep(Duration::from_millis(100)).await;
            continue;
        };
        let (app, stopped) = (app.clone(), stopped.clone());
        tokio::spawn(async move {
            connection(stream, Peer(peer), app, stopped).await;
            drop(place);
        });
    }
    drop(stopped);
    // Whoever listens is told, and then waited for.
    let _ = stopping.send(());
    let _ = timeout(ENDS_WITHIN, stopping.closed()).await;
    Ok(())
}

async fn connection(stream: TcpStream, peer: Peer, app: Router, mut stopped: watch::Receiver<()>) {
    let service = service_fn(move |request: Request<Incoming>| {
        let mut request = request.map(Body::new);
        request.extensions_mut().insert(peer);
        let app = app.clone();
        async move {
            Ok::<_, Infallible>(
                app.oneshot(request)
                    .await
                    .unwrap_or_else(|never| match never {}),
            )
        }
    });
    let mut stream = TimeoutStream::new(stream);
    stream.set_write_timeout(Some(READ_WITHIN));
    let stream = Box::pin(stream);
    let mut connection = pin!(
        http1::Builder::new()
            .timer(TokioTimer::new())
            .header_read_timeout(HEADERS_WITHIN)
            .max_buf_size(MOST_IN_HEADERS)
            .max_headers(MOST_HEADERS)
            .serve_connection(TokioIo::new(stream), service)
    );
    // What goes wrong on a connection is its client's affair.
    tokio::select! {
        _ = connection.as_mut() => return,
        () = sleep(LASTS) => {}
        _ = stopped.changed() => {}
    }
    connection.as_mut().graceful_shutdown();
    let _ = timeout(ENDS_WITHIN, connection).await;
}
