"""Enter in a field states nothing: it leads to the next field, and never to a button or an answer."""

from pathlib import Path

from playwright.sync_api import expect

from support.desk import Desk
from support.journey import play
from support.phone import Phone

FIELDS = "main :is(input[type=text], input[type=tel], input[type=password]):visible"


def test_enter_in_a_field_states_nothing(desk: Desk, phone: Phone, picture: Path):
    """In every field of a form that is ready to be sent, also when the key is held down; the button still sends it."""
    phone.open(desk.url)
    play(phone, "people", photo=picture)
    phone.tap("New job")
    for field, value in {
        "What the job is": "Replace the fan of the dryer",
        "Site": "Brook Lane dye works",
        "Place on the site": "Plant room 2",
        "Equipment to isolate": "Board DB4",
        "Scope of the work": "Breaker 4 only",
        "Nominal voltage in volts": "230",
    }.items():
        phone.fill(field, value)
    phone.choose("Rules of", "European Union")
    phone.choose("Conductors at the point of work", "Three phase with neutral: L1, L2, L3, N, PE")
    phone.choose("Earthing arrangement", "TN-C-S")
    fields = phone.page.locator(FIELDS)
    assert fields.count() > 4
    turn = phone.page.locator("[data-turn]").get_attribute("data-turn")
    for box in fields.all():
        box.focus()
        for _ in range(3):
            phone.page.keyboard.down("Enter")
        phone.page.keyboard.up("Enter")
        assert not phone.page.evaluate("() => busy || document.activeElement.matches('button, [type=radio], [type=checkbox]')")
    assert phone.page.locator("[data-turn]").get_attribute("data-turn") == turn
    assert phone.title() == "New job"

    phone.page.get_by_label("What the job is", exact=True).focus()
    phone.page.keyboard.press("Enter")
    expect(phone.page.get_by_label("Site", exact=True)).to_be_focused()
    phone.tap("Open this job")
    assert phone.title() != "New job"


def test_enter_leads_from_reading_to_reading(desk: Desk, phone: Phone, picture: Path):
    """Volts are typed one after the other; the last Enter saves nothing."""
    phone.open(desk.url)
    play(phone, "people", "plan", "add-instruments", "circuits", "isolate", photo=picture)
    for line in ("Nothing started", "None fitted"):
        phone.tap(line)
    phone.fill("Cover that comes off", "Front plate of DB4")
    for line in ("This cover is off", "Next: Prove the indicator"):
        phone.tap(line)
    phone.choose("Proved on", "Proving unit, battery, serial 9083")
    phone.tap("It responds as it should")
    phone.choose("How it was shown", "Low-resistance continuity from PE to the main earthing terminal")
    phone.fill("Where, or another way", "MET in the meter room")
    phone.tap("Earth proved")
    volts = phone.page.locator(".volts input")
    assert volts.count() == 3
    for at in range(3):
        expect(volts.nth(at)).to_be_focused() if at else volts.first.focus()
        phone.page.keyboard.type("0")
        phone.page.keyboard.press("Enter")
    phone.page.wait_for_function("() => !busy && !unsent.size")
    assert "Save these readings" in phone.targets()
    assert volts.count() == 3
