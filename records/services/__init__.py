"""Verbs that touch several rows. Keyword-only; each is one short transaction."""
