"""The package that `android/apk` puts together, as Debian's own tools and the formats' descriptions see it."""

import os
import struct
import subprocess
import zipfile
from pathlib import Path

import pytest

from support.desk import ROOT

ABIS = ("arm64-v8a", "armeabi-v7a", "x86_64")
# https://developer.android.com/guide/practices/page-sizes: segments of 64-bit libraries are aligned to 16 KB.
PAGE = 16_384


@pytest.fixture(scope="module")
def apk() -> Path:
    """Made afresh."""
    done = subprocess.run([ROOT / "android" / "apk"], capture_output=True, text=True, timeout=600, env=os.environ)
    assert done.returncode == 0, done.stderr
    # It lacks the core where no cross compiler was, and says so.
    for abi in ABIS:
        there = (ROOT / "android" / "src" / "main" / "jniLibs" / abi / "libstillbar.so").exists()
        assert there != (f"no core for {abi}" in done.stderr)
    return Path(done.stdout.splitlines()[-1])


def said(*words: object) -> str:
    """What a tool prints, standard error left out."""
    return subprocess.run([str(w) for w in words], capture_output=True, text=True, check=True, timeout=120).stdout


def test_manifest_and_permissions(apk: Path):
    """The camera and the network; no place, no storage, no telephone, nothing that a library brought along."""
    told = said("aapt2", "dump", "badging", apk).splitlines()
    permissions = {line.split("'")[1].rsplit(".", 1)[1] for line in told if line.startswith("uses-permission")}
    assert permissions == {"CAMERA", "INTERNET", "ACCESS_NETWORK_STATE"}
    assert "sdkVersion:'26'" in told and "targetSdkVersion:'35'" in told
    assert any(line.startswith("launchable-activity: name='app.stillbar.Shell'") for line in told)
    tree = said("aapt2", "dump", "xmltree", "--file", "AndroidManifest.xml", apk)
    for wanted in ("allowBackup(0x01010280)=false", "supportsRtl(0x010103af)=true", "BIND_JOB_SERVICE", "dataExtractionRules"):
        assert wanted in tree, tree
    # The screen, and neither the lender of records, which grants one file at a time, nor the exchange in the background.
    exported = [line.strip() for line in tree.splitlines() if "exported" in line]
    assert [line.rsplit("=", 1)[1] for line in exported] == ["true", "false", "false"], exported


def test_signature(apk: Path):
    """Signed with the schemes that Android 7 and later ask for, by one key."""
    told = said("apksigner", "verify", "--verbose", "--print-certs", apk)
    assert "v2 scheme (APK Signature Scheme v2): true" in told and "Number of signers: 1" in told
    assert "CN=Stillbar debug" in told


def classes(dex: bytes) -> set[str]:
    """Names of the classes that a dex file defines (https://source.android.com/docs/core/runtime/dex-format)."""
    assert dex[:4] == b"dex\n"
    strings, string_ids = struct.unpack_from("<II", dex, 0x38)
    _, type_ids = struct.unpack_from("<II", dex, 0x40)
    count, defs = struct.unpack_from("<II", dex, 0x60)

    def text(number: int) -> str:
        assert number < strings
        (at,) = struct.unpack_from("<I", dex, string_ids + 4 * number)
        while dex[at] & 0x80:
            at += 1
        return dex[at + 1 : dex.index(b"\0", at + 1)].decode()

    kinds = (struct.unpack_from("<I", dex, defs + 32 * k)[0] for k in range(count))
    return {text(struct.unpack_from("<I", dex, type_ids + 4 * kind)[0]) for kind in kinds}


def test_dex_holds_what_native_code_looks_for(apk: Path):
    """R8 kept by name what JNA and the manifest find by name, and no test code came along."""
    with zipfile.ZipFile(apk) as package:
        held = set().union(*(classes(package.read(n)) for n in package.namelist() if n.endswith(".dex")))
    for name in ("Shell", "StillbarApp", "Tending", "core/Field", "core/UniffiLib", "core/Platform", "core/UniffiVTableCallbackInterfacePlatform"):
        assert f"Lapp/stillbar/{name};" in held, name
    for name in ("Native", "Structure", "Pointer", "Callback"):
        assert f"Lcom/sun/jna/{name};" in held, name
    assert not [n for n in held if "androidx" in n or "robolectric" in n or "/Test" in n]


def test_libraries(apk: Path):
    """JNA's part for each processor, its segments aligned for phones with pages of 16 KB; resources lie uncompressed."""
    with zipfile.ZipFile(apk) as package:
        assert package.getinfo("resources.arsc").compress_type == zipfile.ZIP_STORED
        libraries = [n for n in package.namelist() if n.startswith("lib/")]
        assert {f"lib/{abi}/libjnidispatch.so" for abi in ABIS} <= set(libraries)
        for name in libraries:
            file = package.read(name)
            assert file[:4] == b"\x7fELF", name
            if file[4] == 2:
                (table,) = struct.unpack_from("<Q", file, 0x20)
                size, count = struct.unpack_from("<HH", file, 0x36)
                headers = [struct.unpack_from("<IIQQQQQQ", file, table + size * k) for k in range(count)]
                assert all(h[7] % PAGE == 0 for h in headers if h[0] == 1), name
