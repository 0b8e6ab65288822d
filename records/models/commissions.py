"""A request for copies, and what allows and shapes it: consent, risk assessment, specification."""

from django.db import models
from django.db.models import F, OuterRef, Q, Subquery, Value
from django.urls import reverse

from records.clock import day_words

from .base import Signed, Tracked, TrackedQuerySet
from .json_rows import JsonRows


class Commission(Tracked):
    number = models.CharField(max_length=40, unique=True)
    requested_on = models.DateField()
    requester = models.ForeignKey("records.Party", models.PROTECT, related_name="commissions")
    purpose = models.ForeignKey(
        "records.Term", models.PROTECT, related_name="+", limit_choices_to={"scheme": "purpose"}
    )
    purpose_words = models.TextField("purpose in words", blank=True)
    originals = models.ManyToManyField("records.Item", related_name="commissions")
    quantity_count = models.PositiveSmallIntegerField("copies wanted", default=1)
    needed_by = models.DateField(null=True, blank=True)
    place_of_use = models.CharField("where it will live", max_length=200, blank=True)
    likeness = models.TextField("must look or feel like", blank=True)
    copies = models.ManyToManyField("records.Item", blank=True, related_name="made_for", editable=False)
    closed_on = models.DateField(null=True, blank=True, editable=False)

    class Meta:
        ordering = ["-number"]

    def get_absolute_url(self) -> str:
        return reverse("commission", args=[self.number])

    def __str__(self) -> str:
        return self.number


class ConsentQuerySet(TrackedQuerySet):
    def with_commissions(self) -> "ConsentQuerySet":
        """Whom it comes from, and the keys of the commissions that it names, with the same question."""
        named = Consent.commissions.through.objects.filter(consent=OuterRef("pk")).order_by()
        keys = named.annotate(one=Value(1)).values("one").annotate(keys=JsonRows("commission_id")).values("keys")
        return self.select_related("owner", "given_by").annotate(named_commissions=Subquery(keys))


class Consent(Tracked):
    class MouldFate(models.TextChoices):
        KEEP = "keep", "kept by the museum"
        RETURN = "return", "returned to the owner"
        DESTROY = "destroy", "destroyed before a witness"

    class Technique(models.TextChoices):
        HOLLOW = "hollow", "hollow, off a mould"
        CORE = "core", "skin on a core"
        MATRIX = "matrix", "matrix, a negative that is kept"
        FACING = "facing", "plate facing"

    objects = ConsentQuerySet.as_manager()

    owner = models.ForeignKey("records.Party", models.PROTECT, related_name="consents")
    given_by = models.ForeignKey(
        "records.Party", models.PROTECT, related_name="+", help_text="Who signed for the owner."
    )
    authority = models.CharField("authority to sign", max_length=200, blank=True)
    given_on = models.DateField()
    valid_from = models.DateField()
    valid_to = models.DateField(null=True, blank=True)
    items = models.ManyToManyField("records.Item", related_name="consents", verbose_name="objects")
    commissions = models.ManyToManyField(Commission, related_name="consents", blank=True)

    techniques = models.CharField("techniques, in the owner’s words", max_length=200, blank=True)
    techniques_allowed = models.JSONField("techniques allowed", default=list, blank=True)
    materials_barred = models.CharField("materials barred, in the owner’s words", max_length=200, blank=True)
    # Words of the museum's lists as they stood when the owner agreed; in the row, so that its history keeps them.
    materials_allowed = models.JSONField("only these mould materials", default=list, blank=True)
    materials_excluded = models.JSONField("none of these mould materials", default=list, blank=True)
    purposes = models.JSONField("purposes allowed", default=list, blank=True)
    temperature_max_degc = models.FloatField("highest temperature", null=True, blank=True)
    pulls_max_count = models.PositiveSmallIntegerField("pulls allowed of each mould", null=True, blank=True)
    copies_max_count = models.PositiveSmallIntegerField("copies allowed", null=True, blank=True)
    sale_allowed = models.BooleanField("sale allowed", default=False)
    scan_allowed = models.BooleanField("scan allowed", default=False)
    presence_required = models.BooleanField("owner or conservator present at moulding", default=False)
    mould_fate = models.CharField(
        "what becomes of the moulds", max_length=20, choices=MouldFate, default=MouldFate.KEEP
    )
    mould_fate_by = models.DateField("by when", null=True, blank=True)
    label_wording = models.CharField("wording the label must have", max_length=300, blank=True)
    credit = models.CharField("credit line", max_length=300, blank=True)
    rights = models.TextField("copyright and coin-law check", blank=True)
    conditions = models.TextField("conditions in the owner’s words", blank=True)

    class Meta:
        ordering = ["-given_on"]
        constraints = [
            models.CheckConstraint(
                condition=Q(valid_to__isnull=True) | Q(valid_to__gte=F("valid_from")),
                name="consent_ends_after_start",
                violation_error_message="The consent ends before it begins: correct one of the two dates.",
            )
        ]

    def get_absolute_url(self) -> str:
        return reverse("consent", args=[self.pk])

    def __str__(self) -> str:
        return f"Consent of {self.owner}, {day_words(self.given_on)}"

    @property
    def commission_keys(self) -> set[int]:
        """The commissions it was given for; none, and it was given for any."""
        if hasattr(self, "named_commissions"):
            return set(self.named_commissions or [])
        return {commission.pk for commission in self.commissions.all()}

    def in_force_on(self, day) -> bool:
        return self.valid_from <= day and (self.valid_to is None or day <= self.valid_to)


class RiskAssessment(Tracked, Signed):
    class Decision(models.TextChoices):
        DIRECT = "direct", "direct mould"
        BARRIER = "barrier", "direct with barrier"
        CONDITIONS = "conditions", "direct with conditions"
        ONE_SIDE = "one_side", "mould one side only"
        INDIRECT = "indirect", "indirect route"
        REFUSE = "refuse", "refuse"

    number = models.CharField(max_length=40, unique=True)
    item = models.ForeignKey("records.Item", models.PROTECT, related_name="risk_assessments")
    commission = models.ForeignKey(Commission, models.PROTECT, null=True, blank=True, related_name="risk_assessments")
    assessed_on = models.DateField()
    assessor = models.ForeignKey("records.Party", models.PROTECT, related_name="+")
    surface = models.TextField("materials and surface layers")
    deterioration = models.CharField(
        "active deterioration",
        max_length=10,
        choices=[("no", "no"), ("yes", "yes"), ("unknown", "unknown")],
        default="unknown",
    )
    # Words of the list of surfaces, in the row so that its history keeps them; each layer that may be touched.
    surfaces = models.JSONField("kinds of surface", default=list, blank=True)
    mould_material = models.ForeignKey(
        "records.Term", models.PROTECT, null=True, blank=True, related_name="+",
        limit_choices_to={"scheme": "mould_material"}, verbose_name="mould material proposed",
    )  # fmt: skip
    barrier = models.CharField("barrier or release proposed", max_length=200, blank=True)
    porosity_count = models.PositiveSmallIntegerField("porosity 0–3", null=True, blank=True)
    undercut_count = models.PositiveSmallIntegerField("depth of undercuts 0–3", null=True, blank=True)
    weakness_count = models.PositiveSmallIntegerField("thin, weak or loose parts 0–3", null=True, blank=True)
    repairs_count = models.PositiveSmallIntegerField("old repairs 0–3", null=True, blank=True)
    sensitivities = models.JSONField("suffers from", default=list, blank=True)
    probability_count = models.PositiveSmallIntegerField("probability 1–5", null=True, blank=True)
    consequence_count = models.PositiveSmallIntegerField("consequence 1–5", null=True, blank=True)
    probability_after_count = models.PositiveSmallIntegerField("probability with controls 1–5", null=True, blank=True)
    consequence_after_count = models.PositiveSmallIntegerField("consequence with controls 1–5", null=True, blank=True)
    test_patch = models.TextField("test patch: place, material, time", blank=True)
    patch_result = models.CharField(
        "result of the patch", max_length=10, blank=True, choices=[("passed", "passed"), ("failed", "failed")]
    )
    patch_on = models.DateField("tested on", null=True, blank=True)
    all_the_same = models.TextField("why all the same", blank=True)
    decision = models.CharField(max_length=20, choices=Decision)
    reason = models.TextField()
    conditions = models.TextField(blank=True)

    class Meta:
        ordering = ["-assessed_on"]

    def get_absolute_url(self) -> str:
        return reverse("risk", args=[self.number])

    def __str__(self) -> str:
        return f"{self.number} {self.get_decision_display()}"


METALS = {"Cu2+": "copper", "Ag+": "silver", "Ni2+": "nickel", "Fe2+": "iron", "Au3+": "gold"}


class Specification(Tracked, Signed):
    commission = models.ForeignKey(Commission, models.PROTECT, related_name="specifications")
    item = models.ForeignKey("records.Item", models.PROTECT, related_name="specifications", verbose_name="model")
    technique = models.CharField(
        max_length=20,
        choices=[("hollow", "hollow"), ("core", "on a core"), ("matrix", "matrix"), ("facing", "plate facing")],
    )
    metal_ion = models.CharField("metal", max_length=8, default="Cu2+")
    thickness_mean_mm = models.FloatField("mean thickness")
    thickness_min_mm = models.FloatField("least thickness anywhere")
    finish = models.CharField(max_length=200, blank=True)
    fill = models.CharField("fill or backing", max_length=200, blank=True)
    mark_words = models.CharField("marks: text, place, method", max_length=300, blank=True)
    size_low_pct = models.FloatField("size against the model, from", null=True, blank=True)
    size_high_pct = models.FloatField("size against the model, to", null=True, blank=True)
    points_count = models.PositiveSmallIntegerField("thickness points, at least", null=True, blank=True)
    bends_count = models.PositiveSmallIntegerField("bends of the coupon, at least", null=True, blank=True)
    tests = models.TextField("other acceptance tests", blank=True)

    class Meta:
        ordering = ["id"]

    @property
    def metal(self) -> str:
        return METALS.get(self.metal_ion, self.metal_ion)

    def get_absolute_url(self) -> str:
        return f"{reverse('specification_list', args=[self.commission.number])}#specification-{self.pk}"

    def __str__(self) -> str:
        return f"Specification for {self.commission}"
