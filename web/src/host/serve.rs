//! Serves the page on loopback.

use super::assets::{Asset, Assets};
use anyhow::{Result, anyhow, bail};
use std::io::{self, Write};
use std::net::{Ipv4Addr, TcpListener};
use tiny_http::{Header, Method, Request, Response, Server, StatusCode};

/// Takes a port of this machine; 0 takes any free one.
pub fn open(port: u16) -> Result<Server> {
    let listener = match TcpListener::bind((Ipv4Addr::LOCALHOST, port)) {
        Ok(listener) => listener,
        Err(error) if error.kind() == io::ErrorKind::AddrInUse => {
            bail!(
                "port {port} is taken; choose another with --port N, or any free one with --port 0"
            )
        }
        Err(error) => bail!("cannot use port {port}: {error}; choose another with --port N"),
    };
    Server::from_listener(listener, None).map_err(|error| anyhow!("cannot serve: {error}"))
}

/// Says the address, then answers until the program is ended.
pub fn run(server: &Server, assets: &Assets) -> Result<()> {
    println!("Carryline is at http://{}/", server.server_addr());
    io::stdout().flush()?;
    for request in server.incoming_requests() {
        // A visitor who goes away in the middle of an answer is no fault of the page.
        let _ = answer(request, assets);
    }
    Ok(())
}

fn answer(request: Request, assets: &Assets) -> io::Result<()> {
    if !matches!(request.method(), Method::Get | Method::Head) {
        let allow = header("Allow", "GET, HEAD");
        return request.respond(Response::empty(StatusCode(405)).with_header(allow));
    }
    match assets.find(request.url()) {
        None => request.respond(Response::from_string("Not here.").with_status_code(404)),
        Some(asset) if holds(&request, asset) => {
            request.respond(dress(Response::empty(StatusCode(304)), asset))
        }
        Some(asset) => {
            // Sent whole, with its length, so that the visitor knows how much is to come.
            let whole =
                Response::from_data(asset.bytes.as_slice()).with_chunked_threshold(usize::MAX);
            request.respond(dress(whole, asset))
        }
    }
}

/// Whether the visitor already holds this content.
fn holds(request: &Request, asset: &Asset) -> bool {
    request
        .headers()
        .iter()
        .any(|h| h.field.equiv("If-None-Match") && h.value.as_str().contains(&asset.tag))
}

/// The page changes with every build, so it is kept but asked after each time.
fn dress<R: io::Read>(response: Response<R>, asset: &Asset) -> Response<R> {
    response
        .with_header(header("Content-Type", asset.media_type))
        .with_header(header("Cache-Control", "no-cache"))
        .with_header(header("ETag", &asset.tag))
        .with_header(header("X-Content-Type-Options", "nosniff"))
}

fn header(name: &str, value: &str) -> Header {
    Header::from_bytes(name, value).expect("our own header names and values are plain ASCII")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_taken_port_is_named_and_a_way_out_given() {
        let first = open(0).unwrap();
        let port = first.server_addr().to_ip().unwrap().port();
        let error = open(port).err().unwrap().to_string();
        assert!(
            error.contains(&port.to_string()) && error.contains("--port"),
            "{error}"
        );
    }
}
