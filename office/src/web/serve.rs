//! Listening: plain, or TLS with given files.

use std::fs::File;
use std::future::Future;
use std::io::{self, BufReader};
use std::net::SocketAddr;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::extract::connect_info::Connected;
use axum::serve::{IncomingStream, Listener};
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::{Notify, mpsc};
use tokio_rustls::TlsAcceptor;
use tokio_rustls::rustls::crypto::ring;
use tokio_rustls::rustls::pki_types::pem::PemObject;
use tokio_rustls::rustls::pki_types::{CertificateDer, PrivateKeyDer};
use tokio_rustls::rustls::{self, ServerConfig};
use tokio_rustls::server::TlsStream;

/// How long a caller may take to agree on TLS.
const HANDSHAKE: Duration = Duration::from_secs(10);
/// Callers that agreed on TLS and wait to be heard.
const WAITING: usize = 64;
/// How long answers under way may still take after Ctrl-C.
const LAST_ANSWERS: Duration = Duration::from_secs(3);

/// The other end of a connection.
#[derive(Debug, Clone, Copy)]
pub struct Peer(pub SocketAddr);

impl Connected<IncomingStream<'_, TcpListener>> for Peer {
    fn connect_info(stream: IncomingStream<'_, TcpListener>) -> Peer {
        Peer(*stream.remote_addr())
    }
}

impl Connected<IncomingStream<'_, Tls>> for Peer {
    fn connect_info(stream: IncomingStream<'_, Tls>) -> Peer {
        Peer(*stream.remote_addr())
    }
}

/// A listener that agrees on TLS beside accepting, so that a caller who stalls holds nobody up.
pub struct Tls {
    ready: mpsc::Receiver<(TlsStream<TcpStream>, SocketAddr)>,
    at: SocketAddr,
}

impl Tls {
    /// Over `listener`, with a certificate chain and its key in PEM.
    pub fn new(listener: TcpListener, config: Arc<ServerConfig>) -> io::Result<Tls> {
        let at = listener.local_addr()?;
        let acceptor = TlsAcceptor::from(config);
        let (agreed, ready) = mpsc::channel(WAITING);
        tokio::spawn(async move {
            let mut listener = listener;
            loop {
                // The one of axum waits and goes on when no file handle is free.
                let (stream, peer) = Listener::accept(&mut listener).await;
                let (acceptor, agreed) = (acceptor.clone(), agreed.clone());
                tokio::spawn(async move {
                    if let Ok(Ok(stream)) = tokio::time::timeout(HANDSHAKE, acceptor.accept(stream)).await {
                        let _ = agreed.send((stream, peer)).await;
                    }
                });
            }
        });
        Ok(Tls { ready, at })
    }
}

impl Listener for Tls {
    type Io = TlsStream<TcpStream>;
    type Addr = SocketAddr;

    async fn accept(&mut self) -> (Self::Io, Self::Addr) {
        match self.ready.recv().await {
            Some(found) => found,
            // The task that accepts lives as long as the process.
            None => std::future::pending().await,
        }
    }

    fn local_addr(&self) -> io::Result<SocketAddr> {
        Ok(self.at)
    }
}

/// Why TLS cannot be spoken.
#[derive(Debug, thiserror::Error)]
pub enum TlsError {
    /// A file cannot be read.
    #[error("{file} cannot be read: {why}.")]
    Unreadable {
        /// The file.
        file: PathBuf,
        /// Why.
        #[source]
        why: io::Error,
    },
    /// There is no certificate in the file.
    #[error("{0} holds no certificate in PEM.")]
    NoCertificate(PathBuf),
    /// There is no private key in the file.
    #[error("{0} holds no private key in PEM.")]
    NoKey(PathBuf),
    /// No version of TLS that rustls wants can be had.
    #[error("TLS cannot be used here: {0}.")]
    Versions(#[source] rustls::Error),
    /// The certificate is not one of this key.
    #[error("{cert} and {key} do not fit each other: {why}.")]
    Pair {
        /// The file of the certificate.
        cert: PathBuf,
        /// The file of the key.
        key: PathBuf,
        /// Why.
        #[source]
        why: rustls::Error,
    },
}

/// What TLS needs, from files in PEM.
pub fn tls_config(cert: &Path, key: &Path) -> Result<Arc<ServerConfig>, TlsError> {
    let open = |path: &Path| {
        let opened = File::open(path).map(BufReader::new);
        opened.map_err(|why| TlsError::Unreadable { file: path.to_owned(), why })
    };
    let chain: Result<Vec<_>, _> = CertificateDer::pem_reader_iter(open(cert)?).collect();
    let chain = chain.ok().filter(|c| !c.is_empty());
    let chain = chain.ok_or_else(|| TlsError::NoCertificate(cert.to_owned()))?;
    let key_der = PrivateKeyDer::from_pem_reader(open(key)?).map_err(|_| TlsError::NoKey(key.to_owned()))?;
    // Named, because another part of the program may bring a second provider, and then none is chosen by itself.
    let builder = ServerConfig::builder_with_provider(Arc::new(ring::default_provider()));
    let builder = builder.with_safe_default_protocol_versions().map_err(TlsError::Versions)?;
    let config = builder.with_no_client_auth().with_single_cert(chain, key_der);
    config.map(Arc::new).map_err(|why| TlsError::Pair { cert: cert.to_owned(), key: key.to_owned(), why })
}

/// Answers until Ctrl-C or a request to end; answers under way then get a moment to finish. `ready` is called once such a request
/// would be heard.
pub async fn serve(
    listener: TcpListener,
    tls: Option<Arc<ServerConfig>>,
    app: Router,
    ready: impl FnOnce(),
) -> io::Result<()> {
    let ending = Arc::new(Notify::new());
    let asked = asked_to_end()?;
    ready();
    let end = {
        let ending = Arc::clone(&ending);
        async move {
            asked.await;
            ending.notify_one();
        }
    };
    let service = app.into_make_service_with_connect_info::<Peer>();
    let serving: std::pin::Pin<Box<dyn Future<Output = io::Result<()>> + Send>> = match tls {
        Some(config) => {
            let tls = Tls::new(listener, config)?;
            Box::pin(async { axum::serve(tls, service).with_graceful_shutdown(end).await })
        }
        None => Box::pin(async { axum::serve(listener, service).with_graceful_shutdown(end).await }),
    };
    tokio::select! {
        done = serving => done,
        () = async { ending.notified().await; tokio::time::sleep(LAST_ANSWERS).await } => Ok(()),
    }
}

#[cfg(unix)]
fn asked_to_end() -> io::Result<impl Future<Output = ()> + Send> {
    use tokio::signal::unix::{SignalKind, signal};
    let (mut interrupt, mut terminate) = (signal(SignalKind::interrupt())?, signal(SignalKind::terminate())?);
    Ok(async move {
        tokio::select! { _ = interrupt.recv() => {}, _ = terminate.recv() => {} }
    })
}

#[cfg(not(unix))]
fn asked_to_end() -> io::Result<impl Future<Output = ()> + Send> {
    Ok(async { drop(tokio::signal::ctrl_c().await) })
}
