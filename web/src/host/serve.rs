//! Serves the page on loopback.

use super::assets::{Asset, Assets};
use super::packed::Coding;
use anyhow::{Context, Result, bail};
use axum::Router;
use axum::extract::State;
use axum::http::{HeaderMap, HeaderValue, Method, StatusCode, Uri, header};
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
    let accepted = asked.get_all(header::ACCEPT_ENCODING).iter();
    let accepted: Vec<_> = accepted.filter_map(|v| v.to_str().ok()).collect();
    let packed = asset.packed(&accepted.join(","));
    let (coding, bytes) = match packed {
        Some((coding, bytes)) => (Some(coding), bytes),
        None => (None, asset.bytes.as_slice()),
    };
    let head = dress(asset, coding);
    if holds(&asked, asset) {
        return (StatusCode::NOT_MODIFIED, head).into_response();
    }
    (head, bytes.to_vec()).into_response()
}

/// Whether the visitor already holds this content, in whatever coding.
fn holds(asked: &HeaderMap, asset: &Asset) -> bool {
    let tags = asked.get_all(header::IF_NONE_MATCH).iter();
    tags.filter_map(|value| value.to_str().ok())
        .any(|value| value.contains(&asset.tag))
}

/// A page changes with every build, so it is kept but asked after each time; what it is made of changes
/// its address.
fn dress(asset: &Asset, coding: Option<Coding>) -> HeaderMap {
    let kept = if asset.lasting {
        "public, max-age=31536000, immutable"
    } else {
        "no-cache"
    };
    // One tag for each coding: they are not the same bytes.
    let tag = format!("\"{}{}\"", asset.tag, coding.map_or("", Coding::name));
    let mut head = HeaderMap::new();
    let mut put = |name, value: &str| {
        if let Ok(value) = HeaderValue::from_str(value) {
            head.insert(name, value);
        }
    };
    put(header::CONTENT_TYPE, asset.media_type);
    put(header::CACHE_CONTROL, kept);
    put(header::ETAG, &tag);
    put(header::VARY, "accept-encoding");
    if let Some(early) = &asset.early {
        put(header::LINK, early);
    }
    put(header::X_CONTENT_TYPE_OPTIONS, "nosniff");
    if let Some(coding) = coding {
        put(header::CONTENT_ENCODING, coding.name());
    }
    head
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
