//! Calls that bring no answer, over real sockets, and what is said of them.

use std::io::{Read, Write};
use std::net::{TcpListener, TcpStream};
use std::time::Duration;

use stillbar_core::sync::no_answer;
use ureq::Agent;

/// Far more than any of these takes on a busy machine.
const LONG: Duration = Duration::from_secs(60);

/// What is said of a call that is served like this, as often as it is tried.
fn said(limit: Duration, serve: fn(TcpStream)) -> String {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let url = format!("http://{}/", listener.local_addr().unwrap());
    std::thread::spawn(move || listener.incoming().flatten().for_each(serve));
    asked(limit, &url)
}

fn asked(limit: Duration, url: &str) -> String {
    let agent: Agent = Agent::config_builder().timeout_global(Some(limit)).build().into();
    let answer = agent.get(url).call().and_then(|mut heard| heard.body_mut().with_config().limit(4).read_to_vec());
    no_answer(&answer.unwrap_err())
}

fn answers(mut near: TcpStream, body: &str) {
    let _ = near.read(&mut [0; 4096]);
    write!(near, "HTTP/1.1 200 OK\r\ncontent-length: 9\r\n\r\n{body}").unwrap();
}

#[test]
fn nothing_of_the_machinery_is_said() {
    // Port 9 is for throwing away what comes (RFC 863), and nothing here does that.
    assert_eq!(asked(LONG, "http://127.0.0.1:9/"), "nothing answers at its address");
    assert_eq!(said(LONG, drop), "the connection broke off");
    assert_eq!(said(LONG, |near| answers(near, "hal")), "the connection broke off");
    assert_eq!(said(LONG, |near| answers(near, "more of it")), "the answer is too long");
    // Reads until the caller goes, and says nothing.
    let silent = |mut near: TcpStream| while matches!(near.read(&mut [0; 4096]), Ok(1..)) {};
    assert_eq!(said(Duration::from_millis(300), silent), "no answer in time");
}
