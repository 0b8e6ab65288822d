"""A logger's trace of a million rows and of five: read, check, integrate, reduce; beside pandas and polars.

Every call runs in a process of its own, in turns, so that caches and a noisy neighbour hit all alike; the peak is the
process's greatest resident memory less what its imports took.
"""

import json
import os
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from statistics import median

import numpy as np

from tests.benchmarks import trace_pages

SIZES = (1_000_000, 5_000_000)
BLOCK = 100_000
WARMING = "small.csv"
OURS, PANDAS, POLARS = "this register", "pandas, C engine: parse and trapezoid", "polars: parse alone"
CALLS = {
    OURS: """
from pathlib import Path
import duckdb
from process.tracing import Context, argue, evaluate, read, reduce, sniff, survey
words = [("time", "timestamp"), ("current", "current"), ("voltage", "cell"), ("temperature", "bath")]
def call(path):
    surveyed = survey(Path(path), 10**12)
    mapping = sniff(surveyed, words).mapping
    case, findings = argue(read(surveyed, mapping), Context(planned_a=0.42))
    found = evaluate(case, findings, {})
    reduce(found.times_s, found.currents_a, 2 * found.interval_s)
    return found.known_ah
""",
    PANDAS: """
import numpy as np
import pandas
def call(path):
    table = pandas.read_csv(path, parse_dates=[0], date_format="ISO8601")
    seconds = table["timestamp_utc"].astype("int64").to_numpy() / 1e6
    return float(np.trapezoid(table["current_A"].to_numpy(), seconds) / 3600)
""",
    POLARS: """
import polars
def call(path):
    return polars.read_csv(path, try_parse_dates=True).height
""",
}
CHILD = """
import json, sys, time
{call}
def peak():  # of this process alone: ru_maxrss begins with the parent's
    with open("/proc/self/status") as status:
        return next(int(line.split()[1]) for line in status if line.startswith("VmHWM"))
call(sys.argv[2])  # what is made once for a process: registries, readers
before = peak()
began, cpu = time.perf_counter(), time.process_time()
answer = call(sys.argv[1])
print(json.dumps([time.perf_counter() - began, time.process_time() - cpu,
                  peak() - before, answer]))
"""


def lines(times: int) -> Iterator[str]:
    yield f"{'trace':<42}{'rows':>10}{'s':>8}{'CPU s':>8}{'ours ×':>8}{'peak MB':>9}{'of file':>9}"
    with tempfile.TemporaryDirectory(prefix="register-traces-") as folder:
        write(Path(folder) / WARMING, 1000)
        for rows in SIZES:
            path = Path(folder) / f"{rows}.csv"
            write(path, rows)
            yield from _table(path, rows, max(3, min(times, 5)))
            yield from trace_pages.lines(path, rows, times)
            path.unlink()


def write(path: Path, rows: int) -> None:
    """Four columns, 46 bytes a row, a sample every tenth of a second."""
    noise = np.random.default_rng(7)
    start = np.datetime64("2026-03-02T14:00:00.000", "ms")
    with path.open("w") as file:
        file.write("timestamp_utc,cell_V,current_A,bath_C\n")
        for first in range(0, rows, BLOCK):
            count = min(BLOCK, rows - first)
            stamps = np.datetime_as_string(start + (first + np.arange(count)) * np.timedelta64(100, "ms"))
            values = noise.normal([0.62, 0.42, 22.0], [0.002, 0.001, 0.1], (count, 3))
            file.writelines(f"{at}Z,{v:.4f},{a:.5f},{c:.2f}\n" for at, (v, a, c) in zip(stamps, values, strict=True))
        file.flush()
        os.fsync(file.fileno())  # else it is written to the disk beside the first readings, and slows them


def _table(path: Path, rows: int, times: int) -> Iterator[str]:
    taken: dict[str, list[list[float]]] = {name: [] for name in CALLS}
    for _ in range(times):
        for name, call in CALLS.items():
            taken[name].append(_once(call, path))
    seconds = {name: median(each[0] for each in found) for name, found in taken.items()}
    size = path.stat().st_size
    for name, found in taken.items():
        cpu, peak = median(each[1] for each in found), median(each[2] for each in found) * 1024
        ratio = seconds[OURS] / seconds[name]
        yield (
            f"{name:<42}{rows:>10}{seconds[name]:>8.2f}{cpu:>8.2f}{ratio:>8.2f}{peak / 1e6:>9.0f}{peak / size:>8.1f}×"
        )


def _once(call: str, path: Path) -> list[float]:
    answer = subprocess.run(
        [sys.executable, "-c", CHILD.replace("{call}", call), str(path), str(path.parent / WARMING)],
        capture_output=True,
        text=True,
        check=True,
    )
    return json.loads(answer.stdout.splitlines()[-1])
