"""What is handed in, its receipt, and how it is brought in on another machine and gone on with."""

import json
import re
from datetime import UTC, datetime

import pytest
from learner import right_answer, session_of

from helpers.exercises import hand_in
from helpers.exercises.answer_log import LogError, parse_log
from helpers.exercises.hand_in import HandInError, bring_in, digest
from helpers.exercises.store import DiskStore, MemoryStore


@pytest.fixture
def path(tmp_path):
    return tmp_path / "lessons" / "answers" / "answers-BENCH-07.jsonl"


@pytest.fixture
def session(path):
    return session_of(store=DiskStore(path.parent))


def test_the_hand_in_is_the_log_under_a_name_that_says_whose(session, path, tmp_path):
    session.answer("ohm-2", "7 mA")
    handed = session.hand_in().path
    day = datetime.now(UTC).date().isoformat()
    assert handed.parent == tmp_path / "lessons" / "hand-in"
    assert re.fullmatch(rf"wick_BENCH-07_{day}_[0-9a-f]{{6}}\.jsonl", handed.name)
    assert handed.read_bytes() == path.read_bytes()
    assert list(handed.parent.iterdir()) == [handed]


def test_a_log_keeps_its_name_and_another_log_has_another(session, tmp_path):
    """Two of one id, or one learner on two machines: neither file may take the other's place."""
    session.answer("ohm-2", "7 mA")
    first = session.hand_in().path
    session.answer("ohm-2", "8 mA")
    assert session.hand_in().path == first
    other = session_of(store=DiskStore(tmp_path / "other" / "answers"))
    other.answer("ohm-2", "7 mA")
    assert other.hand_in().path.name[:-12] == first.name[:-12]
    assert other.hand_in().path.name != first.name


def test_nothing_answered_is_said_and_nothing_is_written(session, tmp_path):
    with pytest.raises(HandInError, match="BENCH-07 has answered nothing yet"):
        session.hand_in()
    assert list(tmp_path.iterdir()) == []


def test_answers_in_memory_cannot_be_handed_in():
    with pytest.raises(HandInError, match="in memory only"):
        session_of().hand_in()


def test_a_hand_in_that_cannot_be_written_names_the_file(session, tmp_path):
    session.answer("ohm-2", "7 mA")
    (tmp_path / "lessons" / "hand-in").write_text("a file in the way")
    with pytest.raises(LogError, match="wick_BENCH-07_.*could not be written"):
        session.hand_in()


def test_the_receipt_counts_the_answers_and_names_the_digest_of_the_file(session):
    session.answer("ohm-2", "7 mA")
    receipt = session.hand_in()
    assert (receipt.answers, receipt.refused) == (1, "")
    assert receipt.digest == digest(receipt.path.read_bytes())
    session.answer("ohm-2", "8 mA")
    assert session.hand_in().digest != receipt.digest


@pytest.mark.parametrize(
    "limit, most, said", [("LARGEST_FILE", 10, "MB"), ("MOST_LINES", 0, "1 lines")]
)
def test_what_marking_would_refuse_is_said_when_it_is_written(
    session, monkeypatch, limit, most, said
):
    session.answer("ohm-2", "7 mA")
    monkeypatch.setattr(hand_in, limit, most)
    assert said in session.hand_in().refused


class TestBringIn:
    @pytest.fixture
    def home(self, tmp_path):
        return DiskStore(tmp_path / "home" / "answers")

    @pytest.fixture
    def handed(self, session):
        session.answer("ohm-2", "7 mA")
        session.answer("ohm-2", right_answer(session, "ohm-2"))
        return session.hand_in().path

    def test_from_room_to_home_nothing_is_lost_and_one_goes_on(self, session, handed, home):
        settings, brought = bring_in(handed, home)
        assert (settings, brought) == (session.settings, 2)
        at_home = session_of(settings, home)
        assert at_home.standing("ohm-2") == session.standing("ohm-2")
        at_home.answer("ohm-2", right_answer(at_home, "ohm-2", 1), 1)
        content = at_home.log.path.read_bytes()
        assert parse_log(content).gaps == [] and len(parse_log(content).lines) == 3

    def test_and_back_again(self, handed, home, path, session):
        bring_in(handed, home)
        assert bring_in(handed, home)[1] == 0
        at_home = session_of(store=home)
        at_home.answer("ohm-3", "1 kΩ")
        assert bring_in(at_home.log.path, session.store)[1] == 1
        session.read_again()
        assert session.standing("ohm-3").tries == 1

    def test_an_older_hand_in_takes_nothing_away(self, session, handed, path):
        session.answer("ohm-3", "1 kΩ")
        before = path.read_bytes()
        assert bring_in(handed, session.store)[1] == 0
        assert path.read_bytes() == before

    def test_two_that_have_parted_are_both_left_as_they_are(self, session, handed, home, path):
        bring_in(handed, home)
        at_home = session_of(store=home)
        at_home.answer("ohm-3", "1 kΩ")
        session.answer("ohm-3", "2 kΩ")
        before = path.read_bytes()
        with pytest.raises(HandInError, match="same for 2 lines.*ask your instructor"):
            bring_in(at_home.log.path, session.store)
        assert path.read_bytes() == before

    def test_answers_of_two_learners_or_of_the_workshop_copy_are_refused(self, handed, home):
        line = json.loads(handed.read_text().splitlines()[0])
        for learner in ("BENCH-08", "WORKSHOP"):
            other = handed.with_name("other.jsonl")
            other.write_text(handed.read_text() + json.dumps(line | {"learner": learner}) + "\n")
            with pytest.raises(HandInError, match=f"answers of .*{learner}"):
                bring_in(other, home)
        assert not home.folder.exists()

    @pytest.mark.parametrize("content", [b"", b"hello\n", b"\x00" * 100])
    def test_what_is_no_hand_in_is_refused(self, tmp_path, home, content):
        path = tmp_path / "strange.jsonl"
        path.write_bytes(content)
        with pytest.raises(HandInError, match="strange.jsonl was not brought in"):
            bring_in(path, home)

    def test_a_file_that_is_not_there_is_said(self, tmp_path, home):
        with pytest.raises(LogError, match="nowhere.jsonl could not be read"):
            bring_in(tmp_path / "nowhere.jsonl", home)

    def test_a_learner_id_that_is_none_is_refused(self, handed, home):
        line = json.loads(handed.read_text().splitlines()[0]) | {"learner": "../x"}
        handed.write_text(json.dumps(line) + "\n")
        with pytest.raises(HandInError, match="The learner id '../x' was read"):
            bring_in(handed, home)

    def test_into_memory_nothing_is_brought_in(self, handed):
        with pytest.raises(HandInError, match="in memory only here: nothing to bring in"):
            bring_in(handed, MemoryStore())
