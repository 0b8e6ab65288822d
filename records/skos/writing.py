"""Words to Turtle: a concept scheme for each kind of words, a collection for each group, a concept for each word."""

from collections.abc import Iterable, Mapping
from urllib.parse import quote

from rdflib import DCTERMS, OWL, RDF, RDFS, SKOS, Graph, Literal, URIRef

from records.skos.words import LANGUAGE, OWN, Word

OWN_PROPERTIES = {
    OWN.defaultStability: "stability until examined", OWN.pattern: "pattern on a picture",
}  # fmt: skip


def turtle(words: Iterable[Word], schemes: Mapping[str, str], base: str) -> str:
    """`schemes` names each kind of words; `base` is the address under which the words stand."""
    graph = Graph()
    graph.bind("skos", SKOS)
    graph.bind("dcterms", DCTERMS)
    graph.bind("register", OWN)
    for own, label in OWN_PROPERTIES.items():
        graph.add((own, RDFS.subPropertyOf, SKOS.note))
        graph.add((own, RDFS.label, _said(label)))
    for word in words:
        _add(graph, word, schemes.get(word.scheme, word.scheme), base.rstrip("/"))
    return graph.serialize(format="turtle")


def _add(graph: Graph, word: Word, scheme_label: str, base: str) -> None:
    scheme = URIRef(f"{base}/{quote(word.scheme, safe='')}")
    concept = URIRef(f"{scheme}/{quote(word.group or '-', safe='')}/{quote(word.label, safe='')}")
    graph.add((scheme, RDF.type, SKOS.ConceptScheme))
    graph.add((scheme, SKOS.prefLabel, _said(scheme_label)))
    graph.add((scheme, SKOS.notation, Literal(word.scheme)))
    graph.add((concept, RDF.type, SKOS.Concept))
    graph.add((concept, SKOS.inScheme, scheme))
    graph.add((concept, SKOS.topConceptOf, scheme))
    graph.add((concept, SKOS.prefLabel, _said(word.label)))
    if word.group:
        group = URIRef(f"{scheme}/{quote(word.group, safe='')}")
        graph.add((group, RDF.type, SKOS.Collection))
        graph.add((group, SKOS.prefLabel, _said(word.group)))
        graph.add((group, SKOS.member, concept))
    told = [
        (SKOS.definition, _said(word.definition)), (SKOS.scopeNote, _said(word.caution)),
        (DCTERMS.source, Literal(word.source)), (OWN.defaultStability, Literal(word.default_stability)),
        (OWN.pattern, Literal(word.pattern)),
    ]  # fmt: skip
    for known, value in told:
        if str(value):
            graph.add((concept, known, value))
    if word.is_retired:
        graph.add((concept, OWL.deprecated, Literal(True)))
    for address in word.identifiers:
        graph.add((concept, SKOS.exactMatch, URIRef(address)))


def _said(words: str) -> Literal:
    return Literal(words, lang=LANGUAGE)
