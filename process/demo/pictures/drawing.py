"""From a name to a finished photograph. Pure."""

from PIL import Image

from process.demo.pictures import light, props, rig, scene
from process.demo.pictures.catalogue import SUBJECTS, Subject

RIG = "rig"
NAMES: tuple[str, ...] = (*SUBJECTS, RIG)


def draw(name: str, *, size_px: int = 1600, number: str | None = None, date_text: str | None = None) -> Image.Image:
    """Draw the picture of that name, 4 : 3, `size_px` wide; the same call gives the same picture."""
    if name == RIG:
        return rig.draw(size_px, number or "D-2026-002", date_text or "16 February 2026")
    if name not in SUBJECTS:
        raise KeyError(f"no picture is called {name!r}; there are {', '.join(NAMES)}")
    subject = SUBJECTS[name]
    image = _photograph(subject, frame_of(name, size_px))
    lines = (subject.view, subject.date_text if date_text is None else date_text)
    return props.lay_out(image, frame_of(name, size_px), number or subject.number, lines)


def frame_of(name: str, size_px: int) -> scene.Frame:
    """How millimetres lie in that picture: `px_per_mm`, and `place_px(x, y)` for a place on the piece."""
    subject = SUBJECTS[name]
    return scene.Frame(size_px, subject.extent_mm, subject.centre, subject.close, subject.unit_mm)


def _photograph(subject: Subject, frame: scene.Frame) -> Image.Image:
    piece = subject.build(frame.piece)
    lamp = light.Lamp()
    lit = light.shade(frame.piece, piece.height, piece.material, lamp)
    for patch, material in piece.patches:
        other = light.shade(frame.piece, piece.height, material, lamp, seed=2)
        lit += (other - lit) * patch[..., None]
    thickness = min(piece.thickness_mm, frame.extent_mm / frame.unit_mm / 12)
    laid = scene.lay(scene.paper(frame), frame, lit, piece.mask, thickness)
    return scene.develop(laid, exposure=subject.exposure)
