"""Taking the time of one call, often enough that a neighbour's work does not decide."""

from collections.abc import Callable
from statistics import median
from time import perf_counter


def median_ms(call: Callable[[], object], times: int) -> float:
    """The middle one of so many; the first, which fills caches, is not counted."""
    call()
    return median(_once_ms(call) for _ in range(times))


def _once_ms(call: Callable[[], object]) -> float:
    began = perf_counter()
    call()
    return (perf_counter() - began) * 1000
