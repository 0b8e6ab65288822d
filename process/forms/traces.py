"""A logger's trace: the file, how it is to be read, and what is decided about what it says against itself."""

import hashlib
from typing import Any

from django import forms
from django.conf import settings

from process.models import HeaderWord, Trace
from process.summaries.traces import choice_of, overlapping
from records.forms.base import RecordForm
from records.forms.conflicts import AsItStood
from records.forms.tokens import UuidTokenField
from records.units import show


class TraceUploadForm(forms.Form):
    file = forms.FileField(
        label="File of the logger or power unit", max_length=255,
        error_messages={
            "required": "Choose the file that the logger wrote: text with a line for each sample.",
            "empty": "The file is empty: export the trace again.",
        },
    )  # fmt: skip
    token = UuidTokenField()

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        most = settings.TRACE_LIMIT_BYTES / 1e6
        self.fields["file"].help_text = f"CSV or other delimited text, up to {most:,.0f} MB. It is kept byte for byte."


class DecisionsForm(AsItStood):
    """A choice for each finding; what each makes of the charge stands beside it.

    The entry is named by the finding itself: a page that was opened before others decided cannot answer another one.
    """

    def __init__(self, *args: Any, trace: Trace, said: dict[str, Any] | None = None, **kwargs: Any) -> None:
        """`said` is what was sent before and could not be kept: it stands in the form again."""
        said = said or {}
        kept = {name: said[name] for name in ("reason", "ruling") if said.get(name)}
        self.trace = self.stands = trace
        super().__init__(*args, initial=kept, **kwargs)
        accepting = not self.is_bound or "accept" in self.data
        for finding in trace.findings:
            self.fields[entry_of(finding)] = forms.ChoiceField(
                label=finding["sentence"], choices=[(c["key"], _label(c)) for c in finding["choices"]],
                widget=forms.RadioSelect, required=False,
                initial=said.get("decisions", {}).get(finding["key"]) or choice_of(trace, finding),
            )  # fmt: skip
        self.others = overlapping(trace)
        if self.others:
            names = " and ".join(other.original_name for other in self.others)
            self.fields["ruling"] = forms.ChoiceField(
                label=f"It overlaps with {names}. In the overlap counts", required=accepting, widget=forms.RadioSelect,
                choices=[("this", "this trace"), ("other", names)],
                error_messages={"required": "Choose which of them counts there: both together would count it twice."},
            )  # fmt: skip
        self.fields["reason"] = forms.CharField(
            label="Why it is believed so",
            required=accepting,
            max_length=300,
            help_text="“22:20 is a slip of the point: the voltage did not move.” Needed to accept it.",
            error_messages={"required": "Say why it is believed so: the figure follows from your decisions."},
        )

    @property
    def findings(self) -> list[tuple[forms.BoundField, dict]]:
        return [(self[entry_of(finding)], finding) for finding in self.trace.findings]

    @property
    def decisions(self) -> dict[str, str]:
        chosen = {each["key"]: self.cleaned_data.get(entry_of(each), "") for each in self.trace.findings}
        return {key: choice for key, choice in chosen.items() if choice}


def entry_of(finding: dict) -> str:
    """The name of a finding's entry in the form."""
    return f"finding-{hashlib.sha256(finding['key'].encode()).hexdigest()[:12]}"


def _label(choice: dict) -> str:
    """“leave out → 8.44 Ah (−1.26 Ah)”."""
    if choice.get("charge_ah") is None:
        return choice["label"]
    effect = choice["effect_ah"]
    change = f" ({'+' if effect > 0 else '−'}{show(abs(effect), '_ah')})" if abs(effect) >= 5e-5 else ""
    return f"{choice['label']} → {show(choice['charge_ah'], '_ah')}{change}"


class WithdrawForm(forms.Form):
    reason = forms.CharField(
        max_length=300, label="Why it is withdrawn", help_text="“Logger of another tank.”",
        error_messages={"required": "Say why: evidence that vanishes without a reason proves nothing."},
    )  # fmt: skip


class HeaderWordForm(RecordForm):
    class Meta:
        model = HeaderWord
        fields = ["word", "meaning"]
        help_texts = {
            "word": "As it stands above the column, without its unit; a single letter must be the whole name."
        }

    def clean_word(self) -> str:
        return " ".join(self.cleaned_data["word"].casefold().split())
