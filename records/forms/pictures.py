"""Choosing among photographs by looking at them: checkboxes and radio buttons with thumbnails."""

from django import forms


class PictureCheckboxes(forms.CheckboxSelectMultiple):
    template_name = "records/_picture_choice.html"


class PictureRadio(forms.RadioSelect):
    template_name = "records/_picture_choice.html"
