"""What process adds to a thing's page; importing a module registers its panels."""

from process.panels import moulds, runs, shells

__all__ = ["moulds", "runs", "shells"]
