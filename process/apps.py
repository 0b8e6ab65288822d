from importlib import import_module

from django.apps import AppConfig
from django.db.models.signals import post_migrate

# What adds itself to the register's points of extension.
REGISTERING = (
    "bath_striking", "cards", "care", "checks", "commission_files", "family", "kept_files", "limits", "long_work",
    "lookups", "making_cards", "mass_striking", "means", "panels", "papers", "search", "striking", "surveys",
    "traits",
)  # fmt: skip


class ProcessConfig(AppConfig):
    name = "process"
    verbose_name = "Making"

    def ready(self) -> None:
        from process import seeding

        for name in REGISTERING:
            import_module(f"process.{name}")
        post_migrate.connect(seeding.ensure_ranges, sender=self)
        post_migrate.connect(seeding.ensure_header_words, sender=self)
        post_migrate.connect(seeding.ensure_risk_rules, sender=self)
        post_migrate.connect(seeding.ensure_care_rules, sender=self)
