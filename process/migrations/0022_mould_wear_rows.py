"""What stood as text about a mould's wear becomes a row of its own."""

from django.db import migrations


def carry_over(apps, schema_editor) -> None:
    Mould, MouldWear = (apps.get_model("process", name) for name in ("Mould", "MouldWear"))
    for mould in Mould.objects.exclude(wear=""):
        MouldWear.objects.create(mould=mould, feature=mould.wear)


def carry_back(apps, schema_editor) -> None:
    MouldWear = apps.get_model("process", "MouldWear")
    for row in MouldWear.objects.filter(struck_at__isnull=True).select_related("mould"):
        row.mould.wear = "\n".join(filter(None, [row.mould.wear, row.feature]))
        row.mould.save()


class Migration(migrations.Migration):
    dependencies = [("process", "0021_mould_care")]

    operations = [migrations.RunPython(carry_over, carry_back)]
