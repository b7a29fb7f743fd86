"""Writes closing.csv: a profile and its closing by a disk of three radii, by SciPy's grey morphology.

python3 closing.py > closing.csv        (made with SciPy 1.17.1, NumPy 2.4.6)
"""

import numpy as np
from scipy import ndimage

POINTS, STEP_UM, RADII_UM = 301, 0.5, (0.8, 6.0, 40.0)

rng = np.random.default_rng(12)
weights = np.exp(-2.0 * (np.arange(-25, 26) / 10.0) ** 2)
heights_um = np.convolve(rng.uniform(-0.5, 0.5, POINTS + 50), weights, mode="valid")


def closed_um(radius_um):
    last = int(radius_um / STEP_UM)
    along_um = np.arange(-last, last + 1) * STEP_UM
    disk = np.sqrt(np.maximum(radius_um**2 - along_um**2, 0.0))
    far = {"mode": "constant"}
    footprint = np.ones(disk.size, dtype=bool)
    traced = ndimage.grey_dilation(heights_um, footprint=footprint, structure=disk, cval=-1e30, **far)
    return ndimage.grey_erosion(traced, footprint=footprint, structure=disk, cval=1e30, **far)


columns = [heights_um] + [closed_um(radius) for radius in RADII_UM]
print("height_um," + ",".join(f"closed_{radius}_um" for radius in RADII_UM))
for row in zip(*columns):
    print(",".join(repr(float(value)) for value in row))
