"""The closing of src/closing.rs by SciPy's grey morphology: a line of versions, then name, a height and milliseconds of
one (the least of thirty)."""

import time

import numpy as np
import scipy
from scipy import ndimage

POINTS, RADIUS, TURNS = 4001, 200, 30
heights = np.cumsum(np.random.default_rng(1).normal(size=POINTS))
along = np.arange(-RADIUS, RADIUS + 1)
disk = np.sqrt(RADIUS**2 - along**2.0)
footprint = np.ones(disk.size, dtype=bool)
times = []
for _ in range(TURNS):
    start = time.perf_counter()
    traced = ndimage.grey_dilation(heights, footprint=footprint, structure=disk, mode="constant", cval=-1e30)
    closed = ndimage.grey_erosion(traced, footprint=footprint, structure=disk, mode="constant", cval=1e30)
    times.append(time.perf_counter() - start)
print(f"scipy {scipy.__version__}, numpy {np.__version__}")
print("closing", closed[0], 1e3 * min(times))
