"""The office's description of itself, tried by Schemathesis with what it allows and what it forbids: no answer is a fault of the office.

Schemathesis (https://schemathesis.readthedocs.io) makes the calls; `not_a_server_error` is its own check. What is allowed must also be
answered with the statuses, kinds and shapes that are described.
"""

import json

import pytest
import schemathesis
from hypothesis import HealthCheck, Phase, given, settings
from schemathesis.checks import not_a_server_error
from schemathesis.specs.openapi.checks import content_type_conformance, response_schema_conformance, status_code_conformance

from support.office import Admin, Field, Office


@schemathesis.serializer("application/offset+octet-stream")
def octets(_context, value) -> bytes:
    """The bytes of an upload are sent as they are."""
    return bytes(value) if not isinstance(value, str) else value.encode()


CHECKS = [not_a_server_error, status_code_conformance, content_type_conformance, response_schema_conformance]


@pytest.fixture(scope="module")
def office(tmp_path_factory: pytest.TempPathFactory):
    """An office with a site, a job and a phone."""
    office = Office(tmp_path_factory.mktemp("office"), "--log-format", "json").start()
    admin = Admin(office)
    phone = Field(1)
    phone.enrol(office.url, admin.code("Phone of Mara"))
    site, job, point = phone.begin("Hill Laundry")
    phone.lock(site, job, point, "ML 7")
    phone.push()
    yield office, admin, phone, site, job
    office.kill()


def known_to(case, names: dict[str, str]) -> None:
    """Half of the calls name something that is there, where the path names something."""
    if case.path_parameters and len(str(case.path_parameters)) % 2:
        case.path_parameters = {name: names.get(name, value) for name, value in case.path_parameters.items()}


def tries(operation, headers: dict[str, str], names: dict[str, str]) -> None:
    """Twenty calls, the same ones every time."""

    @settings(max_examples=20, deadline=None, derandomize=True, database=None, phases=[Phase.explicit, Phase.generate], suppress_health_check=list(HealthCheck))
    @given(case=operation.as_strategy())
    def one(case) -> None:
        case.headers = {**(case.headers or {}), **headers}
        known_to(case, names)
        case.call_and_validate(checks=CHECKS, allow_redirects=False)

    one()


def test_no_call_is_a_fault_of_the_office(office):
    """As a phone, and as the admin where a page is asked for."""
    running, admin, phone, site, job = office
    names = {"site": site.hex(), "job": job.hex(), "device": phone.device.hex()}
    tried = []
    # Through hypothesis itself: Schemathesis' own marks reach into pytest's insides.
    for operation in (found.ok() for found in schemathesis.openapi.from_url(f"{running.url}/openapi.json").get_all_operations()):
        headers = {"Authorization": f"Bearer {phone.token}", "Cookie": admin.cookie}
        if (operation.method.upper(), operation.path) in (("POST", "/sign-out"), ("POST", "/password")):
            # Either would end the session that the other calls need.
            headers["Cookie"] = "stillbar-office=nobody"
        tries(operation, headers, names)
        tried.append(operation.label)
    assert len(tried) > 40, tried
    events = [json.loads(line) for line in running.said if line.startswith("{")]
    assert not [event for event in events if event["level"] == "ERROR"], events
    # That an error would have been seen: every call is an event, and none of them holds a secret.
    assert len([event for event in events if event["message"] == "request"]) > len(tried)
    assert not [line for line in running.said if phone.token in line or admin.cookie.split("=")[1] in line]
