# Writes fit-laws.csv: moments of truncated laws, and yields and percentiles of sums of unlike laws, by quadrature
# instead of by drawing. Run: python3 tests/reference/fit.py. Needs numpy and scipy; the versions go into the source
# column. `sets` is the number of sets that the test draws: tolerances are five standard errors of so many.

from pathlib import Path

import numpy as np
import scipy
from scipy import integrate, optimize, stats

SETS = 400_000
SOURCE = f"scipy {scipy.__version__} with numpy {np.__version__}; tests/reference/fit.py"


def truncated(sigmas, shift):
    """A bell about `shift` between -1 and 1, its standard deviation 1/sigmas."""
    sd = 1 / sigmas
    return stats.truncnorm((-1 - shift) / sd, (1 - shift) / sd, loc=shift, scale=sd)


def below(law, value, mean, sd):
    """Distribution of a number from `law` plus a normal number."""
    low, high = law.support()
    inside = lambda x: law.pdf(x) * stats.norm.cdf(value - x, mean, sd)
    return integrate.quad(inside, low, high, epsabs=1e-12, epsrel=1e-12, limit=400)[0]


rows = ["what,of,value,tolerance,unit,source"]


def row(what, of, value, tolerance, unit):
    rows.append(f"{what},{of},{value:.15g},{tolerance:.3g},{unit},{SOURCE}")


for sigmas, shift in [(3, 0), (3, 0.4), (1, -0.6), (0.2, 0), (0.2, 0.9), (4, 1), (12, 0.5)]:
    law = truncated(sigmas, shift)
    row("truncated_mean", f"{sigmas} {shift}", law.mean(), 1e-9, "t")
    row("truncated_sd", f"{sigmas} {shift}", law.std(), 1e-9, "t")

# Side gap b3 - b1 - 2 ti of 0.2: b3 +-0.05 and b1 +-0.03 normal at 3 sigmas, ti +-0.02 uniform. Pin clearance
# 0.025 of a normal pin +-0.004 at 3 sigmas and a truncated bore +-0.006.
plates = stats.uniform(-0.04, 0.08)
gap = lambda value: below(plates, value, 0.2, np.hypot(0.05, 0.03) / 3)
bore = stats.truncnorm(-3, 3, scale=0.002)
clearance = lambda value: below(bore, value, 0.025, 0.004 / 3)

for what, cdf, (low, high), (left, right) in [
    ("side_gap_mm", gap, (0.14, 0.26), (0.0, 0.4)),
    ("pin_clearance_mm", clearance, (0.021, 0.03), (0.0, 0.05)),
]:
    share = cdf(high) - cdf(low)
    row("yield", what, share, 5 * np.sqrt(share * (1 - share) / SETS), "1")
    for quantile in (0.01, 0.1, 0.5, 0.9, 0.99):
        value = optimize.brentq(lambda x: cdf(x) - quantile, left, right, xtol=1e-13)
        density = (cdf(value + 1e-5) - cdf(value - 1e-5)) / 2e-5
        error = np.sqrt(quantile * (1 - quantile) / SETS) / density
        row(f"percentile_{quantile}", what, value, 5 * error, "mm")

Path(__file__).with_name("fit-laws.csv").write_text("\n".join(rows) + "\n")
