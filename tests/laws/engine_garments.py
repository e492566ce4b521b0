"""Random garments drawn from the shipped knowledge, and a naive reading of its rules.

The reading works on the words of the rule files and knows nothing of the compiled conditions:
a condition is the set of truth values that it can have in the worlds that are possible.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from itertools import permutations
from typing import Any

from hypothesis import strategies as st
from msgspec.structs import replace

from advisor.knowledge.model import Entry, Knowledge, Mix
from advisor.knowledge.place import knowledge_folder
from advisor.project.garment import Cloth, Garment, Maker, Seam, Use
from advisor.textio.yamlfile import read_yaml
from tests.typed import shipped

SURE, NEVER, PERHAPS = frozenset({True}), frozenset({False}), frozenset({True, False})
Possible = frozenset[bool]

FACTS: dict[str, tuple[str | float, ...]] = {
    "shape": ("straight", "curved", "corner"),
    "edge": ("open", "turned", "hem", "folded"),
    "stress": ("low", "medium", "high"),
    "worn next to skin": ("yes", "no"),
    "bias": ("yes", "no"),
    "lined": ("yes", "no"),
    "length": (80.0, 400.0, 1500.0),
    "allowance": (6.0, 15.0),
}

Draw = Callable[[st.SearchStrategy[Any]], Any]


@cache
def known() -> Knowledge:
    """The shipped knowledge."""
    return shipped()


@cache
def raw_rules() -> dict[str, dict[str, Any]]:
    """Every rule as its file says it."""
    paths = sorted((knowledge_folder() / "rules").glob("*/*.yaml"))
    return {path.stem: read_yaml(path).data for path in paths}


def _mixes(entry: Entry) -> st.SearchStrategy[tuple[Mix, ...]]:
    """Unknown, one that it is sold in, one fibre, or a blend with or without its shares."""
    fibres = sorted(known().fibres)
    one = st.sampled_from(fibres)
    share = st.sampled_from((5.0, 40.0, 50.0, 70.0))
    blend = st.tuples(one, one, share).filter(lambda t: t[0] != t[1])
    return st.one_of(
        st.just(entry.mixes),
        st.sampled_from(entry.mixes).map(lambda mix: (mix,)),
        one.map(lambda fibre: (((fibre, 100.0),),)),
        blend.map(lambda t: (((t[0], 100.0 - t[2]), (t[1], t[2])),)),
        blend.map(lambda t: (((t[0], None), (t[1], None)),)),
    )


@st.composite
def cloths(draw: st.DrawFn, name: str) -> Cloth:
    """A cloth or notion of the knowledge, its fibres known or not."""
    entry = known().entries[draw(st.sampled_from(sorted(known().entries)))]
    weight = draw(
        st.one_of(st.just(entry.weight), st.floats(20, 600).map(lambda w: (float(round(w)),) * 2))
    )
    return Cloth(
        name,
        entry.id,
        draw(_mixes(entry)),
        weight,
        entry.thickness,
        shade=draw(st.sampled_from(("", "", "dark", "pale"))),
        care=draw(st.sampled_from(("", "", "washable", "dry clean only"))),
        unwashed=draw(st.booleans()),
    )


def uses(names: list[str]) -> st.SearchStrategy[Use]:
    """A cloth as it is, gathered or stretched."""
    how = st.sampled_from(((1.0, 1.0), (1.0, 1.0), (2.5, 1.0), (1.0, 1.2)))
    return st.tuples(st.sampled_from(names), how).map(lambda t: Use(t[0], *t[1]))


@st.composite
def seams(draw: st.DrawFn, name: str, names: list[str]) -> Seam:
    """A seam of two to four layers, with some facts said and others not."""
    layers = draw(st.lists(uses(names), min_size=2, max_size=4))
    said = draw(st.sets(st.sampled_from(sorted(FACTS)), max_size=4))
    facts = {key: draw(st.sampled_from(FACTS[key])) for key in sorted(said)}
    return Seam(name, tuple(layers), facts)


@st.composite
def garments(draw: st.DrawFn, most_seams: int = 2) -> Garment:
    """A garment of one to three cloths and a few seams."""
    names = ["shell", "lining", "trim"][: draw(st.integers(1, 3))]
    about = {name: draw(cloths(name)) for name in names}
    count = draw(st.integers(1, most_seams))
    places = tuple(draw(seams(f"seam {i}", names)) for i in range(count))
    maker = Maker(
        draw(st.sampled_from(("household", "industrial"))),
        draw(st.sampled_from(("", "4-thread"))),
        draw(st.sampled_from((None, ("walking",)))),
    )
    return Garment("coat", about, places, maker)


def shuffled(draw: Draw, garment: Garment, *, upside_down: bool = False) -> Garment:
    """The same garment with its cloths, seams and layers written in another order.

    Upside down, the layers of a seam keep their neighbours: a stack is only turned over.
    """
    order = draw(st.permutations(sorted(garment.cloths)))
    places = []
    for seam in draw(st.permutations(garment.seams)):
        ways = [seam.uses, seam.uses[::-1]] if upside_down else list(permutations(seam.uses))
        places.append(replace(seam, uses=tuple(draw(st.sampled_from(ways)))))
    return replace(garment, cloths={n: garment.cloths[n] for n in order}, seams=tuple(places))


# --- the naive reading -----------------------------------------------------------------------


def holds(raw: dict[str, Any], leaf: Any) -> Possible:
    """The truth values that a condition can have; all its keys have to hold."""
    parts = [_part(key, value, leaf) for key, value in raw.items()]
    return _both(parts)


def _part(key: str, value: Any, leaf: Any) -> Possible:
    if key == "all":
        return _both([holds(part, leaf) for part in value])
    if key == "any":
        turned = _both([frozenset(not x for x in holds(part, leaf)) for part in value])
        return frozenset(not x for x in turned)
    if key == "not":
        return frozenset(not x for x in holds(value, leaf))
    found: Possible = leaf(key, value)
    return found


def _both(parts: list[Possible]) -> Possible:
    if any(part == NEVER for part in parts):
        return NEVER
    return SURE if all(part == SURE for part in parts) else PERHAPS


def _words(value: Any) -> list[str]:
    spelled = {True: "yes", False: "no"}
    listed = value if isinstance(value, list) else [value]
    return [spelled[v] if isinstance(v, bool) else str(v) for v in listed]


def _number(value: Any, span: tuple[float, float] | None) -> Possible:
    """An assumed span counts by its middle; what only its ends reach may be."""
    if span is None:
        return PERHAPS
    text = str(value)
    figures = [float(n) for n in re.findall(r"\d+(?:\.\d+)?", text)]
    ways: dict[str, Callable[[float], bool]] = {
        "at least": lambda x: x >= figures[0],
        "at most": lambda x: x <= figures[0],
        "over": lambda x: x > figures[0],
        "under": lambda x: x < figures[0],
    }
    how = re.match(r"at least|at most|over|under", text)
    if how:
        fits = ways[how[0]]
    else:

        def fits(x: float) -> bool:
            return figures[0] <= x <= figures[-1]

    if fits((span[0] + span[1]) / 2):
        return SURE
    low = figures[0] if not how or how[0] in ("at least", "over") else float("-inf")
    high = figures[-1] if not how or how[0] in ("at most", "under") else float("inf")
    touches = span[0] <= high and span[1] >= low and span[0] != span[1]
    return PERHAPS if touches else NEVER


def layer_leaf(cloth: Cloth, use: Use) -> Any:
    """Answers one fact of a cloth as it is used."""
    entry = known().entries[cloth.entry]
    words = {
        "structure": entry.structure,
        "weave": entry.weave,
        "family": entry.family,
        "fabric": entry.id,
        "notion": "" if entry.kind == "cloth" else entry.id,
        "kind": entry.kind,
        "shade": cloth.shade,
        "care": cloth.care,
        "unwashed": "yes" if cloth.unwashed else "no",
        "trims": "yes" if cloth.trims else "no",
        "fibre known": "yes" if len(cloth.mixes) == 1 else "no",
        "main fibre known": main_fibre_known(cloth),
        "detachable": "yes" if cloth.detachable else "no",
    }
    numbers = {
        "weight": cloth.weight,
        "thickness": cloth.thickness,
        "fullness": (use.fullness,) * 2,
        "stretched": (use.stretched,) * 2,
    }

    def ask(key: str, value: Any) -> Possible:
        if key in known().traits:
            return _trait(key, _words(value)[0], cloth, entry)
        if key in ("fibre", "mostly", "only"):
            return _either([_in_mix(key, _words(value), mix) for mix in cloth.mixes])
        if key == "fibre group":
            return frozenset(
                any(known().fibres[f].group in _words(value) for f, _ in mix) for mix in cloth.mixes
            )
        if key in numbers:
            return _number(value, numbers[key])
        return frozenset({words[key] in _words(value)})

    return ask


def _either(worlds: list[Possible]) -> Possible:
    return frozenset(x for world in worlds for x in world)


def _in_mix(how: str, ids: list[str], mix: Mix) -> Possible:
    inside = [share for fibre, share in mix if fibre in ids]
    if how == "fibre":
        return frozenset({bool(inside)})
    if len(inside) == len(mix):
        return SURE
    if how == "only" or not inside:
        return NEVER
    if any(share is None for _, share in mix):
        return PERHAPS
    return frozenset({sum(share or 0.0 for share in inside) >= 50})


def _trait(name: str, test: str, cloth: Cloth, entry: Entry) -> Possible:
    scale = known().traits[name]
    least, most = entry.traits.get(name, (0, 0))
    worlds = []
    for mix in cloth.mixes:
        raised = max((known().fibres[f].traits.get(name, 0) for f, _ in mix), default=0)
        worlds.append((max(least, raised), max(most, raised)))
    least, most = min(w[0] for w in worlds), max(w[1] for w in worlds)
    word = test.removeprefix("at least ").removeprefix("at most ")
    at = scale.index(word)
    if test.startswith("at least "):
        return frozenset(level >= at for level in range(least, most + 1))
    if test.startswith("at most "):
        return frozenset(level <= at for level in range(least, most + 1))
    return frozenset(level == at for level in range(least, most + 1))


TAKEN = {
    "shape": "straight",
    "edge": "open",
    "stress": "medium",
    "stitched by": "machine",
    "worn next to skin": "no",
    "bias": "no",
    "lined": "no",
}


def seam_leaf(seam: Seam, garment: Garment) -> Any:
    """Answers one fact of a seam."""
    follows = {
        "allowance given": "yes" if "allowance" in seam.facts else "no",
        "laid in pleats": "no" if seam.making.pleats is None else "yes",
        "may be pleated": "no" if seam.place else "yes",
        "sleeve head": "no",
        "at hood or neck": "no",
        "hangs from nothing": "no",
        "holds a cord": holds_a_cord(seam, garment),
        "holds a pocket": "no",
        "closes a tube": "no",
        "closes the seat": "no",
        "over a lining": "no",
        "lies flat": lies_flat(seam),
        "carries weight": carries_weight(seam),
        "facing seen": facing_seen(seam),
        "beside a velvet": beside_velvet(seam, garment),
        "place": seam.place,
    }

    def ask(key: str, value: Any) -> Possible:
        if key == "layers":
            return _number(value, (float(len(seam.uses)),) * 2)
        if key == "plies":
            return _number(value, (sum(use.fullness for use in seam.uses),) * 2)
        if key in follows:
            return frozenset({follows[key] in _words(value)})
        if key in ("length", "allowance"):
            given = seam.facts.get(key)
            return _number(value, None if given is None else (float(given),) * 2)
        return frozenset({seam.facts.get(key, TAKEN.get(key, "")) in _words(value)})

    return ask


def maker_leaf(maker: Maker) -> Any:
    """Answers one fact of the maker."""
    facts = {
        "machine": maker.machine,
        "overlocker": "yes" if maker.overlocker else "no",
        "worn by": maker.worn_by,
        "outer garment": "yes",  # each of these garments is called a coat
        "hooded": "no",
        "has sleeves": "no",
        "has shoulders": "no",  # nor after a shoulder
        "hangs from shoulders": "no",
        "sheer body": "no",  # no seam of these is called after a bodice or a skirt
    }
    return lambda key, value: frozenset({facts[key] in _words(value)})


def holds_a_cord(seam: Seam, garment: Garment) -> str:
    """Whether a piping cord lies among the layers of a seam."""
    corded = any(garment.cloths[use.cloth].entry == "piping-cord" for use in seam.uses)
    return "yes" if corded else "no"


def beside_velvet(seam: Seam, garment: Garment) -> str:
    """Yes where a woven pile that any press marks badly meets a flat cloth or a wool."""
    entries = [known().entries[garment.cloths[use.cloth].entry] for use in seam.uses]
    cloths = [entry for entry in entries if entry.kind == "cloth"]
    marked = [e for e in cloths if e.traits.get("press marks", (0, 0))[0] == 3]
    velvet = any(e.structure == "woven" and e.family == "piles" for e in marked)
    flat = any(e.traits.get("pile", (0, 0))[0] == 0 or e.family == "wools" for e in cloths)
    return "yes" if velvet and flat else "no"


def facing_seen(seam: Seam) -> str:
    """Yes where its name says that it is a front, a lapel or the like."""
    words = {word.rstrip("s") for word in seam.name.casefold().split()}
    seen = {"front", "lapel", "rever", "collar", "flap", "tab", "cuff"}
    return "yes" if words & seen else "no"


def main_fibre_known(cloth: Cloth) -> str:
    """Yes where one fibre makes half or more of whatever the cloth may be."""
    mains = set()
    for mix in cloth.mixes:
        shares = {f: (100.0 if len(mix) == 1 else share or 0.0) for f, share in mix}
        most = max(shares, key=lambda f: shares[f])
        mains.add(most if shares[most] >= 50 else None)
    return "yes" if len(mains) == 1 and None not in mains else "no"


def lies_flat(seam: Seam) -> str:
    """Yes where an edge is folded or faced."""
    return "yes" if seam.facts.get("edge") in ("turned", "folded", "hem") else "no"


def carries_weight(seam: Seam) -> str:
    """Yes where it is pulled hard, or hangs by its name; of a seam only asked about, unless low."""
    stress = seam.facts.get("stress", "medium")
    hangs = {"shoulder", "neck", "neckline", "waist", "yoke", "raglan", "strap"}
    named = not seam.place or bool(hangs & set(seam.name.casefold().split()))
    return "yes" if stress == "high" or (stress == "medium" and named) else "no"


def surest(found: list[Possible]) -> Possible:
    """At least one of some conditions: the surest of them."""
    return max(found, key=lambda p: (SURE == p) * 2 + (PERHAPS == p), default=NEVER)


def both(*parts: Possible) -> Possible:
    """All of some conditions."""
    return _both(list(parts))


def in_seam(when: dict[str, Any], seam: Seam, garment: Garment) -> Possible:
    """Whether a rule about layers of one seam holds there, the layers alone considered."""

    def ask(raw: dict[str, Any], use: Use) -> Possible:
        return holds(raw, layer_leaf(garment.cloths[use.cloth], use))

    def asked_both(one: dict[str, Any], a: Use, two: dict[str, Any], b: Use) -> Possible:
        """Two layers of one cloth are of one mix, whichever it is."""
        cloth = garment.cloths[a.cloth]
        if a.cloth == b.cloth and len(cloth.mixes) > 1:
            worlds = [replace(cloth, mixes=(mix,)) for mix in cloth.mixes]
            alike = [
                both(holds(one, layer_leaf(w, a)), holds(two, layer_leaf(w, b))) for w in worlds
            ]
            if all(found == NEVER for found in alike):
                return NEVER
        return both(ask(one, a), ask(two, b))

    if "pair" in when:
        one, two = when["pair"]
        return surest([asked_both(one, a, two, b) for a, b in permutations(seam.uses, 2)])
    if "some" in when:
        return surest([ask(when["some"], use) for use in seam.uses])
    if "every" in when:
        kinds = {n: known().entries[c.entry].kind for n, c in garment.cloths.items()}
        asked = [use for use in seam.uses if kinds[use.cloth] == "cloth"]
        return both(*(ask(when["every"], use) for use in asked)) if asked else NEVER
    return SURE


def expected_fired(garment: Garment) -> set[tuple[str, str, bool]]:
    """Every rule that holds or may hold: its id, its place, and whether it is sure."""
    found: set[tuple[str, str, bool]] = set()
    for id_, raw in raw_rules().items():
        when = raw["when"]
        if "maker" in when and holds(when["maker"], maker_leaf(garment.maker)) == NEVER:
            continue
        for place, truth in _where(when, garment):
            if truth != NEVER:
                found.add((id_, place, truth == SURE))
    return found


def _where(when: dict[str, Any], garment: Garment) -> list[tuple[str, Possible]]:
    # What nobody has said of a seam silences no rule, but then it is not sure.
    seam_part = {
        s.name: holds(when["seam"], seam_leaf(s, garment)) if "seam" in when else SURE
        for s in garment.seams
    }
    if "garment pair" in when:
        one, two = when["garment pair"]
        names = sorted(garment.cloths)

        def alone(raw: dict[str, Any], name: str) -> Possible:
            return holds(raw, layer_leaf(garment.cloths[name], Use(name)))

        return [
            ("coat", surest([both(alone(one, a), alone(two, b)) for a, b in ((x, y), (y, x))]))
            for i, x in enumerate(names)
            for y in names[i + 1 :]
        ]
    if "layer" not in when:
        return [(s.name, both(seam_part[s.name], in_seam(when, s, garment))) for s in garment.seams]
    rows = []
    for name, cloth in garment.cloths.items():
        by_seam = {
            s.name: both(
                seam_part[s.name],
                surest(
                    [
                        holds(when["layer"], layer_leaf(cloth, use))
                        for use in s.uses
                        if use.cloth == name
                    ]
                ),
            )
            for s in garment.seams
            if name in [u.cloth for u in s.uses]
        }
        if "seam" in when:
            # One voice for the cloth: as sure as where it is surest, wherever it may hold.
            most = surest(list(by_seam.values()))
            rows += [(place, most) for place, truth in by_seam.items() if truth != NEVER]
        else:
            base = holds(when["layer"], layer_leaf(cloth, Use(name)))
            rows.append((name, surest([base, *by_seam.values()])))
    return rows
