"""The record of a job, from the screen to a file on disk that verifies."""

from pathlib import Path

from support.desk import command
from support.journey import play


def test_a_record_is_handed_on_as_a_file(desk, phone, picture, tmp_path: Path):
    """With names and without; each is a download that the verifier accepts."""
    phone.open(desk.url)
    play(phone, "people", "plan", "add-instruments", "circuits", "isolate", photo=picture)
    phone.tap("The job")
    phone.tap("Record of this job")
    for number, button in enumerate(("Share the record", "Share it without names and signatures")):
        with phone.page.expect_download() as coming:
            phone.tap(button)
        file = tmp_path / f"{number}.pdf"
        coming.value.save_as(file)
        assert coming.value.suggested_filename.endswith(".pdf")
        done = command("verify", file)
        assert done.code == 0, done.out
        assert ("withheld" in done.out) == (number == 1)
