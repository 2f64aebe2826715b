"""The office's description of itself, tried by Schemathesis with what it allows and what it forbids: no answer is a fault of the office.

Schemathesis (https://schemathesis.readthedocs.io) makes the calls; `not_a_server_error` is its own check. What is allowed must also be
answered with the statuses, kinds and shapes that are described.
"""

from pathlib import Path

import pytest
import schemathesis
from hypothesis import HealthCheck, Phase, settings
from schemathesis.checks import not_a_server_error
from schemathesis.specs.openapi.checks import content_type_conformance, response_schema_conformance, status_code_conformance

from support.office import Admin, Field, Office


@pytest.fixture(scope="module")
def office(tmp_path_factory: pytest.TempPathFactory):
    """An office with a site, a job and a phone."""
    office = Office(tmp_path_factory.mktemp("office")).start()
    admin = Admin(office)
    phone = Field(1)
    phone.enrol(office.url, admin.code("Phone of Mara"))
    site, job, point = phone.begin("Hill Laundry")
    phone.lock(site, job, point, "ML 7")
    phone.push()
    yield office, admin, phone, site, job
    office.kill()


@pytest.fixture
def described(office):
    """The description, as it is served."""
    return schemathesis.openapi.from_url(f"{office[0].url}/openapi.json")


schema = schemathesis.pytest.from_fixture("described")


@schema.parametrize()
@settings(max_examples=25, deadline=None, derandomize=True, phases=[Phase.explicit, Phase.generate], suppress_health_check=list(HealthCheck))
def test_no_call_is_a_fault_of_the_office(case, office):
    """As a phone, and as the admin where a page is asked for; with what is known here where a path names something."""
    running, admin, phone, site, job = office
    case.headers = {**(case.headers or {}), "Authorization": f"Bearer {phone.token}", "Cookie": admin.cookie}
    if case.operation.path == "/sign-out" or (case.operation.method.upper() == "POST" and case.operation.path == "/password"):
        # Either would end the session that the other calls need.
        case.headers["Cookie"] = "stillbar-office=nobody"
    known = {"site": site.hex(), "job": job.hex(), "device": phone.device.hex()}
    if case.path_parameters and len(str(case.path_parameters)) % 2:
        case.path_parameters = {name: known.get(name, value) for name, value in case.path_parameters.items()}
    checks = [not_a_server_error, status_code_conformance, content_type_conformance, response_schema_conformance]
    case.call_and_validate(checks=checks, allow_redirects=False)
    assert running.said == [line for line in running.said if "fault:" not in line]
