from .areas import AreaPart
from .bath_work import Anode, AnodeWeighing, BathService
from .baths import Bath, BathAddition, BathAnalysis, BathLimit, Constituent
from .care import CareRule
from .closings import CoreClosing
from .cores import Core
from .coupons import CouponTest
from .failures import Certainty, Defect, Failure
from .finishing import FinishStep
from .gauges import MouldGauge
from .hydrostatics import HydrostaticWeighing
from .inspection import Inspection
from .interruptions import Answer, InterruptionAnswers, RiskLevel, RiskRule
from .making_up import MakingUp
from .mould_care import MouldPart, MouldWear
from .moulds import Mould, Pull, Side
from .plan_fields import FactorSource
from .plans import PowerUnit, PriceList, RampStep
from .ranges import Range
from .runs import Cathode, Event, Reading, Run
from .shells import Shell
from .thickness import ThicknessPoint
from .throwing import ThrowTest
from .traces import HeaderWord, Trace, TraceCurve, TraceShape
from .weighings import Weighing
from .work import Expense, WorkEstimate, WorkHours, WorkKind

__all__ = [
    "Anode", "AnodeWeighing", "Answer", "AreaPart", "Bath", "BathAddition", "BathAnalysis", "BathLimit",
    "BathService", "CareRule", "Cathode", "Certainty", "Constituent", "Core", "CoreClosing", "CouponTest", "Defect",
    "Event", "Expense", "FactorSource", "Failure", "FinishStep", "HeaderWord", "HydrostaticWeighing", "Inspection",
    "InterruptionAnswers", "MakingUp", "Mould", "MouldGauge", "MouldPart", "MouldWear",
    "PowerUnit", "PriceList", "Pull", "RampStep", "Range", "Reading", "RiskLevel",
    "RiskRule", "Run", "Shell", "Side", "ThicknessPoint", "ThrowTest", "Trace", "TraceCurve", "TraceShape", "Weighing",
    "WorkEstimate", "WorkHours", "WorkKind",
]  # fmt: skip
