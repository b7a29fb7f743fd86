"""Press fits of two thick rings without Lame's formulas: the radial displacement u of each ring keeps
u'' + u'/r - u/r^2 = 0 (plane stress), solved by central differences on a fine grid, once for a unit
pressure on the rim where they meet. Plain Python, no library. Prints the rows of width.csv."""

N = 20000


def rim_displacement(inner, outer, modulus, poisson, loaded):
    """Radial displacements at both rims for a pressure of 1 MPa on the `loaded` rim, 0 on the other."""
    h = (outer - inner) / N
    k = modulus / (1 - poisson * poisson)
    lower, middle, upper, right = [0.0] * (N + 1), [0.0] * (N + 1), [0.0] * (N + 1), [0.0] * (N + 1)
    for i in range(N + 1):
        r = inner + i * h
        a, b, c = 1 / h**2 - 1 / (2 * r * h), -2 / h**2 - 1 / r**2, 1 / h**2 + 1 / (2 * r * h)
        if i == 0:
            # A point outside, so that k (u' + poisson u / r) = -p at the rim.
            p = 1.0 if loaded == "inner" else 0.0
            middle[i], upper[i] = b + a * 2 * h * poisson / r, c + a
            right[i] = -a * 2 * h * p / k
        elif i == N:
            p = 1.0 if loaded == "outer" else 0.0
            lower[i], middle[i] = a + c, b - c * 2 * h * poisson / r
            right[i] = c * 2 * h * p / k
        else:
            lower[i], middle[i], upper[i] = a, b, c
    for i in range(1, N + 1):
        share = lower[i] / middle[i - 1]
        middle[i] -= share * upper[i - 1]
        right[i] -= share * right[i - 1]
    u = [0.0] * (N + 1)
    u[N] = right[N] / middle[N]
    for i in range(N - 1, -1, -1):
        u[i] = (right[i] - upper[i] * u[i + 1]) / middle[i]
    return u[0], u[N]


def case(pin, hole, eye, delta, modulus, poisson):
    steel = (206000.0, 0.3)
    eye_in, eye_out = rim_displacement(pin / 2, eye / 2, modulus, poisson, "inner")
    if hole > 0:
        _, squeeze = rim_displacement(hole / 2, pin / 2, *steel, "outer")
    else:
        # A solid pin: the same stress everywhere, u = -(1 - nu) r / E.
        squeeze = -(1 - steel[1]) * (pin / 2) / steel[0]
    pressure = delta / 2 / (eye_in - squeeze)
    # Round the hole: E u / r at the rim, where the radial stress is -p, is hoop + nu p.
    hoop = modulus * eye_in * pressure / (pin / 2) - poisson * pressure
    return pressure, hoop, 2 * eye_out * pressure


WHERE = "reference/press.py: radial equilibrium by differences"
for pin, hole, eye, delta, modulus, poisson in [
    (3.6, 0.0, 8.2, 0.02, 206000.0, 0.3),
    (3.6, 2.0, 8.2, 0.02, 206000.0, 0.3),
    (3.6, 0.0, 8.2, 0.02, 114000.0, 0.33),
    (5.96, 0.0, 15.6, 0.03, 206000.0, 0.3),
]:
    pressure, hoop, growth = case(pin, hole, eye, delta, modulus, poisson)
    of = f"{pin:g} x {hole:g} x {eye:g} x {delta:g} x {modulus:g} x {poisson:g}"
    print(f"press_pressure,{of},{pressure:.4f},{2e-5 * pressure:.4f},MPa,{WHERE}")
    print(f"press_hoop,{of},{hoop:.4f},{2e-5 * hoop:.4f},MPa,{WHERE}")
    print(f"eye_growth,{of},{growth * 1000:.6f},{2e-5 * growth * 1000:.6f},um,{WHERE}")
