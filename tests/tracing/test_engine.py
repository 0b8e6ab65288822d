"""duckdb's life: begun once, given up after a large file, never shared between readings that run at once."""

from concurrent.futures import ThreadPoolExecutor

import pytest

from process.tracing import engine as room
from process.tracing import read, survey
from process.tracing.engine import engine
from tests.tracing.files import LIMIT, SCENARIO, mapped


@pytest.fixture(autouse=True)
def afresh():
    room._begun.cache_clear()
    yield
    room._begun.cache_clear()


def test_small_files_share_one_and_a_large_one_ends_it():
    with engine(1000):
        first = room._begun()
    with engine(1000):
        assert room._begun() is first
    with engine(room.KEPT_BYTES + 1):
        pass
    with engine(1000):
        assert room._begun() is not first


def test_one_that_still_reads_is_not_cut_off_when_another_ends_it():
    with engine(1000) as reading:
        with engine(room.KEPT_BYTES + 1):
            pass
        assert reading.sql("select 42 as answer").fetchnumpy()["answer"].tolist() == [42]


def test_it_can_fetch_nothing_from_elsewhere():
    with engine(1000) as reading:
        for name in ("autoinstall_known_extensions", "autoload_known_extensions"):
            assert reading.execute(f"select current_setting('{name}')").fetchone() == (False,)


def test_readings_at_once_give_what_one_gives():
    surveyed, mapping = survey(SCENARIO, LIMIT), mapped(SCENARIO)
    alone = read(surveyed, mapping).currents_a.tolist()
    with ThreadPoolExecutor(4) as pool:
        found = list(pool.map(lambda _: read(surveyed, mapping).currents_a.tolist(), range(12)))
    assert all(each == alone for each in found)
