from .addenda import Addendum
from .base import Signed, Tracked, TrackedQuerySet, UntrackedWrite
from .commissions import Commission, Consent, RiskAssessment, Specification
from .compatibility import Compatibility
from .condition import ConditionReport, Finding, Grade, Urgency
from .descent import DescentLink
from .disposals import Disposal
from .documents import Document
from .duties import Duty
from .examinations import Examination
from .file_checks import FileCheck
from .file_steps import FileStep
from .finding_marks import FindingMark
from .gates import Concession, Gate, UnmetGate
from .handovers import HandlingSession, Handover
from .incidents import Incident
from .items import Item
from .jobs import Job
from .labels import LabelWording
from .mark_rules import MarkRule, RuleCheck, RuleFacts, SuppressedMark
from .marks import Mark
from .measurements import Measurement
from .parties import Party
from .photo_measures import PhotoMeasure, PhotoScale
from .photo_pairs import PhotoPair
from .photos import Photo
from .places import Place
from .provenance import ProvenanceEvent
from .sending import SentForm
from .sign_in import FailedSignIn
from .striking import Strikable
from .surveys import SurveyDate, SurveyRule
from .vocabulary import Term

__all__ = [
    "Addendum",
    "Commission",
    "Compatibility",
    "Concession",
    "ConditionReport",
    "Consent",
    "DescentLink",
    "Disposal",
    "Document",
    "Duty",
    "Examination",
    "FailedSignIn",
    "FileCheck",
    "FileStep",
    "Finding",
    "FindingMark",
    "Gate",
    "Grade",
    "HandlingSession",
    "Handover",
    "Incident",
    "Item",
    "Job",
    "LabelWording",
    "Mark",
    "MarkRule",
    "Measurement",
    "Party",
    "Photo",
    "PhotoMeasure",
    "PhotoPair",
    "PhotoScale",
    "Place",
    "ProvenanceEvent",
    "RiskAssessment",
    "RuleCheck",
    "RuleFacts",
    "SentForm",
    "Signed",
    "Specification",
    "Strikable",
    "SuppressedMark",
    "SurveyDate",
    "SurveyRule",
    "Term",
    "Tracked",
    "TrackedQuerySet",
    "UnmetGate",
    "UntrackedWrite",
    "Urgency",
]
