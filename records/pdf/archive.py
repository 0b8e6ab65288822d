"""The last step of a paper: PDF/A-3b with the record attached, the same bytes for the same inputs.

ISO 19005-3: output intent 6.2.3, annotation flags 6.3.2, metadata 6.6.2, embedded files 6.8.
"""

from dataclasses import dataclass
from datetime import UTC, datetime
from io import BytesIO

import pikepdf
from pikepdf import Array, AttachedFileSpec, Dictionary, Name
from PIL import ImageCms

ATTACHMENT = "record.json"
PRINT_FLAG = 4


@dataclass(frozen=True)
class Description:
    """What the file says about itself."""

    title: str
    author: str
    subject: str
    language: str
    issued_at: datetime


def _srgb() -> bytes:
    profile = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    profile[24:36] = bytes((7, 0xE8, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0))  # its making date, else the bytes change
    return bytes(profile)


def _add_output_intent(pdf: pikepdf.Pdf) -> None:
    profile = pdf.make_stream(_srgb(), N=3, Alternate=Name.DeviceRGB)
    intent = Dictionary(
        Type=Name.OutputIntent,
        S=Name.GTS_PDFA1,
        OutputConditionIdentifier="sRGB IEC61966-2.1",
        Info="sRGB IEC61966-2.1",
        DestOutputProfile=profile,
    )
    pdf.Root.OutputIntents = Array([pdf.make_indirect(intent)])


def _describe(pdf: pikepdf.Pdf, about: Description) -> None:
    stamp = about.issued_at.astimezone(UTC)
    instant = stamp.strftime("%Y-%m-%dT%H:%M:%S+00:00")
    for key, value in (("/Title", about.title), ("/Author", about.author), ("/Subject", about.subject)):
        pdf.docinfo[Name(key)] = value
    if Name.Trapped in pdf.docinfo:
        del pdf.docinfo[Name.Trapped]  # it has no counterpart in XMP
    pdf.docinfo[Name.Creator] = "Electrotype Register"
    for name in (Name.CreationDate, Name.ModDate):
        pdf.docinfo[name] = stamp.strftime("D:%Y%m%d%H%M%S+00'00'")
    with pdf.open_metadata(set_pikepdf_as_editor=False, update_docinfo=False) as meta:
        meta.load_from_docinfo(pdf.docinfo)
        meta["pdfaid:part"], meta["pdfaid:conformance"] = "3", "B"
        meta["dc:language"] = {about.language}
        meta["xmp:CreateDate"] = meta["xmp:ModifyDate"] = meta["xmp:MetadataDate"] = instant
    pdf.Root.Lang = about.language
    pdf.Root.ViewerPreferences = Dictionary(DisplayDocTitle=True)


def _attach(pdf: pikepdf.Pdf, attached: bytes, issued_at: datetime) -> None:
    stamp = issued_at.astimezone(UTC).strftime("D:%Y%m%d%H%M%S+00'00'")
    spec = AttachedFileSpec(
        pdf,
        attached,
        filename=ATTACHMENT,
        description="The record behind this paper",
        mime_type="application/json",
        relationship=Name.Data,
        creation_date=stamp,
        mod_date=stamp,
    )
    pdf.attachments[ATTACHMENT] = spec
    pdf.Root.AF = Array([pdf.attachments[ATTACHMENT].obj])


def finish(raw: bytes, about: Description, attached: bytes | None = None) -> bytes:
    """Turn a ReportLab file into PDF/A-3b; `attached` is embedded unchanged as record.json."""
    out = BytesIO()
    with pikepdf.open(BytesIO(raw)) as pdf:
        _add_output_intent(pdf)
        _describe(pdf, about)
        if attached is not None:
            _attach(pdf, attached, about.issued_at)
        for page in pdf.pages:
            for annotation in page.get("/Annots", []):
                annotation.F = PRINT_FLAG
        pdf.save(out, deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.generate)
    return out.getvalue()
