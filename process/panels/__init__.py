"""What process adds to a thing's page; importing a module registers its panels."""

from process.panels import care, copies, densities, drying, finishing, gauges, moulds, runs, shells

__all__ = ["care", "copies", "densities", "drying", "finishing", "gauges", "moulds", "runs", "shells"]
