"""The dimmed wave against quadrature and a discrete Fourier transform; limits; refusals."""

from math import atan2, cos, degrees, pi, radians, sin, sqrt

import numpy as np
import pytest
from scipy.integrate import quad

from helpers.physics import phase_cut
from helpers.physics.mains import Supply
from helpers.physics.phase_cut import Dimmer

ANGLES = (0.5, 15.0, 60.0, 89.0, 90.0, 91.0, 120.0, 150.0, 179.0)


@pytest.mark.parametrize("edge", ["leading", "trailing"])
@pytest.mark.parametrize("angle", ANGLES)
@pytest.mark.parametrize("volts", [230.0, 120.0])
def test_second_way_every_field_agrees_with_quadrature(edge, angle, volts):
    wave = phase_cut.wave(Supply(volts, 50.0), Dimmer(edge, angle))
    crest = sqrt(2.0) * volts
    a, b = (radians(angle), pi) if edge == "leading" else (0.0, radians(angle))

    def over_half_cycle(of, absolute=0.0):
        return quad(of, a, b, epsabs=absolute, epsrel=1e-12)[0] / pi

    rms = crest * sqrt(over_half_cycle(lambda x: sin(x) ** 2))
    mean = crest * over_half_cycle(sin)
    sine = 2.0 * crest * over_half_cycle(lambda x: sin(x) ** 2)
    cosine = 2.0 * crest * over_half_cycle(lambda x: sin(x) * cos(x), 1e-13)
    fundamental = sqrt((sine**2 + cosine**2) / 2.0)
    peak = crest * max(sin(a), sin(b), 1.0 if a <= 0.5 * pi <= b else 0.0)
    near = pytest.approx
    assert wave.volts_rms == near(rms, rel=1e-11)
    assert wave.volts_mean == near(mean, rel=1e-11)
    assert wave.volts_peak == near(peak, rel=1e-14)
    assert wave.power_fraction == near((rms / volts) ** 2, rel=1e-11)
    assert wave.conduction_fraction == near((b - a) / pi, rel=1e-11)
    assert wave.crest_factor == near(peak / rms, rel=1e-11)
    assert wave.form_factor == near(rms / mean, rel=1e-11)
    assert wave.fundamental_volts_rms == near(fundamental, rel=1e-11)
    assert wave.displacement_degrees == near(degrees(atan2(cosine, sine)), rel=1e-9)
    # The reference subtracts nearly equal squares here, so it knows fewer digits.
    others = sqrt(max(rms**2 - fundamental**2, 0.0)) / fundamental
    assert wave.distortion_percent == near(100.0 * others, rel=1e-6, abs=1e-4)


def test_second_way_distortion_is_the_sum_of_the_other_harmonics():
    # Sampled between the edges, so that the transform sees the steps symmetrically.
    count = 2**20
    at = (np.arange(count) + 0.5) / count * 360.0
    supply, dimmer = Supply(230.0, 50.0), Dimmer("leading", 67.5)
    lines = np.abs(np.fft.rfft(phase_cut.volts_at(supply, dimmer, at))) * sqrt(2.0) / count
    wave = phase_cut.wave(supply, dimmer)
    assert wave.fundamental_volts_rms == pytest.approx(lines[1], rel=1e-5)
    others = 100.0 * np.sqrt(np.sum(lines[2:] ** 2)) / lines[1]
    assert wave.distortion_percent == pytest.approx(others, rel=1e-4)


@pytest.mark.parametrize(
    "dimmer", [Dimmer(), Dimmer("leading", 0.0), Dimmer("trailing", 180.0)], ids=str
)
def test_limit_full_conduction_is_the_plain_sine(dimmer):
    wave = phase_cut.wave(Supply(230.0, 50.0), dimmer)
    assert wave.volts_rms == 230.0 and wave.power_fraction == 1.0
    assert wave.crest_factor == pytest.approx(sqrt(2.0), rel=1e-15)
    assert wave.distortion_percent == 0.0
    assert wave.displacement_degrees == pytest.approx(0.0, abs=1e-12)


@pytest.mark.parametrize(
    ("dimmer", "side"), [(Dimmer("leading", 180.0), -90.0), (Dimmer("trailing", 0.0), 90.0)]
)
def test_limit_nothing_let_through(dimmer, side):
    wave = phase_cut.wave(Supply(230.0, 50.0), dimmer)
    assert wave.volts_rms == wave.volts_mean == wave.volts_peak == wave.power_fraction == 0.0
    assert wave.crest_factor == wave.form_factor == wave.distortion_percent == np.inf
    assert wave.displacement_degrees == side
    nearly = Dimmer(dimmer.edge, 1e-3 if dimmer.edge == "trailing" else 180.0 - 1e-3)
    almost = phase_cut.wave(Supply(230.0, 50.0), nearly)
    assert almost.displacement_degrees == pytest.approx(side, abs=0.01)
    assert almost.crest_factor > 100.0


@pytest.mark.parametrize("angle", [1.0, 30.0, 90.0, 135.0])
def test_property_the_two_edges_mirror_each_other(angle):
    supply = Supply(120.0, 60.0)
    leading = phase_cut.wave(supply, Dimmer("leading", angle))
    trailing = phase_cut.wave(supply, Dimmer("trailing", 180.0 - angle))
    assert leading.displacement_degrees == -trailing.displacement_degrees
    assert leading.volts_rms == trailing.volts_rms and leading.volts_mean == trailing.volts_mean


def test_property_the_peak_stays_whole_to_a_right_angle_and_all_else_falls():
    wave = phase_cut.wave(Supply(230.0, 50.0), Dimmer("leading", np.linspace(0.0, 180.0, 721)))
    assert np.all(wave.volts_peak[:361] == wave.volts_peak[0])
    assert np.all(np.diff(wave.volts_peak[360:]) < 0.0)
    for falling in (wave.volts_rms, wave.volts_mean, wave.power_fraction):
        assert np.all(np.diff(falling) < 0.0)


def test_second_way_the_trace_draws_what_the_wave_says():
    for dimmer in (Dimmer(), Dimmer("leading", 77.7), Dimmer("trailing", 120.0)):
        at, volts = phase_cut.trace(Supply(230.0, 50.0), dimmer, 2, 7200)
        mean_square = np.trapezoid(volts**2, at) / 720.0
        wave = phase_cut.wave(Supply(230.0, 50.0), dimmer)
        assert np.sqrt(mean_square) == pytest.approx(wave.volts_rms, rel=1e-6)
        assert np.max(np.abs(volts)) == pytest.approx(wave.volts_peak, rel=1e-6)
        assert np.all(np.diff(at) >= 0.0) and at[0] == 0.0 and at[-1] == 720.0


@pytest.mark.parametrize("edge", ["leading", "trailing"])
def test_limit_every_edge_of_the_trace_is_upright(edge):
    at, volts = phase_cut.trace(Supply(100.0, 50.0), Dimmer(edge, 60.0), 1, 12)
    steps = np.flatnonzero(np.diff(at) == 0.0)
    assert at[steps].tolist() == [60.0, 240.0]
    jump = [100.0 * sqrt(2.0) * sin(pi / 3.0), -100.0 * sqrt(2.0) * sin(pi / 3.0)]
    sign = 1.0 if edge == "leading" else -1.0
    assert np.diff(volts)[steps] == pytest.approx([sign * each for each in jump])


def test_property_shape():
    angles, volts = np.linspace(0.0, 180.0, 5), np.array([[120.0], [230.0]])
    wave = phase_cut.wave(Supply(volts, 50.0), Dimmer("leading", angles))
    assert {np.shape(value) for value in vars(wave).values()} == {(2, 5)}
    single = phase_cut.wave(Supply(230.0, 50.0), Dimmer("leading", angles[3]))
    for name, value in vars(single).items():
        assert type(value) is float
        assert value == getattr(wave, name)[1, 3], name
    assert phase_cut.volts_at(Supply(230.0, 50.0), Dimmer(), angles).shape == (5,)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: Dimmer("middle", 90.0), "edge was read as 'middle'; it must be one of none"),
        (lambda: Dimmer("leading", 181.0), "angle_degrees was read as 181 deg; it must lie"),
        (lambda: Dimmer("leading", -1.0), "Each half-cycle counts anew"),
        (lambda: phase_cut.volts_at(Supply(1.0, 1.0), Dimmer(), None), "degrees was read as nan"),
        (lambda: phase_cut.trace(Supply(1.0, 1.0), Dimmer(), 0), "cycles was read as 0"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
