"""How each place is built, and what is bought: cloth, pieces, thread, kit.

Lengths are mm, thread is m, strength N/cm, whatever the maker's units; sentences follow them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from msgspec import Struct

from advisor.answer import seamwords
from advisor.answer.buyingwords import (
    UNDER_CLOTH,
    told_cloth,
    without_piece,
    zips_apart,
)
from advisor.answer.cutwords import told_cut
from advisor.answer.model.making import (
    ToldBuild,
    ToldClass,
    ToldCloth,
    ToldCut,
    ToldFineNeedle,
    ToldFullness,
    ToldReel,
    ToldShade,
    ToldSpot,
    ToldThread,
    ToldThreadUse,
    ToldTicket,
    ToldWeight,
)
from advisor.answer.model.needed import ToldNeed
from advisor.answer.model.told import ToldResult, ToldTest
from advisor.answer.neededwords import told_need
from advisor.answer.teller import Teller
from advisor.answer.weightwords import told_weight
from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.judgement import Judgement, Shade
from advisor.construction.bulk import number, picked
from advisor.construction.clothlist import cloths_to_buy
from advisor.construction.costing import CostLine, costs_of
from advisor.construction.cutnotes import cut_note
from advisor.construction.rack import Found, from_rack, rack_of
from advisor.construction.seamwork import SeamWork, bulk_sources, seamworks
from advisor.construction.stack import Spot
from advisor.construction.threadlist import COTTON, ThreadBought, threads_to_buy
from advisor.construction.threads import whole
from advisor.construction.threadshare import matched
from advisor.construction.weighing import weigh
from advisor.craft import colour, rolled, threadsize
from advisor.decide.kit import HAVE, Need, kit_of
from advisor.decide.onerow import one_row
from advisor.decide.trials import TRIED, find_trials
from advisor.decide.usedup import GROUP, used_up
from advisor.knowledge.model import Knowledge
from advisor.knowledge.places import Method
from advisor.knowledge.pricing import Quoting
from advisor.order.rows import edges_in_strips, further_rows
from advisor.order.work import Work
from advisor.units import System


class Shopping(Struct, frozen=True):
    """What is bought and cut for a garment."""

    cloth: tuple[ToldCloth, ...]
    cut: tuple[ToldCut, ...]
    thread: tuple[ToldThread, ...]
    kit: tuple[ToldNeed, ...]
    weight: ToldWeight | None


def told_builds(judgement: Judgement, teller: Teller) -> dict[str, ToldBuild]:
    """What every place comes to as it is built, by its name."""
    return {
        work.seam.name: _built(work, judgement, teller)
        for work in seamworks(judgement, teller.knowledge)
    }


def told_shopping(judgement: Judgement, teller: Teller, work: Work | None = None) -> Shopping:
    """Cloth, pieces, thread and kit; `work` says how each place is made and what is neatened."""
    works = seamworks(judgement, teller.knowledge)
    bought = cloths_to_buy(judgement, teller.knowledge)
    cuts = [cut_note(cut, judgement, teller.knowledge) for b in bought for cut in b.cuts]
    threads = threads_to_buy(judgement, works, teller.knowledge, cuts, _rows(work))
    cloth = tuple(told_cloth(b, teller) for b in bought)
    cloth += tuple(without_piece(name) for name in _no_piece(judgement, teller.knowledge))
    laid = {row.fabric: f"{row.buy}{UNDER_CLOTH}" for row in cloth if row.buy}
    laid |= zips_apart(judgement.garment)
    needs = _needs(judgement, work, teller.knowledge)
    return Shopping(
        cloth,
        tuple(told_cut(note, teller) for note in cuts),
        tuple(_thread(b, judgement, teller) for b in threads),
        tuple(told_need(need, laid, teller) for need in needs),
        told_weight(judgement, works, weigh(judgement, bought, threads, teller.knowledge), teller),
    )


def _no_piece(judgement: Judgement, knowledge: Knowledge) -> list[str]:
    """The cloths of a garment that no piece is said of."""
    cut = {piece.cloth for piece in judgement.garment.plan.pieces}
    cloths = judgement.garment.cloths.items()
    return [n for n, c in cloths if n not in cut and knowledge.entries[c.entry].kind == "cloth"]


def _needs(judgement: Judgement, work: Work | None, knowledge: Knowledge) -> list[Need]:
    """Everything that is called for; a tool that settings and methods both want stands once."""
    wrapped = None if work is None else edges_in_strips(work)
    methods: Mapping[str, Method] = {} if work is None else work.methods
    found = kit_of(judgement, knowledge, wrapped)
    there = {need.item for need in found if need.group == FOOT_GROUP}
    used = used_up(judgement.garment, methods, knowledge)
    return one_row([*found, *(need for need in used if need.item not in there)], knowledge)


def _rows(work: Work | None) -> dict[str, int]:
    """What the order sews at each place besides its seam; nothing where there is no order."""
    return {} if work is None else further_rows(work)


def costs(
    judgement: Judgement, quote: Quoting, knowledge: Knowledge, work: Work | None = None
) -> list[CostLine]:
    """What everything costs that is bought for a garment."""
    works = seamworks(judgement, knowledge)
    bought = cloths_to_buy(judgement, knowledge)
    cuts = [cut_note(cut, judgement, knowledge) for b in bought for cut in b.cuts]
    threads = threads_to_buy(judgement, works, knowledge, cuts, _rows(work))
    besides = (
        (need.item.split(" (")[0], need.number and need.number + need.spare, need.bought)
        for need in _needs(judgement, work, knowledge)
        if need.group == GROUP and need.strip is None and need.state != HAVE
    )
    return costs_of(judgement, bought, threads, quote, knowledge, besides)


def with_settings(tests: tuple[ToldTest, ...], judgement: Judgement) -> tuple[ToldTest, ...]:
    """The scrap tests with what each sets, and with what was tried already."""
    trials = {trial.places: trial for trial in find_trials(judgement)}
    found = []
    for test in tests:
        first = Place("seam", trials[test.places].places[0]) if test.places else None
        verdicts = judgement.verdicts[first] if first else {}
        settings = {a: _setting(verdicts[a]) for a in TRIED if a in verdicts}
        results = tuple(
            ToldResult(r.seam, r.text, r.works)
            for r in judgement.garment.plan.results
            if r.seam in test.places
        )
        found.append(replace(test, settings=settings, results=results))
    return tuple(found)


def _setting(verdict: Verdict) -> float | str | None:
    if verdict.pick is None:
        return None
    words = verdict.aspect.words
    return words[int(verdict.pick)] if words else verdict.pick


def _built(work: SeamWork, judgement: Judgement, teller: Teller) -> ToldBuild:
    spot, finishing, holding = work.spot, work.finishing, work.holding
    verdicts = judgement.verdicts[Place("seam", work.seam.name)]
    plies = spot.plies if spot else sum(use.fullness for use in work.seam.uses)
    fine = work.fine_needle
    units = teller.units
    return ToldBuild(
        times=work.seam.making.times,
        plies=round(plies, 2),
        at=spot.name if spot else "at the stitch line",
        thickness_mm=round(spot.lies_mm, 2) if spot else None,
        under_foot_mm=round(spot.foot_mm, 2) if spot else None,
        foot_lift_mm=work.lift,
        room=work.room,
        squeeze=work.squeeze,
        fine_needle=None if fine is None else ToldFineNeedle(*fine[:2]),
        spots=tuple(map(_spot, work.spots)),
        allowance_mm=finishing.allowance if finishing else None,
        finish=finishing.finish if finishing else None,
        needs_mm=round(finishing.needs, 2) if finishing else None,
        short_mm=round(finishing.short, 2) if finishing else None,
        finish_when=finishing.when if finishing else "",
        grade_mm=tuple(round(w, 2) for w in work.trimming.grade),
        strength_n_per_cm=round(holding.has, 2) if holding.has is not None else None,
        strength_needs_n_per_cm=holding.needs,
        thread_m=_thread_use(work),
        fullness=_fullness(work, units),
        class_=_class(work, picked(verdicts, "stitch.type")),
        build=seamwords.bulk_clause(work, units),
        band_says=seamwords.band_says(work, units),
        build_says=tuple(map(teller.say, seamwords.seam_says(work, units))),
        build_warns=tuple(seamwords.warnings(work, units)),
        build_sources=teller.cite(_sources(work)),
    )


def _spot(spot: Spot) -> ToldSpot:
    return ToldSpot(
        spot.name,
        round(spot.plies, 2),
        round(spot.lies_mm, 2),
        round(spot.foot_mm, 2),
        spot.sewn,
        spot.complete,
    )


def _sources(work: SeamWork) -> tuple[str, ...]:
    finish = work.finishing.sources if work.finishing else ()
    full = work.full.sources if work.full else ()
    held = work.holding.sources if work.holding.has is not None else ()
    needle = ("estimate",) if work.fine_needle else ()
    parts = work.parting.sources if work.parting else ()
    ease = work.lining.sources if work.lining else ()
    roll = rolled.SOURCES if work.trimming.through else ()
    bends = work.stiff.sources if work.stiff else ()
    every = (*bulk_sources(), *needle, *finish, *full, *held, *parts, *ease, *roll, *bends)
    return tuple(dict.fromkeys(every))


def _thread_use(work: SeamWork) -> ToldThreadUse | None:
    """Metres by thread and by purpose, without wastage; None where no length is given."""
    if work.threads is None:
        return None
    use = whole(work.threads)
    return ToldThreadUse(
        needle=round(use.needle / 1000, 2),
        bobbin=round(use.bobbin / 1000, 2),
        looper=round(use.looper / 1000, 2),
        total=round(use.total / 1000, 2),
        by={p.purpose: round(p.use.total / 1000, 2) for p in work.threads},
    )


def _fullness(work: SeamWork, units: System) -> ToldFullness | None:
    full = work.full
    if full is None:
        return None
    return ToldFullness(
        cloth=full.cloth,
        method=full.method,
        ratio=round(full.ratio, 2),
        measured=None if full.measured is None else round(full.measured, 2),
        finished_mm=full.finished,
        cut_mm=None if full.cut is None else round(full.cut, 2),
        usual=tuple(full.usual),
        layers=full.layers,
        says=" ".join(seamwords.full_says(work, units)),
    )


def _class(work: SeamWork, stitch: str) -> ToldClass:
    """The standards' names of stitch and seam; a name from memory is marked."""
    named = work.named
    return ToldClass(
        iso_4915=stitch if stitch.isdigit() else None,
        iso_4916=named.iso or None if named else None,
        astm_d6193=named.astm or None if named else None,
        from_memory=_from_memory(work),
    )


def _from_memory(work: SeamWork) -> tuple[str, ...]:
    named = work.named
    if named is None:
        return ()
    pairs = (("iso_4916", named.iso_sources), ("astm_d6193", named.astm_sources))
    return tuple(key for key, sources in pairs if "memory" in sources)


def _thread(bought: ThreadBought, judgement: Judgement, teller: Teller) -> ToldThread:
    """Thread to buy in one colour; wastage is in it."""
    return ToldThread(
        colour=bought.colour,
        matches=tuple(bought.to_match),
        fibre=bought.fibre,
        tex=bought.tex,
        needle_m=round(bought.needle, 2),
        bobbin_m=round(bought.bobbin, 2),
        looper_m=round(bought.looper, 2),
        overlocker_m=round(bought.overlocker, 2),
        total_m=round(bought.total, 2),
        buy=seamwords.reels_text(bought.reels, bought.cones, teller.units),
        seams=tuple(bought.seams),
        not_counted=tuple(bought.uncounted),
        tucks=tuple(bought.tucks),
        ticket=None
        if bought.ticket is None
        else ToldTicket(round(bought.ticket, 0), "cotton" if bought.fibre == COTTON else "metric"),
        needle_nm=bought.needle_size,
        needles_set=_needles_set(bought, judgement),
        to_match=tuple(matched(cloth, judgement.garment) for cloth in bought.to_match),
        size_sources=teller.cite(threadsize.SOLD_SOURCES),
        rack=_reels(bought, judgement, teller),
        shared=tuple(
            _shade(cloth, judgement.shades[cloth], teller)
            for cloth in bought.to_match
            if cloth in judgement.shades
        ),
        sources=teller.cite(bought.sources),
    )


def _needles_set(bought: ThreadBought, judgement: Judgement) -> tuple[float, ...]:
    """The sizes of needle that are set where a thread is sewn, NM, each once."""
    places = [judgement.verdicts[Place("seam", n)] for n in (*bought.seams, *bought.uncounted)]
    sizes = {number(verdicts, "needle.size") for verdicts in places}
    return tuple(sorted(size for size in sizes if size is not None))


def _shade(cloth: str, shade: Shade, teller: Teller) -> ToldShade:
    """A cloth that shares its thread; the sources are those of every difference of colour."""
    teller.cite(colour.SOURCES)
    found = colour.Match(shade.colour, shade.difference, shade.darker)
    near = round(found.difference, 2)
    return ToldShade(cloth, shade.colour, shade.reel, near, found.darker, found.seen)


def _reels(bought: ThreadBought, judgement: Judgement, teller: Teller) -> tuple[ToldReel, ...]:
    """Her reels that are near a colour; of those that suit the two best, else the best of all."""
    if any(judgement.shades[c].reel for c in bought.to_match if c in judgement.shades):
        return ()
    reels = rack_of(judgement.garment, teller.knowledge)
    places = [judgement.verdicts[Place("seam", name)] for name in bought.seams]
    found = from_rack(bought.colour, reels, places)
    return tuple(_reel(one, teller) for one in found[:MOST_REELS])


def _reel(one: Found, teller: Teller) -> ToldReel:
    near = one.found
    return ToldReel(
        one.reel.name,
        None if near is None else round(near.difference, 2),
        near is not None and near.darker,
        "" if near is None else near.seen,
        teller.cite(colour.SOURCES if near is not None else ("common-practice",)),
        one.wrong,
        near is not None and not one.wrong and near.suits,
    )


MOST_REELS = 2
FOOT_GROUP = "foot"
