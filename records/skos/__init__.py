"""The vocabulary as SKOS (W3C, 2009) in Turtle: written, and read with the line of each fault. Pure."""
