"""The pictures that the demo can draw, by name, with the number on the card unless another is given. Pure."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from process.demo.pictures import coin, edges, face_mask, grown, materials, medals, moulded, plate, ship
from process.demo.pictures import pieces as p
from process.demo.pictures.field import Field


@dataclass(frozen=True)
class Subject:
    """One picture: what to build, how much of it is seen, what the card says."""

    build: Callable[[Field], p.Piece]
    extent_mm: float
    number: str
    view: str
    date_text: str
    centre: tuple[float, float] = (0.0, 0.0)
    close: bool = False
    unit_mm: float = 1.0
    exposure: float = 1.0


MEDAL_MM, FLANGE_MM = medals.DIAMETER_MM, 5.6
COPY_MM, SHELL_VIEW_MM, MOULD_VIEW_MM = 58.34, 75.0, 79.0
_medal_copy = partial(p.copy, diameter_mm=COPY_MM, material=materials.COPY_BRONZE)
_touch_copy = partial(p.copy, diameter_mm=58.35, material=materials.LACQUERED_COPPER)
_shell = partial(grown.shell, diameter_mm=MEDAL_MM, flange_mm=FLANGE_MM)
_failed = partial(grown.failed_shell, diameter_mm=MEDAL_MM, flange_mm=FLANGE_MM)
_coin_shell = partial(grown.shell, diameter_mm=coin.DIAMETER_MM, flange_mm=3.6)
_ship_shell = partial(grown.shell, diameter_mm=ship.DIAMETER_MM, flange_mm=4.6)
_coin_copy = partial(p.copy, diameter_mm=31.19, material=materials.SILVERED, thickness_mm=2.0)
_ship_copy = partial(p.copy, diameter_mm=44.78, material=materials.COPY_BRONZE)
_medal_mould = partial(moulded.mould, diameter_mm=MEDAL_MM)
_coin_mould = partial(moulded.mould, diameter_mm=coin.DIAMETER_MM)
_ship_mould = partial(moulded.mould, diameter_mm=ship.DIAMETER_MM)
_marked_coin = partial(coin.obverse, mark=coin.COPY_MARK)

SUBJECTS: dict[str, Subject] = {
    "medal_obverse": Subject(
        p.cast_medal(medals.obverse, knocked_h=4), 60.4, "OVM.1931.0044", "obverse", "3 February 2026"
    ),
    "medal_reverse": Subject(p.cast_medal(medals.reverse), 60.4, "OVM.1931.0044", "reverse", "3 February 2026"),
    "medal_edge_knock": Subject(
        p.cast_medal(medals.obverse, knocked_h=4),
        15.0,
        "OVM.1931.0044",
        "edge knock, 4 h",
        "3 February 2026",
        (22.6, -13.0),
        close=True,
    ),
    "mould_obverse": Subject(_medal_mould(medals.obverse), MOULD_VIEW_MM, "M-2026-01", "obverse", "4 February 2026"),
    "mould_obverse_torn": Subject(
        _medal_mould(medals.obverse, torn=True),
        MOULD_VIEW_MM,
        "M-2026-01",
        "rim tear, pull 3",
        "19 March 2026",
    ),
    "mould_reverse": Subject(
        _medal_mould(medals.marked_reverse), MOULD_VIEW_MM, "M-2026-02", "reverse", "4 February 2026"
    ),
    "mould_obverse_coated": Subject(
        _medal_mould(medals.obverse, coated=True), MOULD_VIEW_MM, "M-2026-01", "coated", "15 February 2026"
    ),
    "mould_reverse_coated": Subject(
        _medal_mould(medals.marked_reverse, coated=True),
        MOULD_VIEW_MM,
        "M-2026-02",
        "coated",
        "15 February 2026",
    ),
    "shell_obverse": Subject(
        _shell(medals.obverse, seed=101), SHELL_VIEW_MM, "S-03", "contact face", "18 February 2026"
    ),
    "shell_reverse": Subject(
        _shell(medals.marked_reverse, seed=102), SHELL_VIEW_MM, "S-04", "contact face", "18 February 2026"
    ),
    "failed_shell_obverse": Subject(
        _failed(medals.obverse, seed=103), SHELL_VIEW_MM, "S-01", "scrap", "11 February 2026", exposure=1.15
    ),
    "failed_shell_reverse": Subject(
        _failed(medals.marked_reverse, seed=104),
        SHELL_VIEW_MM,
        "S-02",
        "scrap",
        "11 February 2026",
        exposure=1.15,
    ),
    "copy_obverse": Subject(_medal_copy(medals.obverse), 60.4, "R.2026.1", "obverse", "2 March 2026"),
    "copy_reverse": Subject(_medal_copy(medals.marked_reverse), 60.4, "R.2026.1", "reverse", "2 March 2026"),
    "copy_mark": Subject(
        _medal_copy(medals.marked_reverse), 17.0, "R.2026.1", "mark", "2 March 2026", (0.0, -23.4), close=True
    ),
    "touch_copy_obverse": Subject(_touch_copy(medals.obverse), 60.4, "R.2026.4", "obverse", "30 March 2026"),
    "touch_copy_reverse": Subject(_touch_copy(medals.marked_reverse), 60.4, "R.2026.4", "reverse", "30 March 2026"),
    "lightship_obverse": Subject(p.lightship(ship.obverse, powder_h=7), 46.6, "R.1889.7", "obverse", "4 March 2026"),
    "lightship_reverse": Subject(p.lightship(ship.reverse), 46.6, "R.1889.7", "reverse", "4 March 2026"),
    "lightship_edge": Subject(edges.lightship_edge, 12.0, "R.1889.7", "edge, 3 h", "4 March 2026", close=True),
    "lightship_powder": Subject(
        p.lightship(ship.obverse, powder_h=7),
        11.0,
        "R.1889.7",
        "seam, 7 h",
        "4 March 2026",
        (-9.6, -17.6),
        close=True,
    ),
    "lightship_mould_obverse": Subject(_ship_mould(ship.obverse), 64.0, "M-2026-05", "obverse", "5 March 2026"),
    "lightship_mould_reverse": Subject(_ship_mould(ship.marked_reverse), 64.0, "M-2026-06", "reverse", "5 March 2026"),
    "lightship_shell_obverse": Subject(
        _ship_shell(ship.obverse, seed=107), 58.5, "S-07", "contact face", "11 March 2026"
    ),
    "lightship_shell_reverse": Subject(
        _ship_shell(ship.marked_reverse, seed=108), 58.5, "S-08", "contact face", "11 March 2026"
    ),
    "lightship_copy_obverse": Subject(_ship_copy(ship.obverse), 46.6, "R.2026.3", "obverse", "27 March 2026"),
    "lightship_copy_reverse": Subject(_ship_copy(ship.marked_reverse), 46.6, "R.2026.3", "reverse", "27 March 2026"),
    "coin_obverse": Subject(p.old_coin(coin.obverse, gilt=True), 32.6, "L.2026.003", "obverse", "24 February 2026"),
    "coin_reverse": Subject(p.old_coin(coin.reverse), 32.6, "L.2026.003", "reverse", "24 February 2026"),
    "coin_mould_obverse": Subject(_coin_mould(_marked_coin), 50.5, "M-2026-03", "obverse", "25 February 2026"),
    "coin_mould_reverse": Subject(_coin_mould(coin.reverse), 50.5, "M-2026-04", "reverse", "25 February 2026"),
    "coin_shell_obverse": Subject(_coin_shell(_marked_coin, seed=105), 42.0, "S-05", "contact face", "4 March 2026"),
    "coin_shell_reverse": Subject(_coin_shell(coin.reverse, seed=106), 42.0, "S-06", "contact face", "4 March 2026"),
    "coin_copy_obverse": Subject(_coin_copy(_marked_coin), 32.6, "R.2026.2", "obverse", "1 April 2026"),
    "coin_copy_reverse": Subject(_coin_copy(coin.reverse), 32.6, "R.2026.2", "reverse", "1 April 2026"),
    "mask": Subject(face_mask.plaster(), 285.0, "OVM.1907.0112", "front", "11 March 2026", unit_mm=4.6),
    "mask_after": Subject(face_mask.plaster(flake=True), 285.0, "OVM.1907.0112", "front", "13 March 2026", unit_mm=4.6),
    "mask_skin": Subject(face_mask.skin, 285.0, "S-11", "front", "30 March 2026", unit_mm=4.6),
    "mask_copy": Subject(face_mask.copper, 285.0, "R.2026.5", "front", "20 April 2026", unit_mm=4.6),
    "mask_copy_spots": Subject(face_mask.spotted, 285.0, "R.2026.5", "front", "5 October 2026", unit_mm=4.6),
    "mask_copy_spots_near": Subject(
        face_mask.spotted,
        30.0,
        "R.2026.5",
        "inner eye corner R",
        "5 October 2026",
        face_mask.EYE_CORNER_MM,
        close=True,
        unit_mm=4.6,
    ),
    "mask_copy_mark": Subject(plate.back_rim, 44.0, "R.2026.5", "mark", "20 April 2026", close=True),
}
