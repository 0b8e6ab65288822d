"""Papers, labels and charts: pure Python, no Django. Begin with `document.build`."""

# In this order and before any canvas exists: first the defaults, then the faces that they name.
from records.pdf import defaults as defaults
from records.pdf import fonts as fonts
