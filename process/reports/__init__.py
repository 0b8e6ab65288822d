"""The process report of a copy and the bench sheet of a run; importing this package registers them."""

from process.reports import bench_sheet, report

__all__ = ["bench_sheet", "report"]
