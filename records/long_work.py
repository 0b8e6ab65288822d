"""Long work of the register that the worker does; named, not imported, until there is some."""

from records.extensions import job_kinds

job_kinds["tags"] = "records.services.tag_jobs.work"
