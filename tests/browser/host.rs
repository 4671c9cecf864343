//! A plain static host that can be stopped, as any web space is one: it knows nothing of the page.

use anyhow::Result;
use axum::Router;
use std::net::{Ipv4Addr, TcpListener};
use std::path::Path;
use std::thread::{self, JoinHandle};
use tokio::runtime;
use tokio::sync::oneshot;
use tower_http::services::ServeDir;

/// A running host; dropping it stops it.
pub struct Host {
    port: u16,
    stop: Option<oneshot::Sender<()>>,
    thread: Option<JoinHandle<()>>,
}

impl Host {
    /// Serves a folder of files below `path`, which begins and ends in a stroke, on a port of this
    /// machine; 0 takes any free one.
    pub fn start(folder: &Path, path: &str, port: u16) -> Result<Self> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port))?;
        listener.set_nonblocking(true)?;
        let port = listener.local_addr()?.port();
        let files = ServeDir::new(folder);
        let router = match path {
            "/" => Router::new().fallback_service(files),
            below => Router::new().nest_service(below, files),
        };
        let runtime = runtime::Builder::new_current_thread()
            .enable_all()
            .build()?;
        let (stop, stopped) = oneshot::channel();
        let thread = thread::spawn(move || {
            runtime.block_on(async {
                let Ok(listener) = tokio::net::TcpListener::from_std(listener) else {
                    return;
                };
                tokio::select! {
                    _ = axum::serve(listener, router) => {}
                    _ = stopped => {}
                }
            });
            // Ends every connection, which waiting for the visitors would not.
            runtime.shutdown_background();
        });
        Ok(Self {
            port,
            stop: Some(stop),
            thread: Some(thread),
        })
    }

    /// The port it answers on.
    pub fn port(&self) -> u16 {
        self.port
    }
}

impl Drop for Host {
    fn drop(&mut self) {
        if let Some(stop) = self.stop.take() {
            // Fails only where it has ended by itself.
            let _ = stop.send(());
        }
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}
