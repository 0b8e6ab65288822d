"""Five roles and what each may do: the one table. Everybody signed in may look at everything."""

REGISTRAR, CONSERVATOR, TECHNICIAN, CURATOR, READER = "registrar", "conservator", "technician", "curator", "reader"
ROLES = (REGISTRAR, CONSERVATOR, TECHNICIAN, CURATOR, READER)
ROLE_CHOICES = [(role, role) for role in ROLES if role != READER]

# Model name -> the roles that may write its rows.
WRITERS: dict[str, frozenset[str]] = {
    # the register
    "Item": frozenset({REGISTRAR, CURATOR, CONSERVATOR}),
    "Measurement": frozenset({REGISTRAR, CONSERVATOR, TECHNICIAN, CURATOR}),
    "Party": frozenset({REGISTRAR}),
    "Place": frozenset({REGISTRAR}),
    "Photo": frozenset({REGISTRAR, CONSERVATOR, TECHNICIAN, CURATOR}),
    "PhotoMeasure": frozenset({REGISTRAR, CONSERVATOR, TECHNICIAN, CURATOR}),
    "PhotoScale": frozenset({REGISTRAR, CONSERVATOR, TECHNICIAN, CURATOR}),
    "ProvenanceEvent": frozenset({REGISTRAR, CURATOR}),
    "Job": frozenset({REGISTRAR, CONSERVATOR, TECHNICIAN, CURATOR}),
    "DescentLink": frozenset({REGISTRAR, CONSERVATOR, CURATOR}),
    "Term": frozenset({REGISTRAR, CONSERVATOR}),
    "Duty": frozenset({REGISTRAR, CONSERVATOR}),
    # what allows it
    "Commission": frozenset({REGISTRAR, CURATOR}),
    "FileStep": frozenset({REGISTRAR}),
    "Consent": frozenset({REGISTRAR}),
    "RiskAssessment": frozenset({CONSERVATOR}),
    "Specification": frozenset({CONSERVATOR, CURATOR}),
    "Concession": frozenset({CONSERVATOR, REGISTRAR}),
    # what was seen
    "ConditionReport": frozenset({CONSERVATOR}),
    "Finding": frozenset({CONSERVATOR}),
    "Addendum": frozenset({CONSERVATOR}),
    "Examination": frozenset({CONSERVATOR, CURATOR}),
    "Mark": frozenset({CONSERVATOR, TECHNICIAN}),
    "MarkRule": frozenset({CONSERVATOR, CURATOR, REGISTRAR}),
    "SuppressedMark": frozenset({CONSERVATOR, TECHNICIAN}),
    # the making
    "Mould": frozenset({CONSERVATOR, TECHNICIAN}),
    "Pull": frozenset({CONSERVATOR, TECHNICIAN}),
    "Core": frozenset({CONSERVATOR, TECHNICIAN}),
    "Weighing": frozenset({CONSERVATOR, TECHNICIAN}),
    "CoreClosing": frozenset({CONSERVATOR, TECHNICIAN}),
    "Bath": frozenset({CONSERVATOR, TECHNICIAN}),
    "BathLimit": frozenset({CONSERVATOR}),
    "BathAnalysis": frozenset({CONSERVATOR, TECHNICIAN}),
    "BathAddition": frozenset({CONSERVATOR, TECHNICIAN}),
    "BathService": frozenset({CONSERVATOR, TECHNICIAN}),
    "HydrostaticWeighing": frozenset({CONSERVATOR, TECHNICIAN}),
    "MouldGauge": frozenset({CONSERVATOR, TECHNICIAN}),
    "Anode": frozenset({CONSERVATOR, TECHNICIAN}),
    "AnodeWeighing": frozenset({CONSERVATOR, TECHNICIAN}),
    "Run": frozenset({CONSERVATOR, TECHNICIAN}),
    "Cathode": frozenset({CONSERVATOR, TECHNICIAN}),
    "AreaPart": frozenset({CONSERVATOR, TECHNICIAN}),
    "RampStep": frozenset({CONSERVATOR, TECHNICIAN}),
    "PowerUnit": frozenset({CONSERVATOR, TECHNICIAN}),
    "ThrowTest": frozenset({CONSERVATOR, TECHNICIAN}),
    "PriceList": frozenset({CONSERVATOR, REGISTRAR, TECHNICIAN}),
    "Reading": frozenset({CONSERVATOR, TECHNICIAN}),
    "Event": frozenset({CONSERVATOR, TECHNICIAN}),
    "Trace": frozenset({CONSERVATOR, TECHNICIAN}),
    "HeaderWord": frozenset({CONSERVATOR, TECHNICIAN}),
    "Shell": frozenset({CONSERVATOR, TECHNICIAN}),
    "ThicknessPoint": frozenset({CONSERVATOR, TECHNICIAN}),
    "CouponTest": frozenset({CONSERVATOR, TECHNICIAN}),
    "InterruptionAnswers": frozenset({CONSERVATOR, TECHNICIAN}),
    "RiskRule": frozenset({CONSERVATOR}),
    "Failure": frozenset({CONSERVATOR, TECHNICIAN}),
    "Defect": frozenset({CONSERVATOR, TECHNICIAN}),
    "MakingUp": frozenset({CONSERVATOR, TECHNICIAN}),
    "FinishStep": frozenset({CONSERVATOR, TECHNICIAN}),
    "Inspection": frozenset({CONSERVATOR}),
    "Range": frozenset({CONSERVATOR}),
    # the papers
    "LabelWording": frozenset({CURATOR}),
    "Document": frozenset({CURATOR, CONSERVATOR, REGISTRAR}),
}

# Acts that carry a signature or close something.
ACTS: dict[str, frozenset[str]] = {
    "sign condition report": frozenset({CONSERVATOR}),
    "sign risk assessment": frozenset({CONSERVATOR}),
    "close core": frozenset({CONSERVATOR}),
    "accept copy": frozenset({CONSERVATOR}),
    "set lamination risk": frozenset({CONSERVATOR}),
    "approve label": frozenset({CURATOR}),
    "give concession": frozenset({CONSERVATOR, REGISTRAR}),
    "issue paper": frozenset({CURATOR, CONSERVATOR, REGISTRAR}),
    "issue bench sheet": frozenset({CONSERVATOR, TECHNICIAN}),
    "close commission": frozenset({REGISTRAR}),
}
