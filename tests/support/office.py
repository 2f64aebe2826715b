"""The office as a process, and a phone in Python that speaks docs/exchange.md with nothing of the app: OpenSSL's Ed25519, and CBOR
written from RFC 8949."""

import base64
import hashlib
import http.client
import json
import queue
import re
import signal
import subprocess
import threading
from pathlib import Path
from urllib.parse import urlencode, urlsplit

from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from support import cbor
from support.desk import PATIENCE_S, _spawn

ADDRESS = re.compile(r"^The office is at (https?://127\.0\.0\.1:(\d+))/$")
PASSWORD = re.compile(r"one-time password (\S+)$")
# 2026-11-25 10:00 UTC, so that a run can be told again; the office's clock is later, which is never refused.
THEN_MS = 1_795_600_800_000


class Office:
    """One process of an office. `start`, `kill` and `stop` may follow each other in any order."""

    def __init__(self, folder: Path, *arguments: str):
        self.folder = folder
        self.url = ""
        self.port = 0
        self.password = ""
        self._arguments = list(arguments)
        self._process: subprocess.Popen | None = None
        self.said: list[str] = []

    def start(self, port: int = 0) -> "Office":
        """Starts it and waits for its address; on the first start it says the admin's one-time password before."""
        words = ["office", "--data", str(self.folder), "--listen", f"127.0.0.1:{port or self.port}", *self._arguments]
        self._process = _spawn(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        lines: queue.Queue[str | None] = queue.Queue()
        for stream, into in ((self._process.stdout, lines), (self._process.stderr, None)):
            threading.Thread(target=self._drain, args=(stream, into), daemon=True).start()
        while True:
            try:
                line = lines.get(timeout=PATIENCE_S)
            except queue.Empty:
                line = None
            if line is None:
                self.kill()
                raise AssertionError("the office did not say its address:\n" + "".join(self.said))
            if found := PASSWORD.search(line.strip()):
                self.password = found[1]
            if found := ADDRESS.match(line.strip()):
                self.url, self.port = found[1], int(found[2])
                return self

    def kill(self) -> None:
        """kill -9."""
        if self._process is not None:
            self._process.kill()
            self._process.wait()

    def stop(self) -> None:
        """Ctrl-C; it must end."""
        self._process.send_signal(signal.SIGINT)
        assert self._process.wait(timeout=PATIENCE_S) == 0, "".join(self.said)

    def _drain(self, stream, into: queue.Queue | None) -> None:
        with stream:
            for line in stream:
                self.said.append(line)
                if into is not None:
                    into.put(line)
        if into is not None:
            into.put(None)


class Broken(Exception):
    """No whole answer came: the connection was cut, or nobody is there."""


def call(url: str, method: str, path: str, headers: dict | None = None, body: bytes | None = None):
    """One call over a connection of its own: status, headers in small letters, body."""
    at = urlsplit(url)
    connection = http.client.HTTPConnection(at.hostname, at.port, timeout=PATIENCE_S)
    try:
        connection.request(method, path, body=body, headers=headers or {})
        answer = connection.getresponse()
        return answer.status, {k.lower(): v for k, v in answer.getheaders()}, answer.read()
    except (OSError, http.client.HTTPException) as why:
        raise Broken(str(why)) from why
    finally:
        connection.close()


def _whole(said: bytes) -> dict:
    """An answer that was cut is no answer, whatever its first line says."""
    try:
        return json.loads(said)
    except ValueError as why:
        raise Broken("the answer is not whole") from why


class Admin:
    """The admin, signed in, with a password of their own."""

    def __init__(self, office: Office):
        self.office = office
        self.cookie = self._sign_in(office.password)
        csrf = self._csrf("/password")
        fields = {"csrf": csrf, "old": office.password, "new": "four words in a row", "again": "four words in a row"}
        status, _, text = self.post("/password", fields)
        assert status == 303, text.decode()

    def _sign_in(self, password: str) -> str:
        status, headers, text = self._form("/sign-in", {"login": "admin", "password": password})
        assert status == 303, text.decode()
        return headers["set-cookie"].split(";")[0]

    def _csrf(self, path: str) -> str:
        return re.search(r'name="csrf" value="([^"]+)"', self.get(path))[1]

    def _form(self, path: str, fields: dict):
        headers = {"content-type": "application/x-www-form-urlencoded"}
        if hasattr(self, "cookie"):
            headers["cookie"] = self.cookie
        return call(self.office.url, "POST", path, headers, urlencode(fields).encode())

    def get(self, path: str) -> str:
        """A page as text."""
        return self.fetch(path).decode()

    def fetch(self, path: str) -> bytes:
        """A file."""
        status, _, body = call(self.office.url, "GET", path, {"cookie": self.cookie})
        assert status == 200, (status, body.decode())
        return body

    def post(self, path: str, fields: dict):
        """Sends a form of that page."""
        return self._form(path, fields)

    def code(self, label: str, *sites: str) -> str:
        """A one-time code for a phone; the text of its QR."""
        fields = [("csrf", self._csrf("/phones")), ("label", label), *(("site", s) for s in sites)]
        headers = {"content-type": "application/x-www-form-urlencoded", "cookie": self.cookie}
        status, _, body = call(self.office.url, "POST", "/phones", headers, urlencode(fields).encode())
        assert status == 200, body.decode()
        return re.search(r"<code>(stillbar-enrol:1:[^<]+)</code>", body.decode())[1]


class Field:
    """A phone: key, chain, and the calls. `url` may be that of a proxy that cuts."""

    def __init__(self, number: int):
        self.key = Ed25519PrivateKey.from_private_bytes(number.to_bytes(32, "big"))
        raw = serialization.Encoding.Raw, serialization.PublicFormat.Raw
        self.device = self.key.public_key().public_bytes(*raw)
        self.chain: list[tuple[bytes, bytes]] = []
        self._of_job: dict[bytes, bytes] = {}
        self.url = self.token = ""
        self.by: bytes | None = None
        self._ms = THEN_MS

    def enrol(self, url: str, text: str) -> None:
        """With the text of a QR."""
        code = text.rsplit(":", 1)[1]
        sig = self.key.sign(b"stillbar-enrol-1:" + code.encode())
        ask = {"code": code, "device": self.device.hex(), "label": "", "sig": base64.b64encode(sig).decode()}
        self.url = url
        status, _, body = call(url, "POST", "/enrol", {"content-type": "application/json"}, json.dumps(ask).encode())
        assert status == 201, body.decode()
        self.token = json.loads(body)["token"]

    def write(self, fact: dict, site: bytes | None = None, job: bytes | None = None) -> bytes:
        """An entry at the end of the chain; its id."""
        self._ms += 1000
        prev = hashlib.sha256(self.chain[-1][0]).digest() if self.chain else bytes(32)
        body = {
            "device": self.device, "seq": len(self.chain) + 1, "clock": [self._ms, 0], "wall": self._ms, "zone": 0,
            "v": 1, "prev": prev, "site": site, "job": job, "by": self.by, "fact": fact,
        }  # fmt: skip
        if job in self._of_job:
            body["after"] = self._of_job[job]
        encoded = cbor.encode(body)
        self.chain.append((encoded, self.key.sign(encoded)))
        own = hashlib.sha256(encoded).digest()
        if "job-opened" in fact or job:
            self._of_job[job or own] = own
        return own

    def begin(self, site_name: str) -> tuple[bytes, bytes, bytes]:
        """A person, a site, a job and a point."""
        person = {"name": "Mara Lind", "qualification": "Electrician", "telephone": "555 0100", "corrects": None}
        self.by = self.write({"person-noted": person})
        site = self.write({"site-noted": {"name": site_name}})
        opened = {
            "title": "Replace a breaker", "place": "Plant room", "equipment": "DB1", "scope": "Breaker 4",
            "system": "three-phase-neutral", "earthing": "TN-S", "order": "least-dangerous-first",
            "nominal-millivolts": 230_000,
        }  # fmt: skip
        job = self.write({"job-opened": opened}, site)
        point = {"label": "Q4 feeder switch", "at": "Bay 4", "kind": "switch-disconnector", "lockable": True, "poles": ["L1", "L2", "L3"], "cuts": None}
        return site, job, self.write({"point-added": point}, site, job)

    def lock(self, site: bytes, job: bytes, point: bytes, label: str) -> bytes:
        """A lock of the person in hand."""
        fact = {"on": {"point": point}, "owner": self.by, "label": label, "key": "owner", "means": "padlock"}
        return self.write({"lock-fitted": fact}, site, job)

    def photo(self, site: bytes, job: bytes, point: bytes, content: bytes) -> str:
        """A photo of the point."""
        sha256 = hashlib.sha256(content).hexdigest()
        fact = {"sha256": sha256, "length": len(content), "media": "image/png", "of": point, "note": ""}
        self.write({"photo-taken": fact}, site, job)
        return sha256

    def ask(self, method: str, path: str, headers: dict | None = None, body: bytes | None = None):
        """A call with the token."""
        return call(self.url, method, path, {"authorization": f"Bearer {self.token}", **(headers or {})}, body)

    def push(self, first: int = 0, last: int | None = None) -> dict:
        """Sends a part of the chain."""
        wire = [{"body": base64.b64encode(b).decode(), "sig": base64.b64encode(s).decode()} for b, s in self.chain[first:last]]
        body = json.dumps({"entries": wire}).encode()
        status, _, said = self.ask("POST", "/entries", {"content-type": "application/json"}, body)
        if status != 200:
            raise Broken(f"{status}: {said.decode()}")
        return _whole(said)

    def pull(self, own: int = 0) -> list[bytes]:
        """The bodies of all that its sites have."""
        bodies, after = [], ""
        while True:
            status, _, said = self.ask("GET", f"/entries?own={own}&after={after}")
            if status != 200:
                raise Broken(f"{status}: {said.decode()}")
            page = _whole(said)
            bodies += [base64.b64decode(e["body"]) for e in page["entries"]]
            after = page["next"]
            if not page["more"]:
                return bodies

    def upload(self, sha256: str, content: bytes, piece: int = 1 << 30) -> None:
        """Sends an original from the byte where the office is."""
        encoded = [base64.b64encode(t.encode()).decode() for t in (sha256, "original")]
        said = {"tus-resumable": "1.0.0", "upload-length": str(len(content)), "upload-metadata": f"sha256 {encoded[0]},size {encoded[1]}"}
        status, headers, body = self.ask("POST", "/photos", said)
        if status not in (200, 201):
            raise Broken(f"{status}: {body.decode()}")
        at = int(headers["upload-offset"])
        place = headers.get("location")
        while place and at < len(content):
            more = {"tus-resumable": "1.0.0", "upload-offset": str(at), "content-type": "application/offset+octet-stream"}
            status, headers, body = self.ask("PATCH", place, more, content[at : at + piece])
            # 409: a call that was cut may still be keeping its last bytes; the answer says where to go on.
            if status not in (204, 409):
                raise Broken(f"{status}: {body.decode()}")
            at = int(headers["upload-offset"])
