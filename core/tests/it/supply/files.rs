//! Networks in files: what goes out comes in again, and every fault has its place. Through the command: `tests/outside/test_bad_files.py`.

use proptest::prelude::*;

use stillbar_core::supply::files::{FileError, from_csv, from_json, to_csv, to_json};
use stillbar_core::supply::{Conductors, Link, LinkKind, Network, Node, NodeKind, Position, SourceSort, check};
use stillbar_core::text;

/// The issue's own file.
const ISSUE: &str = r#"{"nodes":[{"id":"grid","kind":"source"},{"id":"B1","kind":"board"},{"id":"B3","kind":"board"},{"id":"C1","kind":"load","stops":"lighting 2"}],
"links":[{"id":"Q2","from":"grid","to":"B1","kind":"switch","lockable":true},{"id":"Q7","from":"B1","to":"B3","kind":"switch","lockable":true,"normally":"closed"},{"id":"w1","from":"B3","to":"C1","kind":"cable"}]}"#;

#[test]
fn the_issues_own_file() {
    let read = from_json(ISSUE).unwrap();
    assert!(read.remarks.is_empty());
    let q7 = read.network.link("Q7").unwrap();
    assert_eq!((q7.lockable, q7.normally, q7.kind), (true, Position::Closed, LinkKind::Switch));
    assert!(!read.network.link("w1").unwrap().lockable);
    assert_eq!(read.network.node("C1").unwrap().stops, "lighting 2");
    assert!(check(&read.network, &["B3"], &["Q7"]).unwrap().cut);
}

fn texts() -> impl Strategy<Value = String> {
    // Whatever people write, with what CSV and JSON are in trouble with; no control characters, no white space at the ends.
    "[ -~äß€→\"';|]{0,20}".prop_map(|text| text.trim().to_owned())
}

fn conductors() -> impl Strategy<Value = Option<Conductors>> {
    prop_oneof![
        Just(None),
        (1u8..=8).prop_map(|n| Some(Conductors::Count(n))),
        Just(Some(Conductors::Names(["L1", "L2", "N"].map(String::from).to_vec()))),
    ]
}

prop_compose! {
    fn node(id: usize)(
        kind in prop::sample::select(NodeKind::ALL.to_vec()),
        sort in prop::sample::select(SourceSort::ALL.to_vec()),
        label in texts(), place in texts(), stops in texts(), untraced in texts(),
        tell in prop::collection::vec("[A-Za-z ]{1,9}x", 0..3),
        circuit in prop::option::of(any::<bool>()),
    ) -> Node {
        let sort = if matches!(kind, NodeKind::Source | NodeKind::Unknown) { sort } else { SourceSort::Unsaid };
        let tell = tell.iter().map(|t| t.trim().to_owned()).collect();
        Node { id: format!("N \"{id};"), kind, sort, label, place, stops, tell, circuit, untraced }
    }
}

prop_compose! {
    fn link(id: usize)(
        kind in prop::sample::select(LinkKind::ALL.to_vec()),
        ends in (0usize..5, 0usize..4),
        label in texts(), place in texts(),
        lockable: bool, open: bool,
        poles in conductors(), conductors in conductors(),
    ) -> Link {
        let (a, b) = (ends.0, if ends.1 >= ends.0 { ends.1 + 1 } else { ends.1 });
        let kind = if kind == LinkKind::Inlet { LinkKind::Tie } else { kind };
        let normally = if open { Position::Open } else { Position::Closed };
        let name = |i: usize| format!("N \"{i};");
        Link {
            id: format!("L{id}"), from: name(a), to: name(b), kind, label, place,
            lockable: lockable && (kind.parts() || kind == LinkKind::Unknown), normally, poles, conductors,
        }
    }
}

fn networks() -> impl Strategy<Value = Network> {
    let nodes = [0, 1, 2, 3, 4].map(node);
    let links = [0, 1, 2, 3, 4, 5].map(link);
    (nodes, links).prop_map(|(nodes, links)| Network::new(nodes.into(), links.into()).unwrap())
}

proptest! {
    /// JSON and CSV give the same network back, field by field.
    #[test]
    fn out_and_in_again(network in networks()) {
        prop_assert_eq!(&from_json(&to_json(&network)).unwrap().network, &network);
        let (nodes, links) = to_csv(&network);
        prop_assert_eq!(&from_csv(&nodes, &links).unwrap().network, &network);
    }

    /// No text makes a reader panic.
    #[test]
    fn any_text(text in "\\PC{0,200}", links in "[a-z,;\"\n]{0,80}") {
        let _ = from_json(&text);
        let _ = from_csv(&text, &links);
        let _ = from_csv("id,kind\nB1,board\n", &links);
    }

    /// Nor does a file that ends too early; no shorter file is taken for a network of pandapower.
    #[test]
    fn cut_off_anywhere(end in 0usize..ISSUE.len()) {
        prop_assert!(from_json(&ISSUE[..end]).is_err());
    }
}

fn csv(nodes: &str, links: &str) -> String {
    let FileError { second, place, why } = from_csv(nodes, links).unwrap_err();
    let (place, why) = (text::file_place(&place), text::file_fault(&why));
    format!("{}|{place}|{why}", if second { "links" } else { "nodes" })
}

/// Every fault has its line, and the file that it is in.
#[test]
fn csv_faults_have_their_line() {
    const NODES: &str = "id,kind\ngrid,source\nB3,board\n";
    const LINKS: &str = "id,from,to,kind,lockable\nQ1,grid,B3,switch,yes\n";
    assert!(from_csv(NODES, LINKS).is_ok());
    let said = csv("id,kind\ngrid,source\n\nB3,board\nB3,load\n", LINKS);
    assert_eq!(said, "nodes|line 5, id|\"B3\" is the id of line 4 too; give each its own id.");
    assert_eq!(
        csv("id,kind\ngrid\n", LINKS),
        "nodes|line 2|it has 1 cells and the first line has 2; make them as many."
    );
    assert!(
        csv("id,colour\n", LINKS)
            .starts_with("nodes|line 1|the field \"colour\" is not known here; known are id, kind,")
    );
    assert!(csv("id\ngrid\n", LINKS).starts_with("nodes|line 1|the field \"kind\" is missing; say source"));
    assert!(csv("id,kind\n,board\n", LINKS).starts_with("nodes|line 2|the field \"id\" is missing"));
    assert!(csv("id,kind,kind\n", LINKS).starts_with("nodes|line 1|the field \"kind\" is there twice"));
    assert!(csv("", LINKS).starts_with("nodes||it is empty; its first line names the fields: id,kind,"));
    assert!(
        csv(NODES, "id,from,to,kind\nQ1,grid,B3,\"switch\n").starts_with("links||a quotation mark in it is not closed")
    );
    assert_eq!(
        csv(NODES, "id,from,to,kind,lockable\nQ1,grid,B3,switch,maybe\n"),
        "links|line 2, lockable|\"maybe\" is not one of true, false, yes, no, 1, 0."
    );
    assert_eq!(
        csv(NODES, "id,from,to,kind,normally\nQ1,grid,B3,switch,shut\n"),
        "links|line 2, normally|\"shut\" is not one of open, closed."
    );
    assert_eq!(
        csv(NODES, "id,from,to,kind\nQ1,grid,grid,switch\n"),
        "links|line 2, to|\"grid\" is the other end too; a link joins two different nodes."
    );
}

/// As spreadsheets write them: semicolons, CRLF, a byte order mark, TRUE, empty lines and cells at the end, text over lines refused.
#[test]
fn csv_as_spreadsheets_write_it() {
    let nodes =
        "\u{feff}id;kind;stops;tell\r\ngrid;source;;\r\nC1;load;\"lift; north\";\"Porter | Fire brigade\"\r\n;;;\r\n";
    let links = "id;from;to;kind;lockable;poles;;\r\n";
    assert!(from_csv(nodes, links).is_err(), "an empty name of a field is none");
    let links =
        "id;from;to;kind;lockable;normally;poles\r\nQ1;grid;C1;switch;TRUE;open;L1 | L2\r\nQ2;grid;C1;tie;no;;4\r\n";
    let network = from_csv(nodes, links).unwrap().network;
    assert_eq!(network.node("C1").unwrap().stops, "lift; north");
    assert_eq!(network.node("C1").unwrap().tell, ["Porter", "Fire brigade"]);
    let q1 = network.link("Q1").unwrap();
    assert_eq!(q1.poles, Some(Conductors::Names(vec!["L1".into(), "L2".into()])));
    assert_eq!((q1.lockable, q1.normally), (true, Position::Open));
    assert_eq!(network.link("Q2").unwrap().poles, Some(Conductors::Count(4)));
    let said = csv("id,kind,label\nB1,board,\"two\nlines\"\n", "id,from,to,kind\n");
    assert!(said.starts_with("nodes|line 2, label|a text needs characters that can be seen"), "{said}");
}

/// A word for a kind that is not known here is kept as unknown, and said.
#[test]
fn a_kind_that_is_not_known() {
    let read = from_json(&ISSUE.replace("\"board\"},{\"id\":\"C1\"", "\"bord\"},{\"id\":\"C1\"")).unwrap();
    assert_eq!(read.network.node("B3").unwrap().kind, NodeKind::Unknown);
    assert_eq!(read.remarks.len(), 1);
    assert!(
        text::remark(&read.remarks[0])
            .starts_with("nodes[2].kind: \"bord\" is no kind known here (source, board, load, junction, unknown)")
    );
    assert!(!check(&read.network, &["B3"], &["Q7"]).unwrap().cut);
}
