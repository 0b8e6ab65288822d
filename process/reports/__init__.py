"""The process report of a copy, the bench sheet of a run, the diary of a bath; they register themselves."""

from process.reports import bath_diary, bench_sheet, report

__all__ = ["bath_diary", "bench_sheet", "report"]
