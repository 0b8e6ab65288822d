"""How a file is to be read: every entry found and shown, or asked; plain values, so that it is kept as JSON."""

import hashlib
from dataclasses import asdict, dataclass, fields, replace
from typing import Any

TIME_KINDS = {
    "instant": "date and time with offset from UTC",
    "local": "date and time on a clock",
    "elapsed": "time since a start",
    "epoch": "seconds since 1970 in UTC",
}
DATE_ORDERS = {"ymd": "year, month, day", "dmy": "day, month, year", "mdy": "month, day, year"}
ELAPSED_UNITS = {"ms": 0.001, "s": 1.0, "min": 60.0, "h": 3600.0, "dhms": 1.0}
CURRENT_UNITS = {"A": 1.0, "mA": 0.001}
VOLTAGE_UNITS = {"V": 1.0, "mV": 0.001}
TEMPERATURE_UNITS = ("°C", "°F")
DOUBLED_HOURS = {"order": "by the order of the lines", "first": "all before the change", "second": "all after it"}


@dataclass(frozen=True)
class Mapping:
    """Columns count from zero; `skip` is the number of lines before the first sample."""

    encoding: str = "utf-8"
    delimiter: str = ","
    decimal: str = "."
    skip: int = 1
    headers: tuple[str, ...] = ()
    column_count: int = 0
    time_kind: str = "instant"
    time_columns: tuple[int, ...] = (0,)
    date_order: str = "ymd"
    elapsed_unit: str = ""
    zone: str = ""
    doubled_hour: str = ""
    starts_at: str = ""
    current_column: int | None = None
    current_unit: str = ""
    sign: int = 1
    voltage_column: int | None = None
    voltage_unit: str = "V"
    temperature_column: int | None = None
    temperature_unit: str = "°C"

    @property
    def signature(self) -> str:
        """The same for every file of this shape: what stands above the samples, and how they are parted."""
        shape = "\x1f".join([self.delimiter, self.decimal, str(self.column_count), self.time_kind, *self.headers])
        return hashlib.sha256(shape.encode()).hexdigest()

    def as_json(self) -> dict[str, Any]:
        return asdict(self) | {"headers": list(self.headers), "time_columns": list(self.time_columns)}

    @classmethod
    def from_json(cls, kept: dict[str, Any]) -> "Mapping":
        known = {field.name for field in fields(cls)}
        values: dict[str, Any] = {
            name: tuple(value) if isinstance(value, list) else value for name, value in kept.items()
        }
        return cls(**{name: value for name, value in values.items() if name in known})

    def recalling(self, earlier: "Mapping") -> "Mapping":
        """What a person answered for an earlier file of this shape; what belongs to one file alone is left out."""
        return replace(
            self, time_columns=earlier.time_columns, date_order=earlier.date_order, zone=earlier.zone,
            elapsed_unit=earlier.elapsed_unit, current_column=earlier.current_column, sign=earlier.sign,
            current_unit=earlier.current_unit, voltage_column=earlier.voltage_column,
            voltage_unit=earlier.voltage_unit, temperature_column=earlier.temperature_column,
            temperature_unit=earlier.temperature_unit,
        )  # fmt: skip
