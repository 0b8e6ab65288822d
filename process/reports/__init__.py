"""The process report of a copy, the bench sheet of a run, the diary of a bath; `process/papers.py` names them."""
