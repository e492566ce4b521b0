"""Fusing: when the glue line is hot enough, and whether any setting that all layers bear does it.

A belt's or an iron's temperature is not the glue line's (fusing-notes); here the glue line is
the cooler side of the joint on the fusible's glued face.  The cautious end is the LATEST time,
and the glue must hold its temperature for ``hold_s`` more.  Needs come from the caller and are
makers' data of trade pages (interlining-sheet-1, fusing-trade-page: 110-175 degrees, 2-20 s).

A setting is borne where its mid is no higher than the lowest limit of all layers (the limit is
of the sole) and where, by the cautious end, no layer passes its own limit before the glue is
done: the calculation can only take away from the first test, never add.
"""

from __future__ import annotations

from advisor.heat.model.bands import Study
from advisor.heat.model.dialogue import Glue, GlueLine
from advisor.heat.model.solve import HORIZON


def glue_line(looked_at: Study, stack: int, glue: Glue) -> GlueLine:
    """The glue line of one stack of a study."""
    under = looked_at.stacks[stack]
    if not 0 <= glue.joint < len(under.layers) - 1:
        raise ValueError(f"no joint below layer {glue.joint}")
    hot = looked_at.joint_seconds(stack, glue.joint, glue.need_c)
    press = None if hot.high is None else hot.high + glue.hold_s
    if press is not None and press > HORIZON:
        press = None
    spoils = () if press is None else _spoilt(looked_at, stack, press)
    limit = under.limit()
    over = limit is not None and under.sole.mid > limit
    usual = looked_at.usual_joint_seconds(stack, glue.joint, glue.need_c)
    warm = looked_at.usual_temperature(stack, glue.joint + 1, 20.0)
    return GlueLine(under.sole, glue.need_c, hot, press, spoils, over, usual, warm)


def _spoilt(looked_at: Study, stack: int, press_s: float) -> tuple[str, ...]:
    """The layers that reach their limit, by the cautious end, within the press."""
    spoilt = []
    for place, layer in enumerate(looked_at.stacks[stack].layers):
        if layer.limit_c is not None:
            soonest = looked_at.seconds(stack, place, layer.limit_c).low
            if soonest is not None and soonest <= press_s:
                spoilt.append(layer.name)
    return tuple(spoilt)
