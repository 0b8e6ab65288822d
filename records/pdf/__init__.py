"""Papers, labels and charts: pure Python, no Django. Begin with `document.build`."""

# Before any other part of ReportLab is imported; all of that is left until a paper is made.
from records.pdf import defaults as defaults
