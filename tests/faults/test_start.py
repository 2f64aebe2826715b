"""Starts that cannot go well: each says in plain words what is wrong and what to do, and touches nothing."""

import socket
import urllib.request
from pathlib import Path

import pytest

from support.desk import Desk, command, refused


def test_port_taken(tmp_path: Path):
    """The message names the port and the option that picks another one."""
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        refused(command("desk", "--data", tmp_path / "data", "--port", port), 1, str(port), "--port")
    assert not (tmp_path / "data").exists()


def test_second_process_on_the_same_folder(desk: Desk):
    """The second one is refused by the folder's name; the first one goes on; a killed one leaves no lock behind."""
    refused(command("desk", "--data", desk.folder, "--port", "0"), 1, str(desk.folder), "already")
    with urllib.request.urlopen(desk.at("/screen"), timeout=10) as answer:
        assert answer.status == 200
    desk.kill()
    desk.start()


def test_only_this_machine_is_served(desk: Desk):
    """The desk listens on 127.0.0.1 and nowhere else (Linux's own list of listening sockets)."""
    rows = [line.split() for file in ("tcp", "tcp6") for line in Path(f"/proc/net/{file}").read_text().splitlines()[1:]]
    # proc(5): local address in hex, in the machine's byte order; state 0A listens.
    listening = [r[1].split(":")[0] for r in rows if r[3] == "0A" and int(r[1].split(":")[1], 16) == desk.port]
    assert listening == ["0100007F"]


def test_data_is_a_file(tmp_path: Path):
    """`--data` wants a folder; a file in its place stays as it was."""
    file = tmp_path / "notes.txt"
    file.write_text("mine")
    refused(command("desk", "--data", file, "--port", "0"), 1, str(file), "folder")
    assert file.read_text() == "mine"


@pytest.mark.parametrize("word", ["dekc", "--dta", "rescue-me"])
def test_unknown_command(word: str):
    """What is not a command or an option is named, and --help is."""
    refused(command(word), 2, word, "--help")


@pytest.mark.parametrize("port", ["70000", "-1", "http", ""])
def test_port_that_is_none(tmp_path: Path, port: str):
    """A port is a number from 0 to 65535."""
    refused(command("desk", "--data", tmp_path / "data", "--port", port), 2, "--port")
    assert not (tmp_path / "data").exists()


@pytest.mark.parametrize(
    ("conductors", "word"),
    [("", "two"), ("L1", "two"), ("L1,L1,N", "L1"), ("L1,blue", "blue"), ("N=hot,PE", "hot"), ("L1,,;", ";")],
)
def test_plan_of_bad_conductors(conductors: str, word: str):
    """One sentence that names the mistake, and exit code 2."""
    done = command("plan", "--conductors", conductors, "--json")
    refused(done, 2, word)
    assert len(done.err.strip().splitlines()) == 1, done.err
