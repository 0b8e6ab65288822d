from .baths import Bath, BathAddition, BathAnalysis, BathLimit, Constituent
from .cores import Core
from .finishing import FinishStep
from .inspection import Inspection
from .making_up import MakingUp
from .moulds import Mould, Pull, Side
from .ranges import Range
from .runs import Cathode, Event, Reading, Run
from .shells import Shell, ThicknessPoint
from .traces import HeaderWord, Trace, TraceCurve, TraceShape

__all__ = [
    "Bath", "BathAddition", "BathAnalysis", "BathLimit", "Cathode", "Constituent", "Core", "Event", "FinishStep",
    "HeaderWord", "Inspection", "MakingUp", "Mould", "Pull", "Range", "Reading", "Run", "Shell", "Side",
    "ThicknessPoint", "Trace", "TraceCurve", "TraceShape",
]  # fmt: skip
