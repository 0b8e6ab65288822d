"""The process report of a copy; importing this package registers it."""

from process.reports import report

__all__ = ["report"]
