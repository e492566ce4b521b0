"""Answers of the heat model as plain data, and back: every number as it was, to the last digit.

Data of another shape are no answer: None comes of them.
"""

from __future__ import annotations

import contextlib
import math
from collections.abc import Callable
from typing import Any, TypeVar

from advisor.heat.model.dialogue import GlueLine, HeatAnswer, LayerHeat, Times
from advisor.heat.model.materials import Range

Plain = dict[str, Any]
_T = TypeVar("_T")
_UNFIT = (KeyError, TypeError, ValueError, AttributeError)


def as_plain(answer: HeatAnswer) -> Plain:
    """An answer as data; its place is left out, for whoever asked knows it."""
    touch = answer.touch_safe_after
    return {
        "sole": _ends(answer.sole),
        "cloth": answer.cloth,
        "moisture": answer.moisture,
        "layers": [_plain_layer(layer) for layer in answer.layers],
        "glue": None if answer.glue is None else _plain_glue(answer.glue),
        "touch": None if touch is None else _ends(touch),
        "press_at_most": answer.press_at_most_s,
        "limited_by": answer.limited_by,
    }


def answer_of(data: Plain) -> HeatAnswer | None:
    """The answer that such data are."""
    with contextlib.suppress(*_UNFIT):
        return HeatAnswer(
            place="",
            sole=_range(data["sole"]),
            cloth=_or_none(_word, data["cloth"]),
            moisture=_word(data["moisture"]),
            layers=tuple(_layer(x) for x in data["layers"]),
            glue=_or_none(_glue, data["glue"]),
            touch_safe_after=_or_none(_range, data["touch"]),
            press_at_most_s=_or_none(_number, data["press_at_most"]),
            limited_by=_or_none(_word, data["limited_by"]),
        )
    return None


def plain_times(times: Times) -> Plain:
    """A band of seconds as data."""
    return {"times": [times.low, times.mid, times.high]}


def times_of(data: Plain) -> Times | None:
    """The band of seconds that such data are."""
    with contextlib.suppress(*_UNFIT):
        return _times(data["times"])
    return None


def _plain_layer(layer: LayerHeat) -> Plain:
    reaches = layer.reaches_limit_s
    return {
        "name": layer.name,
        "limit": layer.limit_c,
        "at": [[second, *_ends(band)] for second, band in layer.at_s],
        "reaches": None if reaches is None else [reaches.low, reaches.mid, reaches.high],
        "by": layer.dominated_by,
    }


def _layer(data: Plain) -> LayerHeat:
    return LayerHeat(
        _word(data["name"]),
        _or_none(_number, data["limit"]),
        tuple((_number(second), _range(band)) for second, *band in data["at"]),
        _or_none(_times, data["reaches"]),
        _or_none(_word, data["by"]),
    )


def _plain_glue(glue: GlueLine) -> Plain:
    return {
        "sole": _ends(glue.sole),
        "need": glue.need_c,
        "hot": [glue.hot_after.low, glue.hot_after.mid, glue.hot_after.high],
        "press": glue.press_s,
        "spoils": list(glue.spoils),
        "over": glue.over_limit,
        "usual": [glue.usual.low, glue.usual.mid, glue.usual.high],
        "usual_at_20_s": _ends(glue.usual_at_20_s),
    }


def _glue(data: Plain) -> GlueLine:
    if not isinstance(data["over"], bool):
        raise TypeError(data["over"])
    return GlueLine(
        _range(data["sole"]),
        _number(data["need"]),
        _times(data["hot"]),
        _or_none(_number, data["press"]),
        tuple(_word(x) for x in data["spoils"]),
        data["over"],
        _times(data["usual"]),
        _range(data["usual_at_20_s"]),
    )


def _ends(band: Range) -> list[float]:
    return [band.low, band.mid, band.high]


def _range(data: list[Any]) -> Range:
    low, mid, high = data
    return Range(_number(low), _number(mid), _number(high))


def _times(data: list[Any]) -> Times:
    low, mid, high = data
    return Times(*(_or_none(_number, x) for x in (low, mid, high)))


def _or_none(read: Callable[[Any], _T], data: Any) -> _T | None:
    return None if data is None else read(data)


def _number(data: Any) -> float:
    if isinstance(data, bool) or not isinstance(data, int | float) or not math.isfinite(data):
        raise TypeError(data)
    return data


def _word(data: Any) -> str:
    if not isinstance(data, str):
        raise TypeError(data)
    return data
