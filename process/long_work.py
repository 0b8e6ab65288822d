"""Long work of the making that the worker does; named, not imported, until there is some."""

from records.extensions import job_kinds

job_kinds["trace"] = "process.services.trace_jobs.work"
job_kinds["scan"] = "process.services.scan_jobs.work"
