"""Radii of closed polygons of alternating chords, found without the closed formula: the angles of z/2
short and z/2 long chords at the centre must add up to a whole turn, which is solved by bisection.
Plain Python, no library. Prints the rows of wear.csv."""

from math import asin, pi


def radius_mm(teeth, short_mm, long_mm):
    def over(radius):
        return teeth * (asin(short_mm / (2 * radius)) + asin(long_mm / (2 * radius))) - 2 * pi

    low, high = max(short_mm, long_mm) / 2, 1e4
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if over(middle) > 0 else (low, middle)
    return low


for teeth, short_mm, long_mm in [
    (8, 10.0, 12.0), (16, 12.7, 12.9), (16, 12.7, 13.462), (44, 12.7, 12.9), (44, 12.7, 13.462), (104, 25.4, 25.9),
]:
    print(f"polygon_radius,{teeth} x {short_mm:g} x {long_mm:g},{radius_mm(teeth, short_mm, long_mm):.9f},1e-8,mm,"
          "reference/polygon.py: angles that add up to a turn")
