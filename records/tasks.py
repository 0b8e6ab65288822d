"""What is handed to the worker: one task, which does the job that a row describes."""

from django_tasks import task


@task()
def work(job_pk: int, attempt: int) -> None:
    from records.services import jobs  # the services hand work over, this brings it back to them

    jobs.run(job_pk, attempt)
