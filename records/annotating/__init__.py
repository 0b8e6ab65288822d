"""PURE. What is drawn on a picture, and how open standards write it (W3C Web Annotation, IIIF Presentation 3)."""
