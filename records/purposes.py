"""Purposes that a step gives by itself: words of the museum's list of purposes that keep their label."""

SALE, EXCHANGE, HANDLING = "sale", "exchange", "handling"
KEPT_WORDS = (SALE, EXCHANGE, HANDLING)
