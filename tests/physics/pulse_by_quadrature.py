"""One pulse integrated a second way, from slivers to whole half-cycles and grazing crests."""

import numpy as np
from scipy.integrate import quad

THRESHOLDS = (0.0, 0.004, 0.1, 0.6, 0.95, 0.999)
WINDOWS = (np.pi, 2.5, 0.5 * np.pi, 1.0, 0.11, 0.0045)
GRID = [
    (threshold, window)
    for threshold in THRESHOLDS
    for window in WINDOWS
    if window > np.arcsin(threshold) + 1e-6
]


def integral(of, threshold, window, absolute=0.0):
    """Quadrature of `of(height above the threshold, angle from the start)` over the pulse."""
    start = np.arcsin(threshold)
    span = min(window, np.pi - start) - start

    def above(x):  # sin(start + x) - sin(start) without cancellation
        return 2.0 * np.cos(start + 0.5 * x) * np.sin(0.5 * x)

    return quad(lambda x: of(above(x), x), 0.0, span, epsabs=absolute, epsrel=1e-12, limit=200)[0]
