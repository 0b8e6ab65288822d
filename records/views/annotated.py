"""A report's drawings in open standards: Web Annotations, and a manifest for viewers of pictures."""

from django.http import Http404, HttpRequest, JsonResponse
from django.urls import path

from records import access, annotated
from records.views.condition_page import REPORTS

ANNOTATION_TYPE = 'application/ld+json; profile="http://www.w3.org/ns/anno.jsonld"'
MANIFEST_TYPE = 'application/ld+json; profile="http://iiif.io/api/presentation/3/context.json"'
INDENT = {"indent": 1, "ensure_ascii": False}


def condition_annotations(request: HttpRequest, number: str) -> JsonResponse:
    report = access.fetch(request, REPORTS, number=number)
    said = annotated.annotations(report, request.build_absolute_uri)
    return JsonResponse(said, content_type=ANNOTATION_TYPE, json_dumps_params=INDENT)


def condition_manifest(request: HttpRequest, number: str) -> JsonResponse:
    report = access.fetch(request, REPORTS, number=number)
    said = annotated.iiif_manifest(report, request.build_absolute_uri)
    if not said["items"]:
        raise Http404(f"{number} has no photographs, and a manifest shows nothing else: choose some for the report.")
    return JsonResponse(said, content_type=MANIFEST_TYPE, json_dumps_params=INDENT)


urls = [
    path("condition/<str:number>/annotations.json", condition_annotations, name="condition_annotations"),
    path("condition/<str:number>/manifest.json", condition_manifest, name="condition_manifest"),
]
