"""Gathers everything that is said about a garment: by fibres, cloths, rules, machine and maker.

A claim said in a place is a `Said`. Rules are asked once for each different layer, not once for
each seam, so that a garment of a dozen seams costs little more than one.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from functools import partial
from itertools import combinations

from advisor.claims import onthetable, speakers
from advisor.claims.asking import LayerAsker
from advisor.claims.bound_hem import bound_hem_says
from advisor.claims.conditions import Fact, facts_of, maker_facts, seam_facts, test_facts
from advisor.claims.gathered import Fired, Gathered, Place
from advisor.claims.glued import STIFFENS, borne_apart, lowest_lid, words_of
from advisor.claims.hung_on_wax import hung_on_wax
from advisor.claims.laid import laid_says
from advisor.claims.lining_hem import drop_lining
from advisor.claims.mounted import drop_backing, mounted_says
from advisor.claims.outcomes import Outcomes, keyed
from advisor.claims.placefacts import garment_facts, place_facts
from advisor.claims.speakers import Said
from advisor.claims.subjects import Truth
from advisor.claims.unrested import unrested
from advisor.claims.zip_line import zip_line_says
from advisor.knowledge.model import Claim, Knowledge, Rule
from advisor.knowledge.places import GROUPS, PLAIN
from advisor.project.companions import felled_over
from advisor.project.garment import Garment, Seam, Use
from advisor.project.unsewn import asked_by_itself

__all__ = ["Fired", "Gathered", "Place", "gather"]

FINISH = "seam.finish"
SEAM_ONLY = ("seam.kind", FINISH)
ALLOWANCE = "seam.allowance"
SEWN_THROUGH = frozenset(GROUPS["machine"]) - {"machine.pressure"}
"""What a row asks of what it is sewn through."""
BACKED = 4
"""Layers of a seam whose two sides are each backed: shell, backing, backing, shell."""


def gather(garment: Garment, knowledge: Knowledge, before: Gathered | None = None) -> Gathered:
    """Everything that is said about a garment; `before` spares asking the same again."""
    return _Gatherer(garment, knowledge, before or Gathered()).run()


class _Gatherer:
    def __init__(self, garment: Garment, knowledge: Knowledge, before: Gathered) -> None:
        self.garment = garment
        self.knowledge = knowledge
        self.asker = LayerAsker(garment, knowledge, before.asker)
        self.result = Gathered(asker=self.asker)
        self.put: list[tuple[Place, Said]] = []
        self.whole = Place("garment", garment.name)
        self.seams = {seam.name: Place("seam", seam.name) for seam in garment.seams}
        self.fabrics = {name: Place("fabric", name) for name in sorted(garment.cloths)}
        for place in (*self.fabrics.values(), *self.seams.values(), self.whole):
            self.result.said[place] = defaultdict(list)
        self.seam_facts = {
            seam.name: seam_facts(seam) | place_facts(seam, garment, knowledge)
            for seam in garment.seams
        }
        kinds = knowledge.places.kinds
        entries = knowledge.entries
        self.entries = {name: entries[cloth.entry] for name, cloth in garment.cloths.items()}
        eased = ((name, entry.facts.get("loosened")) for name, entry in self.entries.items())
        self.loosened = {name: limits for name, limits in eased if limits}
        self.backing = {
            use.cloth
            for seam in garment.seams
            if seam.place in kinds and kinds[seam.place].family == "backing"
            for use in seam.uses[1:]
        }
        self.seams_of: dict[str, list[Seam]] = {name: [] for name in garment.cloths}
        for seam in garment.seams:
            for cloth in seam.cloths():
                self.seams_of[cloth].append(seam)
        lists = (self.put, self.result.fired, self.result.beside)
        self.outcomes = Outcomes(garment, knowledge, self.seam_facts, lists)
        self.outcomes.after(before.outcomes)
        self.unsewn = {s.name for s in garment.seams if asked_by_itself(s, garment, knowledge)}
        self.of_seams = keyed(garment.seams)
        self.of_cloths = {name: name for name in self.fabrics}
        self.of_pairs = {pair: pair for pair in combinations(self.fabrics, 2)}

    def run(self) -> Gathered:
        for name in self.fabrics:
            self.outcomes.of_itself(name, partial(self._cloth, name))
            own = onthetable.pieces_say(name, self.garment, self.knowledge)
            for said in (*own, *onthetable.left_unwashed(name, self.garment, self.knowledge)):
                self._put(self.fabrics[name], said)
        machine = speakers.machine_says(self.garment, self.knowledge)
        for seam in self.garment.seams:
            sews = [] if seam.name in self.unsewn else machine
            for said in speakers.seam_says(seam, self.garment, self.knowledge, sews):
                self._put(self.seams[seam.name], said)
            beside = zip_line_says(seam, self.garment, self.knowledge)
            hem = bound_hem_says(seam, self.garment, self.knowledge)
            bag = hung_on_wax(seam, self.garment, self.knowledge)
            for said in (*beside, *hem, *bag, *mounted_says(seam, self.garment, self.knowledge)):
                self._put(self.seams[seam.name], said)
        facts = maker_facts(self.garment.maker) | garment_facts(self.garment, self.knowledge)
        for rule in self.asker.rules():
            part = rule.parts.get("maker")
            if part is None or test_facts(part, facts):
                self._rule(rule)
        for place, said in self.put:
            self.result.said[place][said.claim.aspect].append(said)
        for seam in self.garment.seams:
            self._drop_idle(seam)
        self.result.outcomes = self.outcomes.closed()
        return self.result

    def _cloth(self, name: str) -> None:
        cloth = self.garment.cloths[name]
        own = speakers.cloth_says(cloth, self.knowledge)
        for said in (*own, *laid_says(cloth, self.knowledge)):
            self._say_cloth(name, said, self.seams_of[name])

    def _drop_idle(self, seam: Seam) -> None:
        """What nobody asks of this kind of place: a hem is no seam, and a button has no needle."""
        said = self.result.said[self.seams[seam.name]]
        hem = self.seam_facts[seam.name]["edge"] == "hem"
        kind = self.knowledge.places.kinds.get(seam.place or ("hem" if hem else PLAIN))
        idle = kind.drops if kind else (SEAM_ONLY if hem else ("hem.kind",))
        idle = (*idle, *SEAM_ONLY) if seam.name in self.unsewn else idle
        # What is turned shuts its own edges in: gw-apparel-2012 p. 451.
        if self.seam_facts[seam.name]["edge"] == "turned":
            idle = (*idle, FINISH)
        fixed = {aspect for aspect, _ in seam.choices}
        for aspect in idle:
            if aspect not in fixed:
                said.pop(aspect, None)
        self._drop_hidden(seam, said)
        self._drop_loose(seam, said)
        drop_lining(seam, said, self.garment, self.entries)
        drop_backing(seam, said, self.garment, self.knowledge)
        if (kind.id if kind else "hem" * hem) != "hem":
            return
        meant = {f"rule {rule.id}" for rule in self._hem_rules(seam)} | {"maker"}
        said[ALLOWANCE] = [s for s in said.get(ALLOWANCE, []) if s.claim.origin in meant]
        if not said[ALLOWANCE]:
            del said[ALLOWANCE]

    def _drop_loose(self, seam: Seam, said: dict[str, list[Said]]) -> None:
        """Elastic and cord run loose in a casing: no row goes through them, so none minds them."""
        if seam.place != "casing":
            return
        entries, cloths = self.knowledge.entries, self.garment.cloths
        loose = {n for n in seam.cloths() if entries[cloths[n].entry].kind != "cloth"}
        for aspect in SEWN_THROUGH & said.keys():
            said[aspect] = [s for s in said[aspect] if not s.cloths & loose]
            if not said[aspect]:
                del said[aspect]

    def _drop_hidden(self, seam: Seam, said: dict[str, list[Said]]) -> None:
        """What backs both sides of a seam shows nowhere, so it wishes no kind of seam or edge.

        A sheer under a firm shell is no sheer seam: the shell on either side says how it is made.
        What keeps an edge from ravelling away holds for what lies inside as well.
        """
        uses = [use.cloth for use in seam.uses]
        hidden = frozenset(uses[1:-1]) - {uses[0]}
        least = BACKED - 1 if hidden and hidden <= self.backing else BACKED
        if len(uses) < least or uses[0] != uses[-1]:
            return
        for aspect in SEAM_ONLY:
            found = [(s, s.cloths and s.cloths <= hidden) for s in said.get(aspect, ())]
            kept = [s for s, inner in found if not inner or (aspect == FINISH and s.claim.guards)]
            if aspect in said and kept:
                said[aspect] = kept

    def _hem_rules(self, seam: Seam) -> Iterator[Rule]:
        """The rules that fired at a hem because it is one; what others say of it is of seams."""
        elsewhere = {**self.seam_facts[seam.name], "edge": "open"}
        for fired in self.result.fired:
            part = fired.rule.parts.get("seam")
            here = fired.place == self.seams[seam.name]
            if here and part is not None and test_facts(part, elsewhere) is Truth.NO:
                yield fired.rule

    def _rule(self, rule: Rule) -> None:
        if rule.shape == "layer":
            self.outcomes.speak(rule, self.of_cloths, self.asker.touched, self._layer)
        elif rule.shape == "garment pair":
            self.outcomes.speak(rule, self.of_pairs, self.asker.among, self._garment_pair)
        else:
            self.outcomes.speak(rule, self.of_seams, self.asker.may_hold, self._seam_rule)

    def _put(self, place: Place, said: Said) -> None:
        eased = self._eased(said)
        self.put.append((place, eased))
        cloth = said.cloths and all(self.entries[name].kind == "cloth" for name in said.cloths)
        moved = unrested(eased, self.knowledge) if cloth else []
        for word in (*speakers.no_steam(eased, self.knowledge), *moved):
            if self._concerns(place, word):
                self.put.append((place, word))

    def _concerns(self, place: Place, said: Said) -> bool:
        return place.scope in self.knowledge.aspects[said.claim.aspect].scopes

    def _eased(self, said: Said) -> Said:
        """What a maker lets her own cloth bear, against her written reason."""
        if len(said.cloths) != 1 or not self.loosened:
            return said
        (cloth,) = said.cloths
        loosened = self.loosened.get(cloth)
        return speakers.eased(said, loosened) if loosened else said

    def _say_cloth(self, cloth: str, said: Said, seams: list[Seam]) -> None:
        """Put what a cloth says into every place of the aspect's scopes."""
        scopes = self.knowledge.aspects[said.claim.aspect].scopes
        if "fabric" in scopes:
            self._put(self.fabrics[cloth], said)
        else:
            for word in speakers.no_steam(said, self.knowledge):
                if self._concerns(self.fabrics[cloth], word):
                    self._put(self.fabrics[cloth], word)
        if "seam" in scopes:
            for seam in seams:
                if self._heard(seam, said):
                    self._put(self.seams[seam.name], said)
        if "garment" in scopes and self._heard_at_last(cloth, said):
            self._put(self.whole, said)

    def _heard_at_last(self, cloth: str, said: Said) -> bool:
        """Whether a claim counts for the whole garment; one seam has no last press of its own."""
        if self.garment.cloths[cloth].detachable:
            return False
        kind = self.entries[cloth].kind
        kept_off = kind in speakers.KEPT_OFF and said.claim.aspect == speakers.IRONING
        if kept_off and not self.garment.single:
            self.result.beside.append(said)
            return False
        if said.claim.aspect.startswith("press."):
            pressed = cloth in self.garment.apart and speakers.is_heat_need(said.claim)
            # A notion has had its own press when it was put in; only what it bears still counts.
            idle = kind != "cloth" and not speakers.is_heat_limit(said.claim)
            return not (self.garment.single or pressed or idle or self._beside(kind, said))
        return True

    def _beside(self, kind: str, said: Said) -> bool:
        """Whether the last press goes round what says this; what it bears is kept, to be told."""
        if kind not in speakers.WALKED_ROUND:
            return False
        if speakers.is_heat_limit(said.claim):
            eased = self._eased(said)
            self.result.beside += [eased, *speakers.no_steam(eased, self.knowledge)]
        return True

    def _heard(self, seam: Seam, said: Said) -> bool:
        """Whether a claim counts in a seam: not what the maker's way of working makes idle."""
        claim = said.claim
        if claim.aspect == "interfacing.kind":
            return self._beside_interfacing(seam, said.cloths)
        if not speakers.asked(self.knowledge.aspects[claim.aspect], seam):
            return False
        if speakers.is_heat_need(claim):
            apart = said.cloths <= seam.apart and bool(said.cloths)
            return not (seam.cold or felled_over(seam)) and not (
                apart and borne_apart(seam, said, self._lid, self._kind)
            )
        return True

    def _kind(self, name: str) -> str:
        return self.entries[name].kind

    def _lid(self, name: str, glue: str) -> float:
        """What a cloth bears of an iron, °C, as moist as a glue asks for it."""
        said = words_of(self.garment.cloths[name], self.asker, self.knowledge)
        words = [self._eased(s) for s in said]
        return lowest_lid(words, self.knowledge.entries[self.garment.cloths[glue].entry])

    def _beside_interfacing(self, seam: Seam, cloths: frozenset[str]) -> bool:
        """An interfacing is the business of the layers that it lies against."""
        kinds = [self.entries[use.cloth].kind for use in seam.uses]
        for i, kind in enumerate(kinds):
            if kind in STIFFENS:
                beside = {u.cloth for u in seam.uses[max(i - 1, 0) : i + 2]}
                if cloths & beside or not cloths:
                    return True
        return False

    def _layer(self, rule: Rule, cloth: str) -> None:
        tree = rule.parts["layer"]
        seam_part = rule.parts.get("seam")
        seams: list[Seam] = []
        best = Truth.NO
        for seam in self.seams_of[cloth]:
            truth = self.asker.best_use(tree, seam, cloth)
            if truth and seam_part:
                truth = min(truth, test_facts(seam_part, self.seam_facts[seam.name]))
            if truth:
                seams.append(seam)
                best = max(best, truth)
        if seam_part is None:
            best = max(best, self.asker.base(tree, cloth))
        if best is Truth.NO:
            return
        facts = self.asker.facts(tree, cloth)
        for claim in self._usable(rule, best):
            said = Said(cloth, claim, facts, best is Truth.YES, frozenset((cloth,)))
            self._say_cloth(cloth, said, seams)
        places = [self.seams[s.name] for s in seams] if seam_part else [self.fabrics[cloth]]
        for place in places:
            self._fire(rule, place, (cloth,), facts, best)

    def _seam_rule(self, rule: Rule, seam: Seam) -> None:
        facts_here = self.seam_facts[seam.name]
        part = rule.parts.get("seam")
        here = test_facts(part, facts_here) if part else Truth.YES
        if here is Truth.NO:
            return
        truth, uses = self._who_in(rule, seam)
        truth = min(truth, here)
        if truth is Truth.NO:
            return
        facts = tuple(facts_of(part, facts_here, seam.name)) if part else ()
        facts += self.asker.facts_of_uses(rule, uses)
        names = tuple(sorted({use.cloth for use in uses}))
        who = " with ".join(names) if names else seam.name
        place = self.seams[seam.name]
        for claim in self._usable(rule, truth):
            said = Said(who, claim, facts, truth is Truth.YES, frozenset(names))
            if "seam" in self.knowledge.aspects[claim.aspect].scopes:
                if self._heard(seam, said):
                    self._put(place, said)
            else:
                self._put_beside(claim, said, uses)
        self._fire(rule, place, names, facts, truth)

    def _put_beside(self, claim: Claim, said: Said, uses: tuple[Use, ...]) -> None:
        """A claim on a fabric's aspect in a rule about a seam: to the layer that it names."""
        chosen = {"first": uses[:1], "second": uses[1:2]}.get(claim.on, uses)
        scopes = self.knowledge.aspects[claim.aspect].scopes
        for name in sorted({use.cloth for use in chosen}):
            if "fabric" in scopes:
                self._put(self.fabrics[name], said)
        if "garment" in scopes:
            self._put(self.whole, said)

    def _who_in(self, rule: Rule, seam: Seam) -> tuple[Truth, tuple[Use, ...]]:
        if rule.shape == "pair":
            return self.asker.best_pair(rule.parts["pair"], seam.uses)
        if rule.shape == "every":
            return self.asker.every(rule.parts["every"], seam.uses)
        if rule.shape == "some":
            return self.asker.some(rule.parts["some"], seam.uses)
        return Truth.YES, ()

    def _garment_pair(self, rule: Rule, pair: tuple[str, str]) -> None:
        uses = tuple(self.asker.own[name] for name in pair)
        truth, found = self.asker.best_pair(rule.parts["garment pair"], uses)
        if truth is Truth.NO:
            return
        facts = self.asker.facts_of_uses(rule, found)
        who = " with ".join(pair)
        for claim in self._usable(rule, truth):
            said = Said(who, claim, facts, truth is Truth.YES, frozenset(pair))
            self._put_beside(claim, said, found)
        self._fire(rule, self.whole, pair, facts, truth)

    def _usable(self, rule: Rule, truth: Truth) -> list[Claim]:
        """Where a condition only may hold, what guards against harm is said, and nothing else."""
        if truth is Truth.YES:
            return list(rule.claims)
        aspects = self.knowledge.aspects
        held = (speakers.held_back(claim, aspects[claim.aspect]) for claim in rule.claims)
        return [claim for claim in held if claim is not None]

    def _fire(
        self,
        rule: Rule,
        place: Place,
        cloths: tuple[str, ...],
        facts: tuple[Fact, ...],
        truth: Truth,
    ) -> None:
        self.result.fired.append(Fired(rule, place, cloths, facts, truth is Truth.YES))
