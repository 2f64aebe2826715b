//! Calls that bring no answer, over real sockets, and what is said of them.

use std::io::{Read, Write};
use std::net::{TcpListener, TcpStream};
use std::time::Duration;

use stillbar_core::sync::no_answer;
use ureq::Agent;

fn said(serve: fn(TcpStream)) -> String {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let url = format!("http://{}/", listener.local_addr().unwrap());
    std::thread::spawn(move || listener.incoming().take(2).for_each(|near| serve(near.unwrap())));
    asked(&url)
}

fn asked(url: &str) -> String {
    let agent: Agent = Agent::config_builder().timeout_global(Some(Duration::from_millis(500))).build().into();
    let answer = agent.get(url).call().and_then(|mut heard| heard.body_mut().with_config().limit(4).read_to_vec());
    no_answer(&answer.unwrap_err())
}

#[test]
fn nothing_of_the_machinery_is_said() {
    let gone = TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap();
    assert_eq!(asked(&format!("http://{gone}/")), "nothing answers at its address");
    assert_eq!(said(|near| drop(near)), "the connection broke off");
    assert_eq!(
        said(|mut near| {
            let _ = near.read(&mut [0; 4096]);
            near.write_all(b"HTTP/1.1 200 OK\r\ncontent-length: 9\r\n\r\nhal").unwrap();
        }),
        "the connection broke off"
    );
    assert_eq!(
        said(|near| {
            std::thread::sleep(Duration::from_secs(2));
            drop(near);
        }),
        "no answer in time"
    );
    assert_eq!(
        said(|mut near| {
            let _ = near.read(&mut [0; 4096]);
            near.write_all(b"HTTP/1.1 200 OK\r\ncontent-length: 9\r\n\r\nmore of it").unwrap();
        }),
        "the answer is too long"
    );
}
