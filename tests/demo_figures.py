"""Figures of the scenario's section 11, reckoned there beforehand and independently of this code.

With k(Cu) = 1.18549 g/Ah and 8.92 g/cm³ (Faraday's law with CODATA 2018 constants and the IUPAC atomic mass of copper).
"""

CHARGES_AH = {1: 7.867, 2: 36.850, 3: 8.940, 4: 20.950, 5: 50.160, 6: 163.500}
THEORY_G = {1: 9.326, 2: 43.685, 3: 10.598, 4: 24.836, 5: 59.464, 6: 193.828}
EFFICIENCY_PCT = {1: 74.0, 2: 98.8, 3: 98.5, 4: 98.7, 5: 98.8, 6: 100.5}
LEDGER_AH = [647.87, 684.72, 693.66, 714.61, 764.77, 928.27]

# SCENARIO 7 and 11: charge, current at the end, and hours with the ramp as they were planned beforehand.
PLANNED = {
    1: (36.85, 12.06, 3.06), 2: (36.85, 1.206, 33.1), 3: (8.938, 0.42, 23.3), 4: (21.007, 0.75, 30.1),
    5: (50.362, 1.21, 44.2), 6: (163.406, 10.3, 16.99),
}  # fmt: skip
