"""The needle of gathering rows: that of their seam, where the drawn-up edge bears it as well."""

from __future__ import annotations

from dataclasses import replace

from advisor.claims.combine import Verdict
from advisor.claims.valuesets import Choice
from advisor.order.steps import MachineState


def with_the_point_of(
    rows: MachineState, seam: MachineState | None, point: Verdict | None
) -> MachineState:
    """The rows with the point of the seam, so that no second needle is bought for them alone."""
    if seam is None or point is None or not isinstance(point.advised, Choice):
        return rows
    borne = {point.aspect.words[i] for i in point.advised.options()}
    return replace(rows, point=seam.point) if seam.point in borne else rows
