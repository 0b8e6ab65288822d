"""What of a bath's diary can be struck out: analyses, additions, work, weighings of anodes."""

from process.models import AnodeWeighing, BathAddition, BathAnalysis, BathService
from records.extensions import Struck, strikables

strikables["bath-analysis"] = Struck(
    rows=lambda: BathAnalysis.every.select_related("bath", "struck_by"),
    words=lambda row: f"analysis {row.number} of {row.bath.number}",
    back=lambda row: row.bath.get_absolute_url(),
)
strikables["bath-addition"] = Struck(
    rows=lambda: BathAddition.every.select_related("bath", "struck_by"),
    words=lambda row: f"addition of {row.what} to {row.bath.number}",
    back=lambda row: row.bath.get_absolute_url(),
)
strikables["bath-work"] = Struck(
    rows=lambda: BathService.every.select_related("bath", "struck_by"),
    words=lambda row: f"“{row.get_kind_display()}”, {row.bath.number}",
    back=lambda row: row.get_absolute_url(),
)
strikables["anode-weighing"] = Struck(
    rows=lambda: AnodeWeighing.every.select_related("anode__bath", "struck_by"),
    words=lambda row: f"weighing of anode {row.anode}",
    back=lambda row: row.get_absolute_url(),
)
