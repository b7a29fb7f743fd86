# The rows of crowd.mjs by numpy: the same laws, the same checks, the same things told. A line each: name, what it
# gives, milliseconds a turn (the least of nine: what it takes while nothing else runs).
#
# The work is equal where it can be: twelve columns are drawn whole on both sides, from numbers of 52 bits or more, by a
# ziggurat of 256 layers; both bin the gap finely and tell its mean and deviation. Ours does more: 21 rules between sizes
# instead of four gaps, third and fourth moments, the three worst sets. It also does less in one thing: where the ends of
# a block's columns show that every set goes together, it does not look at each.

import sys
import time

import numpy as np

COUNT = 1_000_000
rng = np.random.default_rng(1)
names = ["p", "d1", "rb", "rl", "b1", "d2", "d3", "ba", "ti", "to", "b3", "ch"]
middle = dict(zip(names, [12.7, 7.75, 5.557, 2.248, 2.4, 3.6, 3.625, 5.481, 1.0, 1.0, 4.6, 0.15]))
half = {name: 0.05 if name == "b3" else 0.006 for name in names}


def normal():
    return {name: middle[name] + half[name] / 3 * rng.standard_normal(COUNT) for name in names}


def truncated():
    def column():
        z = rng.standard_normal(COUNT)
        while (outside := np.flatnonzero(np.abs(z) > 3)).size:
            z[outside] = rng.standard_normal(outside.size)
        return z

    return {name: middle[name] + half[name] / 3 * column() for name in names}


def told(s):
    gap = s["b3"] - s["b1"] - 2 * s["ti"]
    together = (gap >= 0) & (s["d3"] >= s["d2"]) & (s["rb"] >= s["ba"]) & (s["b1"] >= s["rl"])
    passes = together & (gap >= 0.16) & (gap <= 0.24)
    np.histogram(gap, bins=2001, range=(0.0, 0.4))
    gap.mean(), gap.std()
    return passes.mean()


kinds = [normal()[name] for name in ("ti", "b3", "d2", "d3")]


def classes():
    a, b = kinds[0], kinds[1]
    bins = [
        np.clip(((x - middle[n] + half[n]) * (4 / (2 * half[n]))).astype(np.int64), 0, 3) for x, n in ((a, "ti"), (b, "b3"))
    ]
    partner = np.full(COUNT, -1)
    for each in range(4):
        first, second = (np.flatnonzero(kind == each) for kind in bins)
        pairs = min(first.size, second.size)
        partner[first[:pairs]] = second[:pairs]
    return (partner < 0).mean()


def ranks():
    return sum(int(np.argsort(kind)[0]) for kind in kinds)


def sorts():
    return sum(float(np.sort(kind)[0]) for kind in kinds)


print(f"numpy {np.__version__} python {sys.version.split()[0]}")
for name, row in [("normal", lambda: told(normal())), ("truncated", lambda: told(truncated())), ("classes", classes), ("ranks", ranks), ("sorts", sorts)]:
    answer, times = row(), []
    for _ in range(9):
        start = time.perf_counter()
        row()
        times.append(1e3 * (time.perf_counter() - start))
    print(name, answer, min(times))
