from django.apps import AppConfig
from django.db.models.signals import post_migrate


class RecordsConfig(AppConfig):
    name = "records"
    verbose_name = "Register"

    def ready(self) -> None:
        from records.forms.wording import use_own_words

        use_own_words()  # before any form is imported

        from records import (  # noqa: F401  (they register themselves)
            cards,
            checks,
            giving_up,
            handing,
            kept_files,
            leaving,
            long_work,
            papers,
            seeding,
            unfinished_cards,
        )

        post_migrate.connect(seeding.ensure_roles, sender=self)
        post_migrate.connect(seeding.ensure_vocabulary, sender=self)
        post_migrate.connect(seeding.ensure_compatibility, sender=self)
        post_migrate.connect(seeding.ensure_survey_rules, sender=self)
