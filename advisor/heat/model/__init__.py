"""Heat through the layers: how hot each ply under the iron gets, and how soon.

A pure calculation: no rules, no files, no printing.  It is guidance ON TOP of the limits that
labels and sources give; it may lower a limit or shorten a time, never raise one.

The numbers are computed, not measured: no published temperature-time measurements between the
layers of a garment under a hand iron were found (two papers model fusing and pressing,
korycki-szafranska, but their tables were not read; contact resistance is called crucial,
contact-resistance-paper, without a number).

Rooms, lower first:  materials (layers) · stack (iron, cloth, plies, board) · grid (cells) ·
modes (the dry solver) · water, tridiagonal and march (the moist one) · solve (which of them) ·
bands (uncertainty) · burns · cooling · fusing · rhythm · answer.
Nothing is imported here, so that start-up does not load numpy.
"""
