"""How much a person does on a phone until dead is proved. The bars are those of a job done on paper: common practice, no source."""

from pathlib import Path

from support.desk import Desk
from support.journey import lines, play, step
from support.phone import Phone
from support.thumb import Thumb


def to_proved(desk: Desk, phone: Phone, picture: Path, journey: str) -> tuple[Thumb, str]:
    """Plays a journey with a thumb that counts, from New job to proved dead, where the person and the instruments are known; and what it came to."""
    phone.open(desk.url)
    play(phone, "people", "house", "add-instruments", "house-done", photo=picture)
    thumb = Thumb(phone)
    for line in lines(journey):
        step(thumb, line, picture)
    assert "Proved dead" in phone.standing()
    return thumb, f"{thumb.counted()}\n" + "\n".join(thumb.log)


def test_a_house_socket_the_second_time(desk: Desk, phone: Phone, picture: Path):
    """The same flat, the same person, instruments looked over in this shift: from New job to proved dead."""
    thumb, told = to_proved(desk, phone, picture, "house-again")
    assert thumb.taps <= 40, told
    assert thumb.characters <= 25, told
    assert thumb.swipes <= 5, told


def test_a_board_of_three_phases_the_first_time(desk: Desk, phone: Phone, picture: Path):
    """A site that nobody has been to, one isolator, six circuits; the person and the instruments are known."""
    thumb, told = to_proved(desk, phone, picture, "board-first")
    assert thumb.taps <= 70, told
    assert thumb.characters <= 200, told
