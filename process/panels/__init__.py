"""What process adds to a thing's page; importing a module registers its panels."""

from process.panels import copies, drying, finishing, moulds, runs, shells

__all__ = ["copies", "drying", "finishing", "moulds", "runs", "shells"]
