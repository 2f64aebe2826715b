"""The office under cuts, kills and a database that goes away: afterwards every entry and every byte is there, once.

Over SQLite and over PostgreSQL. The phone is tests/support/office.py, which shares no code with the app.
"""

import contextlib
import datetime
import hashlib
import json
import re
import shutil
import sqlite3
import ssl
import threading
import urllib.error
import urllib.request
from pathlib import Path

import pytest

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import NameOID

from support.cut import Cutter
from support.desk import command, refused
from support.office import PATIENCE_S, Admin, Broken, Field, Office, call
from support.postgres import Postgres
from support.s3 import BUCKET, S3

# A picture by its first bytes (ISO/IEC 15948), long enough to be cut in many places.
PICTURE = b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 1200


@pytest.fixture(scope="module")
def postgres():
    """One server for this file."""
    server = Postgres().start()
    yield server
    server.remove()


@pytest.fixture(scope="module")
def store():
    """One store that speaks S3 for this file."""
    store = S3()
    yield store
    store.stop()


@pytest.fixture(params=["sqlite", "postgresql"])
def office(request: pytest.FixtureRequest, postgres: Postgres, tmp_path: Path):
    """An office over either database, running."""
    more = [] if request.param == "sqlite" else ["--database", postgres.database()]
    office = Office(tmp_path / "office", *more).start()
    yield office
    office.kill()


def begun(office: Office, number: int = 1, site: str = "Hill Laundry") -> tuple[Admin, Field, bytes]:
    """An admin, and a phone with a job, a lock and a photo, nothing of it sent."""
    admin = Admin(office)
    field = Field(number)
    field.enrol(office.url, admin.code("Phone of Mara"))
    place, job, point = field.begin(site)
    field.lock(place, job, point, "ML 7")
    field.photo(place, job, point, PICTURE)
    for n in range(40):
        told = {"who": f"Person {n}", "how": "Telephone", "about": "isolating"}
        field.write({"told": told}, place, job)
    return admin, field, place


def all_there(office: Office, admin: Admin, field: Field, place: bytes) -> None:
    """Another phone of the site gets the chain, entry by entry, once each, in its order, and the photo's bytes."""
    other = Field(2)
    other.enrol(office.url, admin.code("Phone of Ida", place.hex()))
    assert other.pull() == [body for body, _ in field.chain]
    sha256 = hashlib.sha256(PICTURE).hexdigest()
    status, _, content = other.ask("GET", f"/photos/{sha256}")
    assert (status, content) == (200, PICTURE)


def persist(deed, cutter: Cutter, step: int) -> int:
    """Does `deed` again and again over a connection that is cut a little later each time; how many cuts it took."""
    cuts = 0
    for limit in range(step, 10_000_000, step):
        cutter.there = limit
        try:
            deed()
            return cuts
        except Broken:
            cuts += 1
    raise AssertionError("it never came through")


def test_cut_at_every_thousandth_byte(office: Office):
    """Entries and a photo come through however the connection is cut, on the way there and on the way back."""
    admin, field, place = begun(office)
    cutter = Cutter(office.url)
    field.url = cutter.url
    assert persist(field.push, cutter, 1000) > 10
    cutter.there = None
    for cutter.back in range(1, 2000, 200):
        try:
            field.push()
        except Broken:
            pass
    cutter.back = None
    said = field.push()
    assert {a["answer"] for a in said["answers"]} == {"duplicate"}
    sha256 = hashlib.sha256(PICTURE).hexdigest()
    cuts = persist(lambda: field.upload(sha256, PICTURE), cutter, 20_000)
    assert cuts > 2
    cutter.close()
    field.url = office.url
    all_there(office, admin, field, place)


def test_killed_in_the_middle(office: Office):
    """kill -9 of the office while entries and photos come in; it starts again and nothing is lost or there twice."""
    admin, field, place = begun(office)
    sha256 = hashlib.sha256(PICTURE).hexdigest()
    for first in range(0, len(field.chain), 5):
        sent = threading.Event()

        def send(first: int = first) -> None:
            sent.set()
            try:
                field.push(first, first + 5)
                field.upload(sha256, PICTURE, 50_000)
            except Broken:
                pass

        sender = threading.Thread(target=send)
        sender.start()
        sent.wait()
        office.kill()
        sender.join()
        office.start()
        field.push(0, first + 5)
    field.upload(sha256, PICTURE)
    all_there(office, admin, field, place)


def test_the_database_goes_away(postgres: Postgres, tmp_path: Path):
    """PostgreSQL is killed and comes back: meanwhile the phone hears 503 and keeps what it has; afterwards all goes on by itself."""
    office = Office(tmp_path / "office", "--database", postgres.database()).start()
    try:
        admin, field, place = begun(office)
        field.push(0, 10)
        postgres.kill()
        with pytest.raises(Broken, match="503"):
            field.push()
        postgres.start()
        field.push()
        field.upload(hashlib.sha256(PICTURE).hexdigest(), PICTURE)
        all_there(office, admin, field, place)
    finally:
        office.kill()


def test_two_processes_over_one_database(postgres: Postgres, tmp_path: Path):
    """What one process took in, the other gives out at once; an upload goes on in the other; a session holds in both."""
    data = tmp_path / "office"
    url = postgres.database()
    one = Office(data, "--database", url).start()
    two = Office(data, "--database", url).start()
    try:
        admin, field, place = begun(one)
        fields = [field] + [Field(n) for n in range(3, 7)]
        for other in fields[1:]:
            other.enrol(one.url, admin.code(f"Phone {other.device.hex()[:4]}"))
            other.begin(f"Site {other.device.hex()[:4]}")
        # All at once, each entry by itself, every second one to the other process.
        def send(phone: Field) -> None:
            for n in range(len(phone.chain)):
                phone.url = (one, two)[n % 2].url
                assert phone.push(n, n + 1)["answers"][0]["answer"] == "accepted"

        senders = [threading.Thread(target=send, args=(f,)) for f in fields]
        for sender in senders:
            sender.start()
        for sender in senders:
            sender.join()
        sha256 = hashlib.sha256(PICTURE).hexdigest()
        cutter = Cutter(one.url)
        cutter.there = 200_000
        field.url = cutter.url
        with pytest.raises(Broken):
            field.upload(sha256, PICTURE)
        cutter.close()
        field.url = two.url
        field.upload(sha256, PICTURE)
        all_there(two, admin, field, place)
        admin.office = two
        assert "ML 7" in admin.get("/board")
    finally:
        one.kill()
        two.kill()


def test_photos_in_a_store_that_speaks_s3(store: S3, postgres: Postgres, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """Photos come through although the way to the store is cut, both ways, and the office killed; another office over the same
    database and bucket gives them out."""
    way = Cutter(store.url)
    for name, value in store.environment(way.url).items():
        monkeypatch.setenv(name, value)
    places = ["--database", postgres.database(), "--objects", f"s3://{BUCKET}"]
    one = Office(tmp_path / "one", *places).start()
    two = Office(tmp_path / "two", *places, "--key", str(tmp_path / "one" / "office.key"))
    try:
        admin, field, place = begun(one)
        sha256 = hashlib.sha256(PICTURE).hexdigest()
        field.push()
        for way.there, way.back in [(0, None), (1000, None), (None, 100)]:
            with pytest.raises(Broken, match="503"):
                field.upload(sha256, PICTURE, 50_000)
        way.there = way.back = None
        # The office is killed while a piece is on its way into the store.

        def send() -> None:
            with contextlib.suppress(Broken):
                field.upload(sha256, PICTURE, 10_000)

        sender = threading.Thread(target=send)
        sender.start()
        one.kill()
        sender.join()
        one.start()
        field.upload(sha256, PICTURE, 50_000)
        assert store.objects() == {f"photos/{sha256[:2]}/{sha256}": PICTURE}
        two.start()
        admin.office = two
        all_there(two, admin, field, place)
        # A record is not made without its pictures only because their store does not answer.
        job = re.search(r"/jobs/([0-9a-f]{64})", admin.get(f"/sites/{place.hex()}"))[1]
        record = f"/sites/{place.hex()}/jobs/{job}/record/json"
        way.there = 0
        assert call(two.url, "GET", record, {"cookie": admin.cookie})[0] == 503
        way.there = None
        assert json.loads(admin.fetch(record))["job"] == job
    finally:
        one.kill()
        two.kill()
        way.close()


def test_a_store_that_is_silent(store: S3, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """More photos than the office has threads wait for a store that takes calls and never answers: entries are taken in all the same."""
    way = Cutter(store.url)
    for name, value in store.environment(way.url).items():
        monkeypatch.setenv(name, value)
    office = Office(tmp_path, "--objects", f"s3://{BUCKET}").start()
    try:
        _, field, _ = begun(office)
        field.push()
        way.silent = True
        sha256 = hashlib.sha256(PICTURE).hexdigest()

        def send(phone: Field) -> None:
            with contextlib.suppress(Broken):
                phone.upload(sha256, PICTURE)

        for _ in range(80):
            threading.Thread(target=send, args=(field,), daemon=True).start()
        for _ in range(10):
            assert way.silenced.acquire(timeout=PATIENCE_S), "no photo went out to the store"
        for n in range(20):
            field.write({"person-noted": {"name": f"Later {n}", "qualification": "", "telephone": "", "corrects": None}})
            assert field.push(len(field.chain) - 1)["answers"][0]["answer"] == "accepted"
    finally:
        office.kill()
        way.close()


@pytest.mark.parametrize(
    ("name", "value", "bucket", "say"),
    [
        ("AWS_SECRET_ACCESS_KEY", "wrong", BUCKET, "SignatureDoesNotMatch"),
        ("AWS_ALLOW_HTTP", "false", BUCKET, "its address is not one of TLS"),
        # Port 9 is for throwing away what comes (RFC 863), and nothing here does that.
        ("AWS_ENDPOINT", "http://127.0.0.1:9", BUCKET, "nothing answers at its address"),
        ("AWS_REGION", "us-east-1", "photos/folder", "without a folder"),
        ("AWS_REGION", "us-east-1", "nobodys", "NoSuchBucket"),
    ],
)
def test_a_store_that_cannot_be_used(store: S3, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name, value, bucket, say):
    """It is said at the start, and not when the first photo comes."""
    for known, worth in store.environment(store.url).items():
        monkeypatch.setenv(known, worth)
    monkeypatch.setenv(name, value)
    refused(command("office", "--data", tmp_path, "--listen", "127.0.0.1:0", "--objects", f"s3://{bucket}"), 1, say, "s3://")


def test_back_up_and_restore(office: Office, postgres: Postgres, tmp_path: Path):
    """docs/operate.md, done: the copy taken while the office runs is a whole office."""
    admin, field, place = begun(office)
    field.push()
    field.upload(hashlib.sha256(PICTURE).hexdigest(), PICTURE)
    copy = tmp_path / "copy"
    copy.mkdir()
    if office._arguments:
        name = office._arguments[1].split("/")[3].split("?")[0]
        dump = postgres.run("pg_dump", "--format=custom", name)
        (tmp_path / "dump").write_bytes(dump)
    else:
        source = sqlite3.connect(office.folder / "office.db")
        source.execute("VACUUM INTO ?", (str(copy / "office.db"),))
        source.close()
    shutil.copytree(office.folder / "photos", copy / "photos")
    shutil.copy(office.folder / "office.key", copy / "office.key")
    more = []
    if office._arguments:
        url = postgres.database()
        name = url.split("/")[3].split("?")[0]
        (tmp_path / "dump").chmod(0o644)
        postgres.run("pg_restore", "--dbname", name, _readable(postgres, tmp_path / "dump"))
        more = ["--database", url]
    office.kill()
    restored = Office(copy, *more).start()
    try:
        admin.office = restored
        assert "ML 7" in admin.get("/board")
        field.url = restored.url
        assert {a["answer"] for a in field.push()["answers"]} == {"duplicate"}
        all_there(restored, admin, field, place)
    finally:
        restored.kill()


def _readable(postgres: Postgres, file: Path) -> Path:
    """A copy where PostgreSQL's own user may read it."""
    copy = postgres.folder / file.name
    shutil.copy(file, copy)
    copy.chmod(0o644)
    return copy


def test_nothing_goes_over_a_network_in_the_clear(tmp_path: Path):
    """Another address than this machine's own needs TLS, or a proxy that has it."""
    refused(command("office", "--data", tmp_path / "office", "--listen", "0.0.0.0:0"), 1, "--tls-cert", "--behind-proxy")
    assert not (tmp_path / "office").exists()


def test_tls_with_given_files(tmp_path: Path):
    """The office speaks TLS with the certificate that it was given, and cookies then go over TLS only; a wrong file is told."""
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, "localhost")])
    now = datetime.datetime.now(datetime.timezone.utc)
    certificate = (
        x509.CertificateBuilder().subject_name(name).issuer_name(name).public_key(key.public_key()).serial_number(1)
        .not_valid_before(now - datetime.timedelta(days=1)).not_valid_after(now + datetime.timedelta(days=1))
        .add_extension(x509.SubjectAlternativeName([x509.DNSName("localhost")]), critical=False)
        .sign(key, hashes.SHA256())
    )  # fmt: skip
    (tmp_path / "cert.pem").write_bytes(certificate.public_bytes(serialization.Encoding.PEM))
    formats = serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    (tmp_path / "key.pem").write_bytes(key.private_bytes(serialization.Encoding.PEM, *formats))
    files = ["--tls-cert", str(tmp_path / "cert.pem"), "--tls-key", str(tmp_path / "key.pem")]
    office = Office(tmp_path / "office", *files).start()
    try:
        trust = ssl.create_default_context(cafile=tmp_path / "cert.pem")
        url = f"https://localhost:{office.port}"
        with urllib.request.urlopen(f"{url}/capabilities", context=trust, timeout=30) as answer:
            assert answer.status == 200
        form = f"login=admin&password={office.password}".encode()
        sign_in = urllib.request.Request(f"{url}/sign-in", data=form)

        class Stay(urllib.request.HTTPRedirectHandler):
            def redirect_request(self, *_):
                return None

        opener = urllib.request.build_opener(urllib.request.HTTPSHandler(context=trust), Stay)
        with pytest.raises(urllib.error.HTTPError) as done:
            opener.open(sign_in, timeout=30)
        assert done.value.code == 303
        assert "Secure" in done.value.headers["set-cookie"]
        done.value.close()
    finally:
        office.kill()
    wrong = ["--tls-cert", str(tmp_path / "key.pem"), "--tls-key", str(tmp_path / "key.pem")]
    refused(command("office", "--data", tmp_path / "office", *wrong), 1, "certificate")
