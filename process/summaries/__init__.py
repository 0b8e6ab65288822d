"""The bridge: rows to quantities, chemistry, and dataclasses for pages and papers."""
