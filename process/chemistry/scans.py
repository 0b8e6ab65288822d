"""A scan of the face: its area on the side that is wanted, its volume, and what is wrong with it."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from io import BytesIO
from typing import Any

import numpy as np
from pint import Quantity

from process.chemistry.errors import ChemistryError
from records.units import ureg

MOST_FACES = 2_000_000
MOST_BYTES = 200_000_000
KINDS = ("stl", "obj", "ply")
LENGTH_UNITS = ("mm", "cm", "m", "inch")
# The side that is meant: which way its triangles look.
SIDES = {
    "all": (0, 0, 0), "+x": (1, 0, 0), "-x": (-1, 0, 0), "+y": (0, 1, 0), "-y": (0, -1, 0), "+z": (0, 0, 1),
    "-z": (0, 0, -1),
}  # fmt: skip
FARTHEST = 1e7  # in the file's own unit: beyond, a scanner's points can hardly be told apart
STL_HEAD = 84  # bytes before the first triangle of a binary STL
# What a large scan is at, and the share of its time that is behind it by then.
READING, JOINING, MEASURING = (
    ("reading the triangles", 0.1),
    ("joining their points", 0.4),
    ("measuring the sides", 0.8),
)
Tell = Callable[[str, float], None]


@dataclass(frozen=True)
class Scan:
    """What a mesh tells: the area asked for, and whether its other figures can be believed."""

    area: Quantity
    whole_area: Quantity
    volume: Quantity | None
    face_count: int
    open_edge_count: int
    flipped: bool
    extent_mm: tuple[float, float, float]
    side_areas: dict[str, Quantity]

    @property
    def remarks(self) -> tuple[str, ...]:
        """What a person should know before believing it."""
        holes = "open edges: the surface has a border or holes, so no volume is given; the area is what is there"
        said = [f"{self.open_edge_count:,} {holes}"] if self.open_edge_count else []
        if self.flipped:
            said.append("some triangles look the other way: the chosen side may miss them")
        return tuple(said)


def read_scan(
    content: bytes, name: str, unit: str, side: str = "all", most_faces: int = MOST_FACES, tell: Tell | None = None
) -> Scan:
    """Area, volume and faults of a mesh in an STL, OBJ or PLY file; `tell` hears what is being done.

    Equation: A [dm²] = Σ |(b − a) × (c − a)|/2 over the triangles that look to the chosen side
    Errors: another kind of file; text that pretends to be a mesh; too many faces; no area; an unknown unit or side.
    Source: area of a triangle by the cross product; volume by the divergence theorem, where the surface is closed.

    >>> square = b"v 0 0 0\\nv 100 0 0\\nv 100 100 0\\nv 0 100 0\\nf 1 2 3\\nf 1 3 4\\n"
    >>> round(read_scan(square, "plate.obj", "mm").area.magnitude, 6)
    1.0
    """
    kind = _kind(name)
    if unit not in LENGTH_UNITS:
        raise ChemistryError("unit", f"a file of points says no unit; choose one of {', '.join(LENGTH_UNITS)}")
    if side not in SIDES:
        raise ChemistryError("side", f"choose one of {', '.join(SIDES)}")
    tell = tell or (lambda step, share: None)
    tell(*READING)
    _refuse_early(content, kind, most_faces)
    mesh = _mesh(content, kind, tell)
    if len(mesh.faces) > most_faces:
        raise ChemistryError("scan", _too_many(len(mesh.faces), most_faces))
    tell(*MEASURING)
    return _measured(mesh, unit, side)


def _kind(name: str) -> str:
    kind = name.rpartition(".")[2].lower()
    if kind not in KINDS:
        raise ChemistryError("scan", f"“{name[-40:]}” is no STL, OBJ or PLY file; export the mesh as one of them")
    return kind


def _too_many(count: int, most: int) -> str:
    return f"it has {count:,} faces, more than {most:,}; reduce it in the scanning program, the area hardly changes"


def _refuse_early(content: bytes, kind: str, most_faces: int) -> None:
    """Before anything is built: what is empty, too large, or no mesh at all."""
    if not content.strip():
        raise ChemistryError("scan", "the file is empty; export it again")
    if len(content) > MOST_BYTES:
        raise ChemistryError("scan", f"the file is larger than {MOST_BYTES // 1_000_000} MB; reduce the mesh")
    count = {"stl": _stl_faces, "obj": _obj_faces, "ply": _ply_faces}[kind](content)
    if count > most_faces:
        raise ChemistryError("scan", _too_many(count, most_faces))
    if not count:
        raise ChemistryError("scan", "there is no triangle in it; export the surface, not the points alone")


def _stl_faces(content: bytes) -> int:
    """Binary by its length, else text with its facets; all else only bears the name."""
    if len(content) >= STL_HEAD:
        count = int.from_bytes(content[80:STL_HEAD], "little")
        if len(content) == STL_HEAD + 50 * count:
            return count
    if not content.lstrip()[:5].lower() == b"solid" or b"facet" not in content:
        raise ChemistryError("scan", "it bears the name of an STL file but holds no triangles; export it again")
    return len(re.findall(rb"\bfacet\s+normal\b", content))


def _obj_faces(content: bytes) -> int:
    return len(re.findall(rb"(?m)^\s*f\s", content))


def _ply_faces(content: bytes) -> int:
    found = re.search(rb"element\s+face\s+(\d{1,12})", content[:20_000])
    if not content.startswith(b"ply") or found is None:
        raise ChemistryError("scan", "it bears the name of a PLY file but has not its heading; export it again")
    return int(found.group(1))


def _mesh(content: bytes, kind: str, tell: Tell) -> Any:
    import trimesh  # here, for it is heavy and only a scan needs it

    options = {"skip_materials": True} if kind == "obj" else {}
    try:
        mesh = trimesh.load_mesh(BytesIO(content), file_type=kind, process=False, **options)
        points, faces = np.asarray(mesh.vertices, dtype=float), np.asarray(mesh.faces)
    except Exception as error:  # every reader fails in its own way on a damaged file
        words = f"cannot be read as {kind.upper()} ({type(error).__name__}); export it again"
        raise ChemistryError("scan", words) from error
    _refuse_unsound(points, faces)
    tell(*JOINING)
    mesh = trimesh.Trimesh(points, faces, process=False)
    mesh.merge_vertices()
    return mesh


def _refuse_unsound(points: np.ndarray, faces: np.ndarray) -> None:
    """Points in space, near enough to be told apart, and triangles of points that are there."""
    in_space = points.ndim == faces.ndim == 2 and points.shape[1] == faces.shape[1] == 3
    if not in_space or not len(faces) or faces.min() < 0 or faces.max() >= len(points):
        raise ChemistryError("scan", "its points lack a third number or its triangles lack points; export it again")
    if not np.all(np.abs(points) <= FARTHEST):  # what is no number is not within it either
        far = f"its points are not numbers, or lie farther than {FARTHEST:,.0f} from its origin"
        raise ChemistryError("scan", f"{far}; move the mesh to its origin and export it again")


def _measured(mesh: Any, unit: str, side: str) -> Scan:
    scale = ureg.Quantity(1.0, unit).m_as("mm")
    areas = {towards: _area_towards(mesh, towards) * scale**2 for towards in SIDES}
    if not areas[side] > 0:
        raise ChemistryError("scan", "has no area on that side; choose another side, or export the surface again")
    closed = bool(mesh.is_watertight)
    volume = ureg.Quantity(abs(float(mesh.volume)) * scale**3, "mm**3").to("cm**3") if closed else None
    extent = tuple(float(each) for each in np.asarray(mesh.extents) * scale)
    return Scan(
        area=ureg.Quantity(areas[side], "mm**2").to("dm**2"),
        whole_area=ureg.Quantity(areas["all"], "mm**2").to("dm**2"),
        volume=volume,
        face_count=len(mesh.faces),
        open_edge_count=_open_edges(mesh),
        flipped=not bool(mesh.is_winding_consistent),
        extent_mm=(extent[0], extent[1], extent[2]),
        side_areas={towards: ureg.Quantity(found, "mm**2").to("dm**2") for towards, found in areas.items()},
    )


def _area_towards(mesh: Any, side: str) -> float:
    """In the file’s own unit, squared: of the triangles that look there, or of all."""
    areas = np.asarray(mesh.area_faces)
    looks = np.asarray(mesh.face_normals) @ np.asarray(SIDES[side], dtype=float)
    return float(areas.sum() if side == "all" else areas[looks > 0].sum())


def _open_edges(mesh: Any) -> int:
    """Edges with one triangle only."""
    ends = np.asarray(mesh.edges_sorted, dtype=np.int64)
    edges = np.sort(ends[:, 0] * len(mesh.vertices) + ends[:, 1])  # one number each: rows sort twenty times slower
    changes = np.concatenate([[True], edges[1:] != edges[:-1], [True]])
    return int(np.count_nonzero(changes[1:] & changes[:-1]))
