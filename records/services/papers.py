"""Issuing papers: the PDF is built outside the transaction, stored once, and kept when a later version comes."""

import hashlib
import os
import tempfile
from pathlib import Path
from typing import Any

from django.conf import settings
from django.core.exceptions import ValidationError
from django.db import transaction

from records import clock, extensions, sentences
from records.models import Commission, Document, Item, Party
from records.pdf.attachment import digest, record_bytes
from records.wording import file_name


def issue(*, kind: str, subject: Any, party: Party, role: str, page_size: str = "A4") -> Document:
    """Build, store and record the next version of a paper; refused with the reasons where a rule forbids it."""
    paper = extensions.paper_kinds[kind]
    if refusals := paper.refusals(subject):
        raise ValidationError(refusals)
    edition = Document.objects.filter(kind=kind, number=subject.number).count() + 1
    context = extensions.PaperContext(edition, clock.now(), party.name, role, page_size)
    pdf, record = paper.build(subject, context)
    item = subject if isinstance(subject, Item) else getattr(subject, "item", None)
    stem = file_name(subject.number, paper.title, sentences.WORDS.get(item.kind, "") if item else "")
    name = _free_name(f"{stem}-v{edition}", pdf)
    temporary = _write_beside(name, pdf)
    try:
        with transaction.atomic():
            document = Document.objects.create(
                kind=kind,
                number=subject.number,
                edition_count=edition,
                title=_title(paper.title, subject, item),
                item=item,
                commission=subject if isinstance(subject, Commission) else getattr(subject, "commission", None),
                issued_at=context.issued_at,
                issued_by=party,
                signed_by=party,
                signed_role=role,
                signed_at=context.issued_at,
                path=name,
                sha256=hashlib.sha256(pdf).hexdigest(),
                size_bytes_count=len(pdf),
                record_sha256=digest(record_bytes(record)),  # of the very bytes that are attached
            )
            temporary.replace(settings.DOCUMENTS_DIR / name)
    except BaseException:
        if not temporary.exists():
            (settings.DOCUMENTS_DIR / name).unlink(missing_ok=True)  # in its place already, and not recorded
        temporary.unlink(missing_ok=True)
        raise
    return document


def _title(kind: str, subject: Any, item: Item | None) -> str:
    """“Process report, copy R.2026.1”, “Condition report CR-2026-09, copy R.2026.5”, “Bath diary B-01”."""
    named = sentences.named(item, "" if subject is item else subject.number) if item else ""
    return f"{kind}{', ' if named and subject is item else ' '}{named or subject.number}"


def _free_name(stem: str, pdf: bytes) -> str:
    """Two numbers may read alike in plain letters (“OVM 1”, “OVM-1”): each paper keeps a file of its own."""
    name = f"{stem}.pdf"
    if Document.objects.filter(path=name).exists():
        return f"{stem}-{hashlib.sha256(pdf).hexdigest()[:12]}.pdf"
    return name


def _write_beside(name: str, content: bytes) -> Path:
    """A temporary file in the papers' own folder, so that moving it into place is one step."""
    settings.DOCUMENTS_DIR.mkdir(parents=True, exist_ok=True)
    descriptor, path = tempfile.mkstemp(prefix=".issuing-", suffix=Path(name).suffix, dir=settings.DOCUMENTS_DIR)
    with os.fdopen(descriptor, "wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
    return Path(path)


def path_of(document: Document) -> Path:
    return settings.DOCUMENTS_DIR / document.path
