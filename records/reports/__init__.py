"""From a record to the blocks of a paper; importing this package registers the register's own papers."""

from records.reports import condition, labels, tags

__all__ = ["condition", "labels", "tags"]
