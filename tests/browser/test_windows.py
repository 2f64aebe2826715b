"""Two windows on one desk: none shows an old screen unwarned, none lets what was typed land elsewhere, and none outlives its desk."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, expect

from support.desk import Desk
from support.journey import play
from support.phone import Phone

# The app promises three seconds; a loaded machine of two cores gets more.
PATIENCE_MS = 15_000


@pytest.fixture
def other(browser: Browser, request: pytest.FixtureRequest) -> Phone:
    """The second window."""
    phone = Phone(browser, f"{request.node.name}-other")
    yield phone
    phone.close()


def bar(phone: Phone):
    """What is said over the screen."""
    return phone.page.locator("#shell-bar")


def test_what_one_window_does_the_other_shows(desk: Desk, phone: Phone, other: Phone, picture: Path):
    """By itself, without a tap; and both go on."""
    phone.open(desk.url)
    play(phone, "people", photo=picture)
    other.open(desk.url)
    heading = other.page.get_by_role("heading", level=1)
    expect(heading).to_have_text("Jobs")
    phone.tap("New job")
    expect(heading).to_have_text("New job", timeout=PATIENCE_MS)
    other.check()
    other.tap("All jobs")
    expect(phone.page.get_by_role("heading", level=1)).to_have_text("Jobs", timeout=PATIENCE_MS)


def test_proved_dead_does_not_stay_in_the_other_window(desk: Desk, phone: Phone, other: Phone, picture: Path):
    """One window ends what stands proved; the other says so."""
    phone.open(desk.url)
    play(phone, "people", "plan", "add-instruments", "circuits", "isolate", "prove", photo=picture)
    assert "Proved dead" in phone.standing()
    other.open(desk.url)
    assert "Proved dead" in other.standing()
    play(phone, "changed", photo=picture)
    expect(other.page.locator("#shell-word")).to_have_text("Treat as live", timeout=PATIENCE_MS)
    other.check()


def test_who_types_is_told_and_what_was_typed_stays_where_it_was(desk: Desk, phone: Phone, other: Phone, picture: Path):
    """The screen is not pulled away under the fingers; the draft goes to its own screen, and not to where the other window went."""
    phone.open(desk.url)
    play(phone, "people", photo=picture)
    phone.tap("New job")
    other.open(desk.url)
    box = other.page.get_by_label("Place on the site", exact=True)
    box.press_sequentially("Plant ro")
    phone.tap("All jobs")
    phone.tap("Signed on: Mara Lind")
    expect(bar(other)).to_contain_text("This screen is old", timeout=PATIENCE_MS)
    box.press_sequentially("om 2")
    assert box.input_value() == "Plant room 2"
    bar(other).get_by_role("button", name="Show the new screen").tap()
    expect(other.page.get_by_role("heading", level=1)).to_have_text(phone.title())
    expect(bar(other)).to_have_count(0)
    other.check()
    assert "Plant room 2" not in phone.text()
    phone.tap("All jobs")
    phone.tap("New job")
    assert phone.page.get_by_label("Place on the site", exact=True).input_value() == "Plant room 2"


def test_an_answer_given_while_the_screen_is_drawn_anew_stays(desk: Desk, phone: Phone, other: Phone, picture: Path):
    """A screen that the desk drew before the answer came, and that arrives after it, takes nothing back."""
    phone.open(desk.url)
    play(phone, "people", photo=picture)
    phone.tap("New job")
    other.open(desk.url)
    held = []
    other.page.route("**/screen", lambda route: held.append((route, route.fetch())), times=1)
    phone.fill("What the job is", "New contactor")
    phone.tap("Open this job")
    other.page.wait_for_timeout(2_000)
    [(route, before)] = held
    title = other.page.get_by_label("What the job is", exact=True)
    assert title.input_value() == "", "the new screen is on its way"
    # As `Phone.choose`, which would wait for the screen that is held back.
    rules = other.page.get_by_role("radio", name="Ireland", exact=True)
    with other.page.expect_response("**/edit"):
        rules.evaluate("e => e.labels[0].click()")
    route.fulfill(response=before)
    expect(title).to_have_value("New contactor", timeout=PATIENCE_MS)
    expect(rules).to_be_checked()
    other.check()


def test_what_was_saved_in_one_window_is_not_typed_again_in_the_other(desk: Desk, phone: Phone, other: Phone, picture: Path):
    """Both have the same words in the same field; once one has saved them, the field is empty in both."""
    phone.open(desk.url)
    play(phone, "people", photo=picture)
    phone.tap("Signed on: Mara Lind")
    other.open(desk.url)
    other.fill("Name", "Otto Reis")
    phone.fill("Name", "Otto Reis")
    phone.tap("Add this person")
    expect(other.page.get_by_role("button", name="Otto Reis")).to_be_visible(timeout=PATIENCE_MS)
    expect(other.page.get_by_label("Name", exact=True)).to_have_value("")
    other.check()


def test_what_one_person_typed_is_not_the_next_ones(desk: Desk, phone: Phone, other: Phone, picture: Path):
    """The device is handed on in one window while somebody still types in the other."""
    phone.open(desk.url)
    play(phone, "people", photo=picture)
    phone.tap("New job")
    other.open(desk.url)
    box = other.page.get_by_label("Place on the site", exact=True)
    box.press_sequentially("Mara's ")
    for button in ("All jobs", "Signed on: Mara Lind", "Tomas Brandt", "Go on without PIN"):
        phone.tap(button)
    other.expect_refusal("409")
    box.press_sequentially("room")
    box.blur()
    expect(other.page.get_by_text("Signed on: Tomas Brandt")).to_be_visible(timeout=PATIENCE_MS)
    expect(other.page.get_by_text("Somebody else has this device now")).to_be_visible()
    phone.tap("New job")
    assert phone.page.get_by_label("Place on the site", exact=True).input_value() == ""


def test_a_window_whose_desk_is_gone_says_so_and_comes_back(desk: Desk, phone: Phone, picture: Path):
    """Large and red, over everything; nothing can be tapped, what was typed stays, and it goes on once this browser has the new key."""
    phone.open(desk.url)
    play(phone, "people", photo=picture)
    phone.tap("New job")
    box = phone.page.get_by_label("What the job is", exact=True)
    phone.expect_unreachable()
    # Typed, and never arrived; a key after the bar has come would fall on a page that takes none.
    phone.page.route("**/edit", lambda route: route.abort())
    box.fill("Half a title")
    desk.kill()
    phone.page.unroute("**/edit")
    expect(bar(phone)).to_contain_text("treat as live", timeout=PATIENCE_MS)
    expect(bar(phone)).to_have_attribute("role", "alert")
    box_of_bar = bar(phone).bounding_box()
    assert box_of_bar["y"] == 0 and box_of_bar["width"] == phone.page.viewport_size["width"]
    assert phone.page.evaluate("() => document.elementFromPoint(195, 700).closest('button, input, [data-action]')") is None
    desk.start(desk.port)
    # The key of before lets nobody in: it says where the new one stands.
    expect(bar(phone)).to_contain_text("the key in it lets you in", timeout=PATIENCE_MS)
    again = phone.page.context.new_page()
    again.goto(desk.url)
    expect(bar(phone)).to_have_count(0, timeout=PATIENCE_MS)
    expect(box).to_have_value("Half a title")
    again.close()


def test_a_desk_that_hangs_is_told_and_the_page_goes_on_after_it(desk: Desk, phone: Phone, picture: Path):
    """The same desk answers again: nothing was lost, so the page is as it was, with what was typed, and is not loaded anew."""
    phone.open(desk.url)
    play(phone, "people", photo=picture)
    phone.tap("New job")
    phone.fill("What the job is", "Half a title")
    phone.page.evaluate("() => { window.marked = true; }")
    phone.expect_unreachable()
    desk.freeze()
    expect(bar(phone)).to_contain_text("treat as live", timeout=PATIENCE_MS)
    desk.thaw()
    expect(bar(phone)).to_have_count(0, timeout=PATIENCE_MS)
    assert phone.page.evaluate("() => window.marked")
    phone.tap("All jobs")


def test_what_stands_proved_changes_under_who_types(desk: Desk, phone: Phone, picture: Path):
    """Time alone changes what stands: the words are drawn anew at once, another verdict is told, and the field stays under the fingers."""
    phone.open(desk.url)
    play(phone, "people", "plan", photo=picture)
    box = phone.page.get_by_label("Maker and type", exact=True)
    box.press_sequentially("Volta")
    sent = {"Nothing is proved yet.": "Nothing is proved. It is late."}

    def answer(route) -> None:
        shown = route.fetch().json()
        for old, new in sent.items():
            shown["html"] = shown["html"].replace(old, new)
        route.fulfill(json=shown)

    phone.page.route("**/screen", answer)
    phone.page.route("**/stirred", lambda route: route.fulfill(body=str(int(route.fetch().text()) + 1)))
    expect(phone.page.get_by_text("Nothing is proved. It is late.")).to_be_visible(timeout=PATIENCE_MS)
    expect(bar(phone)).to_have_count(0)
    sent["Treat as live"] = "Stop, treat as live"
    expect(bar(phone)).to_contain_text("This screen is old", timeout=PATIENCE_MS)
    box.press_sequentially(" 12")
    assert box.input_value() == "Volta 12"
    phone.page.unroute_all(behavior="wait")


def test_a_signature_survives_what_comes_in(desk: Desk, phone: Phone, picture: Path):
    """A screen that is drawn anew while nobody acted keeps a signature that was begun: it is no draft, and stands nowhere else."""
    phone.open(desk.url)
    play(phone, "people", "plan", "add-instruments", "circuits", "isolate", "tomas-joins", photo=picture)
    for button in ("The job", "Locks and keys", "Mara Lind on Q4 feeder switch: ML 7"):
        phone.tap(button)
    phone.choose("To whom", "Tomas Brandt")
    phone.tap("Offer lock and key")
    phone.sign()
    strokes = "() => document.querySelector('[data-strokes]').dataset.strokes"
    drawn = phone.page.evaluate(strokes)
    assert drawn
    phone.page.evaluate("async () => show(await (await fetch('/screen')).json())")
    assert phone.page.evaluate(strokes) == drawn
    phone.tap("Locks and keys")
    phone.tap(re.compile("ML 7"))
    assert phone.page.evaluate(strokes) == "", "it is given for one act only"
