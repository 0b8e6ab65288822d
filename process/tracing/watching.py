"""How far duckdb is: it works in a thread of its own, while the one that asked looks at it and tells."""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from typing import Any

LOOK_EVERY_S = 0.25


def fetched(connection: Any, query: str, given: list[str], tell: Callable[[float], None] | None) -> dict[str, Any]:
    """The columns of a query; `tell` hears the share that is done, from the thread that called.

    By `sql`, not `execute`: that hands the rows over as they come, for a third more of work (1,000,000 rows: 280 ms of
    processor time against 210).
    """
    if tell is None:
        connection.execute("set enable_progress_bar = false")  # it would write into the server's output
        return connection.sql(query, params=given).fetchnumpy()
    connection.execute("set enable_progress_bar = true")  # it is counted only where it is shown,
    connection.execute("set enable_progress_bar_print = false")  # but not into the server's output
    with ThreadPoolExecutor(1) as pool:
        work = pool.submit(lambda: connection.sql(query, params=given).fetchnumpy())
        while True:
            try:
                return work.result(timeout=LOOK_EVERY_S)
            except TimeoutError:
                tell(max(0.0, connection.query_progress()) / 100)
