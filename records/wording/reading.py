"""How large the letters must be to be read from where a visitor stands."""

# Millimetres of lower-case height per metre of viewing distance, in good and in poor light (AS 1319 chart).
X_HEIGHT_MM_PER_M = {"good": 4.0, "poor": 6.0}
X_HEIGHT_EM = 0.486  # of Source Sans, the face of labels
_POINT_MM = 25.4 / 72


def x_height_mm(distance_m: float, light: str = "good") -> float:
    """Lower-case height that is read from a distance.

    >>> x_height_mm(0.6)
    2.4
    """
    return X_HEIGHT_MM_PER_M[light] * distance_m


def reading_size(distance_m: float, light: str = "good") -> float:
    """Type size in points whose lower-case letters have that height.

    >>> round(reading_size(1.0), 1)
    23.3
    """
    return x_height_mm(distance_m, light) / (X_HEIGHT_EM * _POINT_MM)
