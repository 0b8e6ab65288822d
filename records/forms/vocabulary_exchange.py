"""A vocabulary that is handed in: a file first, then the same text with what was seen of it."""

from typing import Any

from django import forms

LARGEST_BYTES = 1024 * 1024


class ExchangeForm(forms.Form):
    file = forms.FileField(
        label="Vocabulary, SKOS in Turtle",
        help_text="A .ttl file of at most 1 MB, as this page exports it or another program does.",
        widget=forms.ClearableFileInput({"accept": ".ttl,text/turtle"}),
    )  # fmt: skip
    text = forms.CharField(required=False, widget=forms.HiddenInput, max_length=LARGEST_BYTES, strip=False)
    seen = forms.CharField(required=False, widget=forms.HiddenInput, max_length=16)

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["file"].required = not self.data.get("text")

    def clean(self) -> dict[str, Any]:
        """`words` and what is left out; a fault of the file stands at the file, with its line."""
        from records.skos.reading import read
        from records.skos.words import NotTaken

        cleaned = super().clean() or self.cleaned_data
        text = self._text(cleaned)
        if text:
            text = text.replace("\r\n", "\n")  # a browser sends every line of a form this way
        if text is None or self.errors:
            return cleaned
        try:
            found = read(text)
        except NotTaken as fault:
            self.add_error("file", str(fault))
            return cleaned
        return cleaned | {"text": text, "words": found.words, "left_out": found.left_out}

    def _text(self, cleaned: dict[str, Any]) -> str | None:
        file = cleaned.get("file")
        if file is None:
            return cleaned.get("text") or None
        if file.size > LARGEST_BYTES:
            self.add_error("file", "The file is larger than 1 MB, more than a vocabulary needs: send the words alone.")
            return None
        try:
            return file.read().decode("utf-8-sig")
        except UnicodeDecodeError:
            self.add_error("file", "The file is not UTF-8, as Turtle is: export it again.")
            return None
