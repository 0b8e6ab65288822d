"""A concession names things; runs and pulls no longer name concessions.

No page ever set these columns. What a script may have set is carried over to the things that they stand for.
"""

from django.db import migrations


def name_the_things(apps, schema_editor):
    Shell, Pull = apps.get_model("process", "Shell"), apps.get_model("process", "Pull")
    for shell in Shell.objects.filter(cathode__run__concessions__isnull=False).distinct():
        for concession in shell.cathode.run.concessions.all():
            concession.items.add(shell.item_id)
    for pull in Pull.objects.filter(concession__isnull=False).select_related("mould", "concession"):
        pull.concession.items.add(pull.mould.item_id)


class Migration(migrations.Migration):
    dependencies = [
        ("process", "0003_traces"),
        ("records", "0003_concession_checks"),
    ]

    operations = [
        migrations.RunPython(name_the_things, migrations.RunPython.noop),
        migrations.RemoveField(model_name="historicalpull", name="concession"),
        migrations.RemoveField(model_name="pull", name="concession"),
        migrations.RemoveField(model_name="run", name="concessions"),
    ]
