//! How a team's desk is reached: its public address, and what stands before it.

use std::net::{IpAddr, Ipv6Addr, SocketAddr};

use axum::http::{HeaderMap, HeaderName, Uri};

use crate::trouble::Trouble;

const FORWARDED_FOR: HeaderName = HeaderName::from_static("x-forwarded-for");

/// Where a connection comes from.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Peer(pub(crate) SocketAddr);

/// How a team's desk is reached.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Front {
    /// The public address, as browsers name it: `https://desk.example.org`.
    origin: String,
    /// Its host, with the port where that isn't the scheme's own.
    host: String,
    /// Whether a proxy stands before the desk, terminates TLS, and says who asks.
    behind_proxy: bool,
}

impl Front {
    /// A front at a public address, for a desk that listens at `listen`.
    ///
    /// # Errors
    /// When the address is none, or passwords would go over a network in clear.
    pub fn at(origin: &str, listen: SocketAddr, behind_proxy: bool) -> Result<Self, Trouble> {
        let refused = |message: String, help: &str| Trouble::Refused {
            message,
            help: help.to_owned(),
        };
        let no_address = || {
            refused(
                format!("`{origin}` is no address that people could open"),
                "give it as a browser shows it, without a path: `https://desk.example.org`",
            )
        };
        let uri: Uri = origin
            .trim_end_matches('/')
            .parse()
            .map_err(|_| no_address())?;
        let (Some(scheme), Some(authority)) = (uri.scheme_str(), uri.authority()) else {
            return Err(no_address());
        };
        let is_bare =
            uri.path() == "/" && uri.query().is_none() && !authority.as_str().contains('@');
        if !is_bare || !matches!(scheme, "http" | "https") {
            return Err(no_address());
        }
        let is_own = matches!(authority.host(), "localhost" | "127.0.0.1" | "[::1]");
        let is_clear = scheme == "http";
        if is_clear && !(is_own && listen.ip().is_loopback()) {
            return Err(refused(
                "names and passwords would go over the network in clear".to_owned(),
                "let a proxy terminate TLS before the desk, and give the address that it answers at, which begins with `https://`",
            ));
        }
        if is_clear == behind_proxy {
            return Err(refused(
                "the desk itself speaks plain http".to_owned(),
                "an address that begins with `https://` needs a proxy that terminates TLS: add `--behind-proxy` when it is there. \
                 Without one, the desk can only be tried on its own machine, at `http://localhost:PORT`",
            ));
        }
        let default = if is_clear { ":80" } else { ":443" };
        let host = authority.as_str().to_ascii_lowercase();
        let host = host.strip_suffix(default).unwrap_or(&host).to_owned();
        Ok(Self {
            origin: format!("{scheme}://{host}"),
            host,
            behind_proxy,
        })
    }

    /// The public address, without a path.
    pub fn origin(&self) -> &str {
        &self.origin
    }

    pub(crate) fn is_host(&self, host: &str) -> bool {
        host.eq_ignore_ascii_case(&self.host)
    }

    pub(crate) fn is_origin(&self, origin: &str) -> bool {
        origin == self.origin
    }

    /// Whether browsers reach it through TLS.
    pub(crate) fn is_secure(&self) -> bool {
        self.origin.starts_with("https://")
    }

    /// Who asks, as far as the network tells: the address that the proxy saw, which it appends to those it was told; else the connection's.
    pub(crate) fn address(&self, headers: &HeaderMap, peer: Option<Peer>) -> Option<IpAddr> {
        let peer = peer.map(|Peer(address)| address.ip());
        if !self.behind_proxy {
            return peer;
        }
        let told = headers.get_all(FORWARDED_FOR).into_iter().next_back();
        let last = told
            .and_then(|value| value.to_str().ok())
            .and_then(|value| value.rsplit(',').next())
            .and_then(|value| as_told(value.trim()));
        last.or(peer)
    }
}

/// An address as proxies write it: by itself, in brackets, or with the port.
fn as_told(text: &str) -> Option<IpAddr> {
    let with_port = || Some(text.parse::<SocketAddr>().ok()?.ip());
    let bare = text.trim_start_matches('[').trim_end_matches(']');
    bare.parse().ok().or_else(with_port)
}

/// An address as a household has it: of an IPv6 address the first 64 bits, which one subscriber holds whole.
pub(super) fn household(address: Option<IpAddr>) -> String {
    match address {
        None => "unknown".to_owned(),
        Some(IpAddr::V4(address)) => address.to_string(),
        Some(IpAddr::V6(address)) => {
            let network = u128::from(address) & !u128::from(u64::MAX);
            let own = || format!("{}/64", Ipv6Addr::from(network));
            let mapped = address.to_ipv4_mapped();
            mapped.map_or_else(own, |mapped| mapped.to_string())
        }
    }
}

#[cfg(test)]
mod tests {
    use std::net::{IpAddr, SocketAddr};

    use axum::http::HeaderMap;

    use super::{Front, Peer, household};

    fn front(origin: &str, listen: &str, behind_proxy: bool) -> Result<Front, String> {
        Front::at(origin, listen.parse().unwrap(), behind_proxy)
            .map_err(|trouble| trouble.to_string())
    }

    #[test]
    fn nothing_goes_over_a_network_in_clear() {
        assert!(front("https://desk.example.org", "0.0.0.0:8452", true).is_ok());
        assert!(front("http://localhost:8452", "127.0.0.1:8452", false).is_ok());
        for (origin, listen, behind_proxy) in [
            ("http://desk.example.org", "0.0.0.0:8452", false),
            ("http://desk.example.org", "127.0.0.1:8452", true),
            ("http://localhost:8452", "0.0.0.0:8452", false),
            ("http://127.0.0.1.example.org", "127.0.0.1:8452", false),
        ] {
            let refused = front(origin, listen, behind_proxy).unwrap_err();
            assert!(refused.contains("in clear"), "{origin}: {refused}");
        }
        let refused = front("https://desk.example.org", "0.0.0.0:8452", false).unwrap_err();
        assert!(refused.contains("--behind-proxy"), "{refused}");
        assert!(front("http://localhost:8452", "127.0.0.1:8452", true).is_err());
    }

    #[test]
    fn an_address_is_one_that_a_browser_shows() {
        let named = front("https://Desk.Example.org:443/", "127.0.0.1:1", true).unwrap();
        assert_eq!(named.origin(), "https://desk.example.org");
        assert!(named.is_host("desk.example.org") && !named.is_host("desk.example.org:443"));
        for origin in [
            "",
            "desk.example.org",
            "ftp://desk.example.org",
            "https://desk.example.org/a",
            "https://kim@desk.example.org",
        ] {
            assert!(front(origin, "127.0.0.1:1", true).is_err(), "{origin}");
        }
    }

    #[test]
    fn only_a_proxy_that_is_there_is_believed() {
        let peer: SocketAddr = "10.0.0.1:4000".parse().unwrap();
        let mut headers = HeaderMap::new();
        headers.append("x-forwarded-for", "192.0.2.1".parse().unwrap());
        headers.append(
            "x-forwarded-for",
            "192.0.2.2, 198.51.100.7".parse().unwrap(),
        );
        let ip = |text: &str| Some(text.parse::<IpAddr>().unwrap());
        let proxied = front("https://desk.example.org", "0.0.0.0:1", true).unwrap();
        assert_eq!(
            proxied.address(&headers, Some(Peer(peer))),
            ip("198.51.100.7")
        );
        assert_eq!(
            proxied.address(&HeaderMap::new(), Some(Peer(peer))),
            ip("10.0.0.1")
        );
        // However the proxy writes it: or all who come through it would share its own.
        for (told, address) in [
            ("198.51.100.7:4711", "198.51.100.7"),
            ("[2001:db8::7]", "2001:db8::7"),
            ("192.0.2.9, [2001:db8::7]:443", "2001:db8::7"),
            ("unknown", "10.0.0.1"),
        ] {
            let mut headers = HeaderMap::new();
            headers.insert("x-forwarded-for", told.parse().unwrap());
            assert_eq!(proxied.address(&headers, Some(Peer(peer))), ip(address));
        }
        let own = front("http://localhost:1", "127.0.0.1:1", false).unwrap();
        assert_eq!(own.address(&headers, Some(Peer(peer))), ip("10.0.0.1"));
    }

    #[test]
    fn a_household_has_one_address() {
        assert_eq!(
            household("2001:db8:1:2:3::4".parse().ok()),
            "2001:db8:1:2::/64"
        );
        assert_eq!(household("::ffff:192.0.2.1".parse().ok()), "192.0.2.1");
        assert_eq!(household(None), "unknown");
    }
}
