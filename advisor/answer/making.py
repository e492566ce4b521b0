"""The build of each seam, cloth, thread and kit as plain data: keys of the JSON contract.

Lengths are mm, thread is m, strength N/cm, whatever the maker's units; sentences follow her
units. Everything here is added to a report that `report` has made.
"""

from __future__ import annotations

from typing import Any

from advisor.answer import seamwords as buildwords
from advisor.answer.buyingwords import cloth_row
from advisor.answer.citing import add_sources
from advisor.answer.cutwords import cut_row
from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.construction.bulk import picked
from advisor.construction.clothlist import cloths_to_buy
from advisor.construction.cutnotes import cut_note
from advisor.construction.seamwork import SeamWork, bulk_sources, seamworks
from advisor.construction.threadlist import COTTON, ThreadBought, threads_to_buy
from advisor.construction.threads import whole
from advisor.craft import threadsize
from advisor.decide.kit import Need, kit_of
from advisor.decide.trials import TRIED, find_trials
from advisor.knowledge.model import Knowledge
from advisor.units import System

Row = dict[str, Any]


def add_build(data: Row, judgement: Judgement, knowledge: Knowledge, *, shopping: bool) -> None:
    """Put the build of every seam into a report, and with `shopping` what to buy."""
    works = seamworks(judgement, knowledge)
    units: System = "us" if data["units"] == "us" else "metric"
    by_name = {work.seam.name: work for work in works}
    for row in data["seams"]:
        row.update(seam_row(by_name[row["name"]], judgement, units))
    _results(data, judgement)
    if shopping:
        bought = cloths_to_buy(judgement, knowledge)
        cuts = [cut_note(cut, judgement, knowledge) for b in bought for cut in b.cuts]
        data["cloth"] = [cloth_row(b, units) for b in bought]
        data["cut"] = [cut_row(note, units) for note in cuts]
        data["thread"] = [thread_row(b) for b in threads_to_buy(judgement, works, cuts)]
        data["kit"] = [kit_row(need) for need in kit_of(judgement, knowledge)]
    _cite(data, knowledge)


def seam_row(work: SeamWork, judgement: Judgement, units: System) -> Row:
    """What a seam comes to; a figure that cannot be had is None."""
    spot, finishing, holding = work.spot, work.finishing, work.holding
    verdicts = judgement.verdicts[Place("seam", work.seam.name)]
    plies = spot.plies if spot else sum(use.fullness for use in work.seam.uses)
    return {
        "times": work.seam.making.times,
        "plies": _round(plies),
        "at": spot.name if spot else "at the stitch line",
        "thickness_mm": _round(spot.lies_mm) if spot else None,
        "under_foot_mm": _round(spot.foot_mm) if spot else None,
        "foot_lift_mm": work.lift,
        "room": work.room,
        "squeeze": work.squeeze,
        "fine_needle": None
        if work.fine_needle is None
        else {
            "nm": work.fine_needle[0],
            "wants_nm": work.fine_needle[1],
        },
        "spots": [
            {
                "at": s.name,
                "plies": _round(s.plies),
                "thickness_mm": _round(s.lies_mm),
                "under_foot_mm": _round(s.foot_mm),
                "sewn": s.sewn,
                "complete": s.complete,
            }
            for s in work.spots
        ],
        "allowance_mm": finishing.allowance if finishing else None,
        "finish": finishing.finish if finishing else None,
        "needs_mm": _round(finishing.needs) if finishing else None,
        "short_mm": _round(finishing.short) if finishing else None,
        "finish_when": finishing.when if finishing else "",
        "grade_mm": [_round(w) for w in work.trimming.grade],
        "strength_n_per_cm": _round(holding.has) if holding.has is not None else None,
        "strength_needs_n_per_cm": holding.needs,
        "thread_m": _thread(work),
        "fullness": _fullness(work),
        "class": _class(work, picked(verdicts, "stitch.type")),
        "build": buildwords.bulk_clause(work, units),
        "build_says": buildwords.seam_says(work, units),
        "build_warns": buildwords.warnings(work, units),
        "build_sources": list(_sources(work)),
    }


def _sources(work: SeamWork) -> tuple[str, ...]:
    finish = work.finishing.sources if work.finishing else ()
    full = work.full.sources if work.full else ()
    held = work.holding.sources if work.holding.has is not None else ()
    needle = ("estimate",) if work.fine_needle else ()
    return tuple(dict.fromkeys((*bulk_sources(), *needle, *finish, *full, *held)))


def _thread(work: SeamWork) -> Row | None:
    """Metres by thread and by purpose, without wastage; None where no length is given."""
    if work.threads is None:
        return None
    use = whole(work.threads)
    return {
        "needle": _round(use.needle / 1000),
        "bobbin": _round(use.bobbin / 1000),
        "looper": _round(use.looper / 1000),
        "total": _round(use.total / 1000),
        "by": {p.purpose: _round(p.use.total / 1000) for p in work.threads},
    }


def _fullness(work: SeamWork) -> Row | None:
    full = work.full
    if full is None:
        return None
    return {
        "cloth": full.cloth,
        "method": full.method,
        "ratio": _round(full.ratio),
        "measured": None if full.measured is None else _round(full.measured),
        "finished_mm": full.finished,
        "cut_mm": None if full.cut is None else _round(full.cut),
        "usual": list(full.usual),
    }


def _class(work: SeamWork, stitch: str) -> Row:
    """The standards' names of stitch and seam; a name from memory is marked."""
    named = work.named
    return {
        "iso_4915": stitch if stitch.isdigit() else None,
        "iso_4916": named.iso or None if named else None,
        "astm_d6193": named.astm or None if named else None,
        "from_memory": [
            key
            for key, sources in (
                ("iso_4916", named.iso_sources),
                ("astm_d6193", named.astm_sources),
            )
            if "memory" in sources
        ]
        if named
        else [],
    }


def thread_row(bought: ThreadBought) -> Row:
    """Thread to buy in one colour; wastage is in it."""
    return {
        "colour": bought.colour,
        "matches": list(bought.to_match),
        "fibre": bought.fibre,
        "tex": bought.tex,
        "needle_m": _round(bought.needle),
        "bobbin_m": _round(bought.bobbin),
        "looper_m": _round(bought.looper),
        "overlocker_m": _round(bought.overlocker),
        "total_m": _round(bought.total),
        "buy": buildwords.reels_text(bought.reels, bought.cones),
        "seams": list(bought.seams),
        "not_counted": list(bought.uncounted),
        "tucks": list(bought.tucks),
        "ticket": None
        if bought.ticket is None
        else {
            "number": _round(bought.ticket, 0),
            "of": "cotton" if bought.fibre == COTTON else "metric",
        },
        "needle_nm": bought.needle_size,
        "size_sources": list(threadsize.SOLD_SOURCES),
        "sources": list(bought.sources),
    }


def kit_row(need: Need) -> Row:
    """A tool that is called for."""
    return {
        "group": need.group,
        "item": need.item,
        "aspect": need.aspect,
        "for": list(need.places),
        "state": need.state,
        "length_mm": None if need.length is None else _round(need.length, 0),
        "strip": None
        if need.strip is None
        else {
            "width_mm": [_round(w, 1) for w in need.strip.width],
            "square_mm": None if need.strip.square is None else _round(need.strip.square, 0),
            "sources": list(need.strip.sources),
        },
        "instead": [
            {"text": s.text, "checked": True, "sources": list(s.sources)} for s in need.instead
        ],
        "ruled_out": list(need.refused),
    }


def _results(data: Row, judgement: Judgement) -> None:
    """What was tried already, at the test that it belongs to; and what each test sets."""
    trials = {trial.places: trial for trial in find_trials(judgement)}
    for row in data["tests"]:
        trial = trials[tuple(row["places"])]
        verdicts = judgement.verdicts[Place("seam", trial.places[0])]
        row["settings"] = {a: _setting(verdicts[a]) for a in TRIED if a in verdicts}
        row["results"] = [
            {"seam": r.seam, "result": r.text, "works": r.works}
            for r in judgement.garment.plan.results
            if r.seam in trial.places
        ]


def _setting(verdict: Any) -> Any:
    if verdict.pick is None:
        return None
    words = verdict.aspect.words
    return words[int(verdict.pick)] if words else verdict.pick


def _cite(data: Row, knowledge: Knowledge) -> None:
    """Add the sources that only the build cites."""
    said = [id_ for row in data["seams"] for id_ in row["build_sources"]]
    bought = (*data.get("cloth", ()), *data.get("cut", ()), *data.get("thread", ()))
    said += [id_ for row in data.get("kit", ()) if row["strip"] for id_ in row["strip"]["sources"]]
    said += [id_ for row in bought for id_ in (*row["sources"], *row.get("size_sources", ()))]
    said += [id_ for row in data.get("kit", ()) for s in row["instead"] for id_ in s["sources"]]
    add_sources(data, said, knowledge)


def _round(value: float, digits: int = 2) -> float:
    return round(value, digits)
