"""A photograph on paper with what was found drawn on it: numbered shapes, patterns that a photocopy keeps, a legend."""
