"""The usual cautions, shown wherever a reduction is chosen or printed.

Put together from common practice and from published findings: a tight belt raised acid
reflux in patients (Mitchell 2017, Gastroenterology 152:1881, abstract), tight garments can
numb the outer thigh (Mayo Clinic text). They judge no figure and defer to doctors.
"""

from __future__ import annotations

CAUTIONS: tuple[str, ...] = (
    "Loosen it or take it off at once when she is short of breath, faint, numb or in pain.",
    "It is not for sleeping in and not for exercise.",
    "Not in pregnancy, and not soon after a birth or an operation, unless a doctor agrees.",
    "Not with asthma, or with a disease of heart, blood pressure, stomach or bones, unless a doctor agrees.",
    "Not for anyone under 18 unless a doctor agrees.",
    "A tight waist can worsen acid reflux, and a tight edge can numb the outer thigh.",
    "The figures here are compared with the limits you set and with nothing else: ask a doctor about health.",
)

WEARER_CAUTIONS: tuple[str, ...] = (
    "Loosen it or take it off at once when you are short of breath, faint, numb or in pain.",
    "It is not for sleeping in and not for exercise.",
    "Not in pregnancy, and not soon after a birth or an operation, unless your doctor agrees.",
    "Not with asthma, or a disease of heart, blood pressure, stomach or bones, unless your doctor agrees.",
    "Not for anyone under 18 unless a doctor agrees.",
    "A tight waist can worsen acid reflux, and a tight edge can numb the outer thigh.",
    "Questions of health are for your doctor.",
)
"""The same, said to her who will wear it."""

CAUTION_SHORT = (
    "Loosen at once when short of breath, faint, numb or in pain; questions of health go to a doctor."
)
