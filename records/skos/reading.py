"""Turtle to words. What cannot be taken is refused whole, with its line; what has no place here is counted and said."""

import re
from collections import Counter
from dataclasses import dataclass
from urllib.parse import unquote, urlsplit

from rdflib import DCTERMS, OWL, RDF, SKOS, Graph, Literal, URIRef
from rdflib.plugins.parsers.notation3 import BadSyntax
from rdflib.term import Node

from records.skos.words import LANGUAGE, OWN, NotTaken, Word

TAKEN = {
    RDF.type, SKOS.prefLabel, SKOS.definition, SKOS.scopeNote, SKOS.inScheme, SKOS.topConceptOf, SKOS.exactMatch,
    DCTERMS.source, OWL.deprecated, OWN.defaultStability, OWN.pattern,
}  # fmt: skip
NO_WORDS = "The file names no skos:Concept: it is no vocabulary, or it is one of another kind."


@dataclass(frozen=True)
class Found:
    """The words of a file, and how often each property stood there that is not kept."""

    words: tuple[Word, ...]
    left_out: tuple[tuple[str, int], ...]


def read(text: str) -> Found:
    """All words of a Turtle file, in the order of the file; raises NotTaken."""
    graph = _parsed(text)
    concepts = list(graph.subjects(RDF.type, SKOS.Concept, unique=True))
    if not concepts:
        raise NotTaken(NO_WORDS)
    words = sorted((_Reader(graph, node, text).word() for node in concepts), key=lambda word: word.line)
    seen: dict[tuple[str, str, str], Word] = {}
    for word in words:
        if first := seen.get(word.key):
            raise NotTaken(f"“{word}” stands here a second time, after line {first.line}: keep one of them.", word.line)
        seen[word.key] = word
    others = Counter(
        graph.namespace_manager.normalizeUri(str(p)) for c in concepts for p in graph.predicates(c) if p not in TAKEN
    )
    return Found(tuple(words), tuple(sorted(others.items())))


def _parsed(text: str) -> Graph:
    graph = Graph()
    try:
        graph.parse(data=text, format="turtle")
    except BadSyntax as bad:
        raise NotTaken(f"This is not Turtle: {bad._why}. Mend it or export it again.", bad.lines + 1) from bad
    except (RecursionError, ValueError, AssertionError, LookupError) as bad:
        raise NotTaken("This cannot be read as Turtle: export it again as UTF-8 Turtle.") from bad
    return graph


class _Reader:
    """One concept of the graph."""

    def __init__(self, graph: Graph, node: Node, text: str) -> None:
        self.graph, self.node, self.line = graph, node, line_of(text, node)

    def word(self) -> Word:
        label = self.one(SKOS.prefLabel, "prefLabel")
        if not label:
            raise NotTaken("A concept has no skos:prefLabel in English: write the word.", self.line)
        return Word(
            scheme=self.scheme(), group=self.group(), label=label, definition=self.one(SKOS.definition, "definition"),
            default_stability=self.one(OWN.defaultStability, "defaultStability"),
            pattern=self.one(OWN.pattern, "pattern") or "plain", caution=self.one(SKOS.scopeNote, "scopeNote"),
            source=self.one(DCTERMS.source, "source"), identifiers=self.addresses(), is_retired=self.is_retired(),
            line=self.line,
        )  # fmt: skip

    def one(self, known: URIRef, name: str) -> str:
        """The one text of a property: in English where it comes in several languages."""
        found = list(self.graph.objects(self.node, known))
        texts = [value for value in found if isinstance(value, Literal)]
        if len(texts) < len(found):
            raise NotTaken(f"{name} is an address here and must be a text.", self.line)
        english = [str(value) for value in texts if (value.language or LANGUAGE).split("-")[0] == LANGUAGE]
        if len(english) > 1:
            raise NotTaken(f"{name} stands here {len(english)} times in English: keep one.", self.line)
        return english[0].strip() if english else ""

    def scheme(self) -> str:
        nodes = {*self.graph.objects(self.node, SKOS.inScheme), *self.graph.objects(self.node, SKOS.topConceptOf)}
        if len(nodes) != 1:
            said = "belongs to no skos:ConceptScheme" if not nodes else "belongs to several schemes"
            raise NotTaken(f"The concept {said}: name one with skos:inScheme.", self.line)
        (scheme,) = nodes
        notation = self.graph.value(scheme, SKOS.notation, any=True)
        return str(notation) if notation else unquote(urlsplit(str(scheme)).path.rstrip("/").rpartition("/")[2])

    def group(self) -> str:
        nodes = list(self.graph.subjects(SKOS.member, self.node))
        if len(nodes) > 1:
            raise NotTaken("The concept is a member of several collections: a word has one group here.", self.line)
        named = self.graph.value(nodes[0], SKOS.prefLabel, any=True) if nodes else ""
        if nodes and not named:
            raise NotTaken("The collection of the concept has no skos:prefLabel: name the group.", self.line)
        return str(named).strip()

    def addresses(self) -> tuple[str, ...]:
        found = list(self.graph.objects(self.node, SKOS.exactMatch))
        if bad := [value for value in found if not isinstance(value, URIRef)]:
            raise NotTaken(f"exactMatch must be an address, not “{bad[0]}”.", self.line)
        return tuple(sorted(map(str, found)))

    def is_retired(self) -> bool:
        return bool(getattr(self.graph.value(self.node, OWL.deprecated, any=True), "value", False))


def line_of(text: str, node: Node) -> int:
    """The line on which a subject begins; 0 where it has no name that could be found."""
    if not isinstance(node, URIRef):
        return 0
    local = re.escape(re.split(r"[/#:]", str(node))[-1])
    begins = re.search(rf"^[ \t]*(?:<[^>\s]*{local}>|[\w.-]*:\S*{local})(?=\s)", text, re.MULTILINE)
    return text.count("\n", 0, begins.start()) + 1 if begins else 0
