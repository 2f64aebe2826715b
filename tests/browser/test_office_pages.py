"""The office's pages in Chromium, on a phone of 390 px: whole, reachable, readable; and the board that renews itself."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from support.office import Field, Office
from support.phone import CHECKS, HEIGHT, OUT, WIDTH

# The first screen of each place, by the link that leads there.
PLACES = ["Locks on now", "Sites and jobs", "Search", "Labels", "Phones", "Not taken in", "People", "Names in the journal", "Who did what", "Your password"]


@pytest.fixture
def office(tmp_path: Path):
    """An office over SQLite, running."""
    office = Office(tmp_path / "office").start()
    yield office
    office.kill()


@pytest.fixture
def page(browser: Browser, office: Office):
    """The admin's phone, signed in with a password of their own; what the browser says on its console fails the test."""
    context = browser.new_context(viewport={"width": WIDTH, "height": HEIGHT}, has_touch=True, color_scheme="dark", locale="en-GB")
    context.set_default_timeout(15_000)
    page = context.new_page()
    errors: list[str] = []
    # A form that is refused with a page of its own is an error to the browser's console.
    page.on("console", lambda m: errors.append(m.text) if m.type == "error" and "(Bad Request)" not in m.text else None)
    page.on("pageerror", lambda e: errors.append(str(e)))
    page.goto(office.url)
    expect(page).to_have_title(re.compile("Sign in"))
    check(page)
    page.get_by_label("Sign-in name").fill("admin")
    page.get_by_label("Password").fill(office.password)
    page.get_by_role("button", name="Sign in").click()
    # The one-time password leads to nothing but a password of one's own.
    page.get_by_label("Password so far").fill(office.password)
    page.get_by_label("New password").fill("four words in a row")
    page.get_by_label("The new one again").fill("four words in a row")
    page.get_by_role("button", name="Keep the new password").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Locks on now")
    yield page
    context.close()
    assert not errors, errors


def check(page: Page) -> None:
    """What must hold on every page; a picture is left in tests/out if it does not."""
    wrong = page.evaluate(CHECKS)
    if wrong:
        OUT.mkdir(exist_ok=True)
        page.screenshot(path=OUT / "office.png", full_page=True)
    assert not wrong, wrong


def enrolled(page: Page, office: Office, number: int = 1) -> Field:
    """A phone, enrolled with the code that the page shows."""
    page.get_by_role("link", name="Phones", exact=True).click()
    page.get_by_label("What the phone is called").fill("Phone of Mara")
    page.get_by_role("button", name="Show the code").click()
    expect(page.get_by_role("img", name="The code to scan with the phone")).to_be_visible()
    check(page)
    phone = Field(number)
    phone.enrol(office.url, page.locator("code").inner_text())
    return phone


def test_every_page_on_a_phone(page: Page, office: Office):
    """Every place, a site, a job and the plan, with something in them: nothing is wider than the phone, every target has 44 px."""
    phone = enrolled(page, office)
    site, job, point = phone.begin("Hill Laundry with a name that is longer than most")
    phone.lock(site, job, point, "ML 7")
    phone.push()
    for place in PLACES:
        page.get_by_role("navigation").get_by_role("link", name=place, exact=True).click()
        expect(page.get_by_role("heading", level=1)).to_have_text(place)
        expect(page.locator("[aria-current=page]")).to_have_text(place)
        check(page)
    page.get_by_role("link", name="Sites and jobs").click()
    page.get_by_role("link", name=re.compile("Hill Laundry")).click()
    check(page)
    page.get_by_role("link", name="Replace a breaker").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Replace a breaker")
    expect(page.get_by_text("Treat as live, as last heard")).to_be_visible()
    check(page)
    page.go_back()
    page.get_by_role("link", name="Plan a job here").click()
    check(page)
    # Without a thumb: Tab alone reaches the first field, and the first Tab offers the way past the places.
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"


def test_a_lock_appears_by_itself(page: Page, office: Office):
    """A lock that a phone sends appears on the open board without a hand on it, and is said to a screen reader."""
    phone = enrolled(page, office)
    site, job, point = phone.begin("Hill Laundry")
    page.clock.install()
    page.goto(f"{office.url}/board")
    expect(page.get_by_text("No lock is known here. That is no clearance")).to_be_visible()
    phone.lock(site, job, point, "ML 7")
    phone.push()
    page.clock.fast_forward(16_000)
    expect(page.get_by_role("rowheader", name=re.compile("Q4 feeder switch"))).to_be_visible()
    expect(page.locator("#renewed")).to_have_text("The board changed.")
    check(page)


def test_a_job_planned_here_reaches_the_phone(page: Page, office: Office):
    """Planned with the form, pulled by the phone."""
    page.get_by_role("link", name="Sites and jobs").click()
    page.get_by_label("Name of the site").fill("Mill")
    page.get_by_role("button", name="Add this site").click()
    site = page.url.rsplit("/", 1)[1]
    page.get_by_role("link", name="Phones", exact=True).click()
    page.get_by_label("What the phone is called").fill("Phone of Ida")
    page.get_by_label("Mill").first.check()
    page.get_by_role("button", name="Show the code").click()
    phone = Field(3)
    phone.enrol(office.url, page.locator("code").inner_text())
    page.goto(f"{office.url}/sites/{site}/plan")
    for label, text in [("What the job is", "Replace K3"), ("Place on the site", "Roof"), ("Equipment to isolate", "DB2"), ("Scope of the work", "K3")]:
        page.get_by_label(label).fill(text)
    for label in ["Conductors at the point of work", "Earthing arrangement", "Order of the dead test"]:
        page.get_by_label(label).select_option(index=1)
    page.get_by_label("Nominal voltage in volts").fill("400")
    page.get_by_label("Name on the device").first.fill("Q1")
    page.get_by_label("Where it is").first.fill("Bay 1")
    page.get_by_label("What it is").first.select_option("Switch-disconnector")
    page.get_by_label("Conductors that it opens").first.fill("L1")
    page.get_by_label("It takes a lock").first.check()
    page.get_by_role("button", name="Plan this job").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Replace K3")
    check(page)
    assert b"Replace K3" in b"".join(phone.pull())


def test_a_network_is_brought_in_from_files(page: Page, office: Office, tmp_path: Path):
    """Two tables from a spreadsheet are chosen, looked at and brought in; a mistake is told with its line and nothing is kept."""
    (tmp_path / "nodes.csv").write_text("id,kind,stops\ngrid,source,\nB1,board,\nC1,load,Stair lighting\n")
    links = "id,from,to,kind,lockable\nQ1,grid,B1,switch,yes\nQ2,B1,C1,switch,{}\n"
    page.get_by_role("link", name="Sites and jobs").click()
    page.get_by_label("Name of the site").fill("Mill")
    page.get_by_role("button", name="Add this site").click()
    page.get_by_role("link", name="Supply network of this site").click()
    check(page)
    for word, told in (("perhaps", "In the links: line 3"), ("no", "")):
        (tmp_path / "links.csv").write_text(links.format(word))
        page.get_by_label("File for: Sources, boards and loads as CSV").set_input_files(tmp_path / "nodes.csv")
        page.get_by_label("File for: Switches and cables as CSV").set_input_files(tmp_path / "links.csv")
        page.wait_for_function("word => document.getElementById('links').value.includes('switch,' + word)", arg=word)
        with page.expect_navigation():
            page.get_by_role("button", name="Bring this in").click()
        if told:
            expect(page.get_by_role("alert")).to_contain_text(told)
            check(page)
            page.go_back()
    drawn = page.get_by_role("img")
    expect(drawn).to_have_attribute("alt", re.compile("grid"))
    assert drawn.evaluate("img => img.complete && img.naturalWidth > 100"), "the drawing is no picture to the browser"
    expect(page.get_by_role("rowheader", name="Q2")).to_be_visible()
    check(page)
    with page.expect_download() as chosen:
        page.get_by_role("link", name="The network as JSON").click()
    assert '"Q2"' in chosen.value.path().read_text()
