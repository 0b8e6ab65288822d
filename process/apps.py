from django.apps import AppConfig
from django.db.models.signals import post_migrate


class ProcessConfig(AppConfig):
    name = "process"
    verbose_name = "Making"

    def ready(self) -> None:
        from process import bath_striking, cards, checks, making_cards, panels, reports, search, seeding, striking  # noqa: F401  (they register themselves)

        post_migrate.connect(seeding.ensure_ranges, sender=self)
        post_migrate.connect(seeding.ensure_header_words, sender=self)
        post_migrate.connect(seeding.ensure_risk_rules, sender=self)
