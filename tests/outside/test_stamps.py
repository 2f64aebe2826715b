"""Time stamps: the office asks an authority made of OpenSSL (`openssl ts`), and OpenSSL verifies what the office keeps; the Merkle tree is held against
pymerkle. Sources: RFC 3161, RFC 5652, RFC 9162 section 2.1."""

import base64
import hashlib
import http.server
import json
import subprocess
import threading
from pathlib import Path

import pytest
from pymerkle import InmemoryTree, verify_inclusion

from support.desk import command, refused
from support.office import Admin, Field, Office

CONFIG = """
[tsa]
default_tsa = own
[own]
serial = {folder}/serial
signer_digest = sha256
default_policy = 1.2.3.4.1
digests = sha256, sha512
ess_cert_id_alg = sha256
{more}
[ca]
basicConstraints = critical,CA:TRUE
keyUsage = critical,keyCertSign
[stamper]
basicConstraints = CA:FALSE
keyUsage = critical,digitalSignature
extendedKeyUsage = critical,timeStamping
"""

KEYS = {
    "rsa": ["-newkey", "rsa:2048"],
    "p256": ["-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256"],
    "p384": ["-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-384"],
}


def openssl(*words: str | Path, given: bytes = b"") -> bytes:
    """What openssl answers; what it complains of fails the test."""
    done = subprocess.run(["openssl", *map(str, words)], input=given, capture_output=True, check=False)
    assert done.returncode == 0, done.stderr.decode()
    return done.stdout


class Authority:
    """A time-stamp authority over HTTP. `answer` may change what it says."""

    def __init__(self, folder: Path, key: str = "rsa", more: str = ""):
        folder.mkdir()
        self.folder = folder
        (folder / "serial").write_text("01\n")
        config = folder / "tsa.cnf"
        config.write_text(CONFIG.format(folder=folder, more=more))
        made = ["-config", config, "-nodes", "-x509", "-days", "30"]
        (folder / "req.cnf").write_text("[req]\ndistinguished_name=dn\n[dn]\n" + config.read_text())
        made[1] = folder / "req.cnf"
        openssl("req", *made, *KEYS["rsa"], "-subj", "/CN=Test Root", "-extensions", "ca", "-keyout", folder / "ca.key", "-out", folder / "ca.pem")
        openssl(
            "req", *made, *KEYS[key], "-subj", "/O=Test/CN=Test Stamper", "-extensions", "stamper", "-keyout", folder / "tsa.key",
            "-CA", folder / "ca.pem", "-CAkey", folder / "ca.key", "-out", folder / "tsa.pem",
        )  # fmt: skip
        self.queries: list[bytes] = []
        self.answer = self.stamp
        outer = self

        class Handler(http.server.BaseHTTPRequestHandler):
            def do_POST(self):
                assert self.headers["content-type"] == "application/timestamp-query"
                query = self.rfile.read(int(self.headers["content-length"]))
                outer.queries.append(query)
                said = outer.answer(query)
                self.send_response(200 if said else 503)
                self.send_header("content-type", "application/timestamp-reply")
                self.send_header("content-length", str(len(said)))
                self.end_headers()
                self.wfile.write(said)

            def log_message(self, *_):
                pass

        self._server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Handler)
        self.url = f"http://127.0.0.1:{self._server.server_address[1]}/"
        threading.Thread(target=self._server.serve_forever, daemon=True).start()

    def stamp(self, query: bytes) -> bytes:
        """A time stamp by OpenSSL."""
        (self.folder / "query").write_bytes(query)
        return openssl(
            "ts", "-reply", "-config", self.folder / "tsa.cnf", "-queryfile", self.folder / "query", "-signer", self.folder / "tsa.pem",
            "-inkey", self.folder / "tsa.key", "-chain", self.folder / "ca.pem",
        )  # fmt: skip

    def close(self) -> None:
        """No more answers."""
        self._server.shutdown()
        self._server.server_close()


@pytest.fixture(params=list(KEYS))
def authority(request: pytest.FixtureRequest, tmp_path: Path):
    """One for each kind of key."""
    authority = Authority(tmp_path / "authority", request.param)
    yield authority
    authority.close()


def works(folder: Path, jobs: int = 1) -> tuple[Office, Admin, Field, list[tuple[bytes, bytes]]]:
    """An office with jobs of one phone; site and job of each."""
    office = Office(folder).start()
    admin = Admin(office)
    field = Field(1)
    field.enrol(office.url, admin.code("Phone of Mara"))
    made = []
    for n in range(jobs):
        site, job, point = field.begin(f"Site {n}")
        field.lock(site, job, point, f"ML {n}")
        made.append((site, job))
    field.push()
    return office, admin, field, made


def stamps(admin: Admin, site: bytes, job: bytes) -> list[dict]:
    """The time stamps of a job, as the office gives them out."""
    return json.loads(admin.get(f"/sites/{site.hex()}/jobs/{job.hex()}/stamps.json"))


def stamp(office: Office, authority: Authority):
    """`stillbar office stamp`."""
    return command("office", "stamp", "--data", office.folder, "--authority", authority.url)


def by_openssl(authority: Authority, proof: dict, scratch: Path) -> None:
    """OpenSSL finds the token good for the root, and for no other."""
    (scratch / "token").write_bytes(base64.b64decode(proof["token"]))
    words = ["ts", "-verify", "-token_in", "-in", scratch / "token", "-CAfile", authority.folder / "ca.pem", "-digest"]
    openssl(*words, proof["root"])
    other = hashlib.sha256(b"another").hexdigest()
    assert subprocess.run(["openssl", *map(str, words), other], capture_output=True, check=False).returncode != 0


def test_openssl_verifies_what_the_office_keeps(authority: Authority, tmp_path: Path):
    """Every job's entries lead to a root that OpenSSL says was stamped; the page tells when; nothing is stamped twice."""
    office, admin, field, made = works(tmp_path / "office", jobs=5)
    try:
        assert "No authority has stamped" in admin.get(f"/sites/{made[0][0].hex()}/jobs/{made[0][1].hex()}")
        done = stamp(office, authority)
        assert done.code == 0 and "is kept" in done.out, done
        entries = {hashlib.sha256(body).hexdigest() for body, _ in field.chain}
        leaves = {}
        for site, job in made:
            (proof,) = stamps(admin, site, job)
            assert proof["covers"] == sorted(proof["covers"]) and set(proof["covers"]) <= entries
            assert job.hex() in proof["covers"] and proof["size"] == 5
            by_openssl(authority, proof, tmp_path)
            covered = hashlib.sha256(b"".join(map(bytes.fromhex, proof["covers"]))).digest()
            leaves[proof["index"]] = (job + covered, proof)
            page = admin.get(f"/sites/{site.hex()}/jobs/{job.hex()}")
            assert "Test Stamper" in page and f"{len(proof['covers'])} entries were there" in page
        # The same tree by another library.
        tree = InmemoryTree(algorithm="sha256")
        for at in range(5):
            tree.append_entry(leaves[at][0])
        assert {proof["root"] for _, proof in leaves.values()} == {tree.get_root().hex()}
        for at, (leaf, proof) in leaves.items():
            theirs = tree.prove_inclusion(at + 1)
            assert [h.hex() for h in theirs.path[1:]] == proof["path"]
            verify_inclusion(tree.get_leaf(at + 1), tree.get_root(), theirs)
        again = stamp(office, authority)
        assert again.code == 0 and "nothing new" in again.out
        assert len(authority.queries) == 1
    finally:
        office.kill()


def test_what_is_no_stamp_is_not_kept(tmp_path: Path):
    """Refusals, garbage, an answer to another question and none at all: told in a sentence, and asked again with the same root."""
    authority = Authority(tmp_path / "authority", more="clock_precision_digits = 3")
    office, admin, _, made = works(tmp_path / "office")
    try:
        old = authority.stamp(
            openssl("ts", "-query", "-digest", hashlib.sha256(b"old").hexdigest(), "-sha256", "-cert", "-no_nonce")
        )
        ways = {
            "did not answer": b"",
            "no time stamp": b"garbage",
            "refused": bytes.fromhex("30053003020102"),
            "something else": old,
            "the answer is too long": b"\x30" * 70_000,
        }
        for word, said in ways.items():
            authority.answer = lambda _, said=said: said
            refused(stamp(office, authority), 1, word)
        # The right root, and another's number.
        authority.answer = lambda query: authority.stamp(
            openssl("ts", "-query", "-digest", _digest(query), "-sha256", "-cert")
        )
        refused(stamp(office, authority), 1, "another question")
        # Whole, and one bit of the signature turned.
        def turned(query: bytes) -> bytes:
            said = bytearray(authority.stamp(query))
            said[-5] ^= 1
            return bytes(said)

        authority.answer = turned
        refused(stamp(office, authority), 1)
        assert stamps(admin, *made[0]) == []
        authority.answer = authority.stamp
        assert stamp(office, authority).code == 0
        assert len({_digest(q) for q in authority.queries}) == 1, "the root is the same at every try"
        (proof,) = stamps(admin, *made[0])
        by_openssl(authority, proof, tmp_path)
    finally:
        office.kill()
        authority.close()


def _digest(query: bytes) -> str:
    """The hash in a query: the only string of 32 bytes in it."""
    at = query.index(b"\x04\x20") + 2
    return query[at : at + 32].hex()


def test_an_office_takes_a_stamp_by_itself(tmp_path: Path):
    """With an authority named, a running office has what is there stamped without a hand on it."""
    authority = Authority(tmp_path / "authority")
    office, admin, _, made = works(tmp_path / "office")
    office.kill()
    office = Office(tmp_path / "office", "--authority", authority.url).start()
    try:
        admin.office = office
        for _ in range(600):
            if found := stamps(admin, *made[0]):
                break
        by_openssl(authority, found[0], tmp_path)
    finally:
        office.kill()
        authority.close()


def test_a_record_shows_when_its_entries_were_there(tmp_path: Path):
    """The office's record carries its stamps; `stillbar verify` believes them only with a certificate that leads to them, and finds what was changed."""
    authority = Authority(tmp_path / "authority", "p256")
    stranger = Authority(tmp_path / "stranger")
    office, admin, _, made = works(tmp_path / "office", jobs=3)
    try:
        (site, job), *_ = made
        assert stamp(office, authority).code == 0
        page = f"/sites/{site.hex()}/jobs/{job.hex()}"
        for kind in ("pdf", "json"):
            record = tmp_path / f"record.{kind}"
            record.write_bytes(admin.fetch(f"{page}/record/{kind}"))
            for ca, word in [(authority, "Shown:"), (stranger, "Not shown:"), (None, "Not shown:")]:
                more = ["--authority", ca.folder / "ca.pem"] if ca else []
                done = command("verify", record, *more)
                assert done.code == 0, done
                shown, not_shown = done.out.split("Not shown:")
                assert ("Test Stamper" in shown) == (word == "Shown:"), done.out
                assert "Test Stamper" in shown + not_shown
        file = json.loads((tmp_path / "record.json").read_text())

        def verdict(**changed) -> dict:
            mutant = tmp_path / "mutant.json"
            proof = file["anchors"][0] | changed
            mutant.write_text(json.dumps(file | {"anchors": [proof]}, sort_keys=True, separators=(",", ":"), ensure_ascii=False))
            done = command("verify", mutant, "--json", "--authority", authority.folder / "ca.pem")
            said = json.loads(done.out)
            assert done.code == (0 if said["holds"] else 1)
            return said

        proof = file["anchors"][0]
        assert verdict()["holds"], "the file is spelled as records are"
        token = bytearray(base64.b64decode(proof["token"]))
        token[-5] ^= 1
        for changed in (
            {"covers": proof["covers"][1:]},
            {"covers": proof["covers"][::-1]},
            {"covers": sorted([*proof["covers"], "00" * 32])},
            {"index": proof["index"] ^ 1},
            {"size": proof["size"] + 4},
            {"path": proof["path"][1:]},
            {"path": proof["path"][::-1]},
            {"root": "00" * 32},
            {"token": base64.b64encode(token).decode()},
            {"token": ""},
            {"other": 1},
        ):
            said = verdict(**changed)
            assert not said["holds"] and said["failures"][0]["what"] == "time stamp 1", (changed, said)

        # What a phone made goes together with the office's stamps.
        (tmp_path / "stamps.json").write_text(json.dumps(stamps(admin, site, job)))
        bare = tmp_path / "bare.json"
        bare.write_text(json.dumps(file | {"anchors": []}, sort_keys=True, separators=(",", ":"), ensure_ascii=False))
        assert "nobody outside" in command("verify", bare).out
        done = command("record", bare, "-o", tmp_path / "together.pdf", "--stamps", tmp_path / "stamps.json")
        assert done.code == 0, done
        together = command("verify", tmp_path / "together.pdf", "--authority", authority.folder / "ca.pem")
        assert together.code == 0 and "whom you trust" in together.out, together
        (tmp_path / "wrong.json").write_text("[{}]")
        refused(command("record", bare, "-o", tmp_path / "never.pdf", "--stamps", tmp_path / "wrong.json"), 2, "no time stamps")
        refused(command("verify", bare, "--authority", tmp_path / "wrong.json"), 2, "no certificate")
    finally:
        office.kill()
        for one in (authority, stranger):
            one.close()
