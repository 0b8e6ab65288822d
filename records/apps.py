from django.apps import AppConfig
from django.db.models.signals import post_migrate


class RecordsConfig(AppConfig):
    name = "records"
    verbose_name = "Register"

    def ready(self) -> None:
        from records import cards, checks, kept_files, long_work, papers, seeding  # noqa: F401  (they register themselves)
        from records.forms.wording import use_own_words

        use_own_words()
        post_migrate.connect(seeding.ensure_roles, sender=self)
        post_migrate.connect(seeding.ensure_vocabulary, sender=self)
