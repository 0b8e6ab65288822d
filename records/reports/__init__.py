"""From a record to the blocks of a paper; `records/papers.py` says which papers there are, and names these rooms."""
