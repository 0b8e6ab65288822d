"""How a form is set on the page: our own partials instead of Django's, found through TEMPLATES."""

from django.forms.renderers import TemplatesSetting


class PaperRenderer(TemplatesSetting):
    """Label above, help under, error beside; for `{{ form }}` and `{{ field.as_field_group }}` alike."""

    form_template_name = "components/_fields.html"
    field_template_name = "components/_field.html"
