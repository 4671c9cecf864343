//! Serves the page on loopback.

use super::assets::{Asset, Assets};
use anyhow::{Context, Result, bail};
use axum::Router;
use axum::extract::State;
use axum::http::{HeaderMap, Method, StatusCode, Uri, header};
use axum::response::{IntoResponse, Response};
use std::io::{self, Write};
use std::net::{Ipv4Addr, TcpListener};
use std::sync::Arc;

/// Takes a port of this machine; 0 takes any free one.
pub fn open(port: u16) -> Result<TcpListener> {
    match TcpListener::bind((Ipv4Addr::LOCALHOST, port)) {
        Ok(listener) => Ok(listener),
        Err(error) if error.kind() == io::ErrorKind::AddrInUse => {
            bail!(
                "port {port} is taken; choose another with --port N, or any free one with --port 0"
            )
        }
        Err(error) => bail!("cannot use port {port}: {error}; choose another with --port N"),
    }
}

/// Says the address, then answers until the program is ended.
pub fn run(listener: TcpListener, assets: Assets) -> Result<()> {
    println!("Carryline is at http://{}/", listener.local_addr()?);
    io::stdout().flush()?;
    listener.set_nonblocking(true)?;
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_io()
        .build()?;
    runtime.block_on(async {
        let listener = tokio::net::TcpListener::from_std(listener)?;
        axum::serve(listener, router(assets))
            .await
            .context("cannot serve")
    })
}

fn router(assets: Assets) -> Router {
    Router::new().fallback(answer).with_state(Arc::new(assets))
}

async fn answer(
    State(assets): State<Arc<Assets>>,
    method: Method,
    address: Uri,
    asked: HeaderMap,
) -> Response {
    if method != Method::GET && method != Method::HEAD {
        let allow = [(header::ALLOW, "GET, HEAD")];
        return (StatusCode::METHOD_NOT_ALLOWED, allow).into_response();
    }
    let Some(asset) = assets.find(address.path()) else {
        return (StatusCode::NOT_FOUND, "Not here.").into_response();
    };
    if holds(&asked, asset) {
        return (StatusCode::NOT_MODIFIED, dress(asset)).into_response();
    }
    (dress(asset), asset.bytes.clone()).into_response()
}

/// Whether the visitor already holds this content.
fn holds(asked: &HeaderMap, asset: &Asset) -> bool {
    let tags = asked.get_all(header::IF_NONE_MATCH).iter();
    tags.filter_map(|value| value.to_str().ok())
        .any(|value| value.contains(&asset.tag))
}

/// The page changes with every build, so it is kept but asked after each time.
fn dress(asset: &Asset) -> [(header::HeaderName, String); 4] {
    [
        (header::CONTENT_TYPE, asset.media_type.to_owned()),
        (header::CACHE_CONTROL, "no-cache".to_owned()),
        (header::ETAG, asset.tag.clone()),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff".to_owned()),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_taken_port_is_named_and_a_way_out_given() {
        let first = open(0).unwrap();
        let port = first.local_addr().unwrap().port();
        let error = open(port).err().unwrap().to_string();
        assert!(
            error.contains(&port.to_string()) && error.contains("--port"),
            "{error}"
        );
    }
}
