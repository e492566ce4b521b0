"""The order of work: what before what, with the fewest changes of machine and iron.

This room is pure: steps and precedences go in, a plan with a proven bound comes out.
`steps` holds the values, `costs` prices a change of set-up, `graph` knows what must come
before what, `search` finds the cheapest order, `sittings` cuts it into evenings and
`explain` says why a step stands where it stands.
"""
