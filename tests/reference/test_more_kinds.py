"""Kinds of which the reference file has no case, against numbers that it states elsewhere."""

import pytest
from solve import solve

INDICATOR = {
    "topology": "series_diode", "series_resistor_ohm": 2 * 75e3, "resistor_tol_pct": 5.0,
    "supply_v_rms_V": 230.0, "supply_tol_pct": 10.0, "led_vf_V": 2.0, "led_vf_tol_V": 0.2,
    "cut_mode": "none", "angle_deg": 0.0, "diode_vd_V": 0.7, "led_v_br_V": 5.0,
}  # fmt: skip
ON_MAINS = {"supply_f_Hz": 50.0, "led_vf_V": 2.0, "loop_ohm": 10.0, "bond_wire_um": 25.0}


@pytest.mark.parametrize(
    ("kind", "inputs", "field", "value", "rel"),
    [
        ("series_split", {"n": 2, "tolerance_pct": 5.0, "total_V": 357.8}, "worst_one_V", 187.8,
         3e-4),
        ("series_split", {"n": 3, "tolerance_pct": 5.0, "total_V": 357.8}, "worst_over_nominal",
         1.068, 4e-4),
        ("monte_carlo", INDICATOR, "led_i_avg_mean_mA", 0.6818, 3e-4),
        ("monte_carlo", INDICATOR, "led_i_avg_sd_mA", 0.0445, 3e-3),
        ("led_direct_on_mains", ON_MAINS | {"supply_v_rms_V": 230.0, "switch_on_angle_deg": 90.0},
         "time_us", 10.0, 0.05),
        ("led_direct_on_mains", ON_MAINS | {"supply_v_rms_V": 230.0, "switch_on_angle_deg": 0.0},
         "time_us", 700.0, 0.01),
        ("led_direct_on_mains", ON_MAINS | {"supply_v_rms_V": 230.0, "switch_on_angle_deg": 0.0},
         "i_at_melt_A", 6.9, 0.01),
        ("led_direct_on_mains", ON_MAINS | {"supply_v_rms_V": 230.0, "switch_on_angle_deg": 0.0},
         "bond_wire_i2t_A2s", 0.0108, 5e-3),
        ("led_direct_on_mains", ON_MAINS | {"supply_v_rms_V": 12.0, "switch_on_angle_deg": 170.0},
         "melts_in_first_half_cycle", False, 0.0),
        ("perceived", {"relative_light": 0.25}, "cie_lightness", 57.0, 2e-3),
        ("perceived", {"relative_light": 0.25}, "stevens_half", 0.5, 1e-12),
        ("ieee1789_limits", {"flicker_Hz": 50.0}, "low_risk_pct", 1.25, 1e-12),
        ("ieee1789_limits", {"flicker_Hz": 120.0}, "noel_pct", 4.0, 2e-3),
        ("heater_on_dimmer", {"supply_v_rms_V": 230.0, "supply_f_Hz": 50.0, "cut_mode": "leading",
         "angle_deg": 90.0, "heater_rated_p_W": 90.0, "heater_rated_v_V": 230.0}, "heater_p_W",
         45.0, 1e-12),
    ],
    ids=lambda value: f"published: {value}" if isinstance(value, str) else None,
)  # fmt: skip
def test_published_in_prose(kind, inputs, field, value, rel):
    assert solve(kind, inputs)[field] == pytest.approx(value, rel=rel)


def test_common_practice_one_of_unlike_leds_by_the_diode_law_may_have_its_own_resistance():
    """Two LEDs whose laws differ: the second alone lights its half-cycle."""
    real = {
        "topology": "two_leds", "supply_v_rms_V": 230.0, "supply_f_Hz": 50.0, "cut_mode": "none",
        "angle_deg": 0.0, "series_resistor_ohm": 82e3, "model": "B", "led_vf_ref_V": 2.0,
        "led_i_ref_A": 0.02, "led_n": 2.0, "led_rs_ohm": 5.0, "led_v_br_V": 5.0,
        "led_r_z_ohm": 20.0, "thermal_voltage_V": 0.02569257912108585,
    }  # fmt: skip
    alike = solve("resistive_indicator", real | {"led2_vf_ref_V": 2.0, "led2_rs_ohm": 5.0})
    unlike = solve("resistive_indicator", real | {"led2_vf_ref_V": 3.2, "led2_rs_ohm": 12.0})
    assert (alike["light_fundamental_Hz"], unlike["light_fundamental_Hz"]) == (100.0, 50.0)
    assert alike["led_i_avg_mA"] == unlike["led_i_avg_mA"]
    assert unlike["led_rev_v_peak_V"] == pytest.approx(3.0, abs=0.15)
    assert unlike["led_p_W"] > alike["led_p_W"]
