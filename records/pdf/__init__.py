"""Papers, labels and charts: pure Python, no Django. Begin with `document.build`."""

# First of all: the canvas must start with an embedded face, or un-embedded Helvetica leaks into every file.
from records.pdf import fonts as fonts
