"""Answer a reference case with helpers: rename, convert units, call; nothing is computed here.

The cases come from an independent program that knows nothing of helpers. Kinds that helpers does
not cover raise KeyError with the kind.
"""

from math import inf, sqrt

import reactive_kinds

from helpers.physics import (
    burnout,
    hazards,
    heat,
    heater,
    leds,
    light,
    mains,
    meters,
    off_states,
    parts,
    phase_cut,
    phase_cut_inverse,
    ratings,
    resistors,
    signals,
    tolerance,
)
from helpers.physics.operating_point import operating_point

CIRCUITS = {
    "led_only": "resistor_only",
    "series_diode": "series_diode",
    "antiparallel_diode": "diode_across",
    "two_leds": "two_leds",
    "bridge": "bridge",
}


def solve(kind, inputs):
    """Return the outputs of a case by the names that the reference gives them."""
    return _KINDS[kind](inputs)


def _supply(inputs):
    # Cases of tolerance give no frequency, and it does not enter there.
    return mains.Supply(inputs["supply_v_rms_V"], inputs.get("supply_f_Hz", 50.0))


def _drops(inputs):
    if inputs.get("model", "A") == "B":
        return _real_parts(inputs)
    names = {
        "led_vf_V": "led_volts",
        "led2_vf_V": "second_led_volts",
        "diode_vd_V": "diode_volts",
        "led_v_br_V": "breakdown_volts",
    }
    return {ours: inputs[name] for name, ours in names.items() if inputs.get(name) is not None}


def _real_parts(inputs):
    thermal = inputs.get("thermal_voltage_V") or parts.THERMAL_VOLTS

    def led(volts, ohms):
        return parts.junction(
            volts, inputs["led_i_ref_A"], inputs["led_n"], ohms or 0.0, thermal_volts=thermal
        )

    given = {
        "led": led(inputs["led_vf_ref_V"], inputs.get("led_rs_ohm")),
        "breakdown_volts": inputs.get("led_v_br_V") or 5.0,
        "breakdown_ohms": inputs.get("led_r_z_ohm") or 0.0,
    }
    if inputs.get("led2_vf_ref_V") is not None:
        second_ohms = inputs.get("led2_rs_ohm", inputs.get("led_rs_ohm"))
        given["second_led"] = led(inputs["led2_vf_ref_V"], second_ohms)
    if inputs.get("diode_is_A") is not None:
        given["diode"] = parts.Part(
            0.0, inputs.get("diode_rs_ohm") or 0.0, inputs["diode_n"] * thermal,
            inputs["diode_is_A"],
        )  # fmt: skip
    return given


def _phase_cut(inputs):
    supply, dimmer = _supply(inputs), reactive_kinds.dimmer_of(inputs)
    wave = phase_cut.wave(supply, dimmer)
    signal = signals.dimmed_mains(supply, dimmer)
    return {
        "v_rms_V": wave.volts_rms,
        "v_abs_avg_V": wave.volts_mean,
        "v_peak_V": wave.volts_peak,
        "conduction_fraction": wave.conduction_fraction,
        "power_fraction": wave.power_fraction,
        "fundamental_rms_V": wave.fundamental_volts_rms,
        "true_rms_reading_V": meters.reading(signal, "true_rms"),
        "avg_meter_reading_V": meters.reading(signal, "average"),
        "form_factor": wave.form_factor,
        "crest_factor": wave.crest_factor,
        "avg_meter_error_pct": meters.error_percent(signal),
        "thd_pct_of_fundamental": wave.distortion_percent,
        "displacement_deg": wave.displacement_degrees,
    }


def _angle_for_rms(inputs):
    dimmer = phase_cut_inverse.for_rms(
        inputs["wanted_v_rms_V"], _supply(inputs), inputs["cut_mode"]
    )
    return {"angle_deg": dimmer.angle_degrees}


def _meter_on_half_wave(inputs):
    # The frequency does not enter; any will do.
    signal = signals.half_wave(mains.Supply(inputs["v_rms_of_full_sine_V"], 50.0))
    return {
        "dc_meter": meters.reading(signal, "mean", "dc"),
        "rms_true_dc_coupled": meters.reading(signal, "true_rms", "dc"),
        "rms_true_ac_coupled": meters.reading(signal, "true_rms", "ac"),
        "avg_meter_ac_coupled": meters.reading(signal, "average", "ac"),
        "avg_meter_dc_coupled": meters.reading(signal, "average", "dc"),
    }


def _resistive_indicator(inputs):
    point = operating_point(
        CIRCUITS[inputs["topology"]],
        _supply(inputs),
        reactive_kinds.dimmer_of(inputs),
        ohms=inputs["series_resistor_ohm"],
        **_drops(inputs),
    )
    return {
        "led_i_avg_mA": 1e3 * point.led_amps_mean,
        "led_i_net_avg_mA": 1e3 * point.led_amps_net_mean,
        "led_i_rms_fwd_mA": 1e3 * point.led_amps_rms_forward,
        "led_i_rms_total_mA": 1e3 * point.led_amps_rms,
        "led_i_peak_mA": 1e3 * point.led_amps_peak,
        "led_rev_i_peak_mA": 1e3 * point.led_reverse_amps_peak,
        "led_rev_v_peak_V": point.led_reverse_volts_peak,
        "led_rev_v_bound_V": point.led_reverse_volts_bound,
        "led_conduction_fraction": point.led_conduction_fraction,
        "led_conduction_fraction_1pct": point.led_bright_fraction,
        "branch_i_rms_mA": 1e3 * point.branch_amps_rms,
        "resistor_p_W": point.resistor_watts,
        "led_p_W": point.led_watts,
        "diode_p_W": point.diode_watts,
        "branch_p_W": point.branch_watts,
        "energy_per_day_Wh": point.branch_watt_hours_per_day,
        "light_percent_flicker_pct": point.light_percent_flicker,
        "light_flicker_index": point.light_flicker_index,
        "light_fundamental_Hz": point.light_fundamental_hertz,
        "light_mod_f_pct": point.light_modulation_at_line_percent,
        "light_mod_2f_pct": point.light_modulation_at_twice_line_percent,
        "light_dominant_Hz": point.light_dominant_hertz,
    }


def _resistor_for_led_average(inputs):
    ohms = leds.dropper_for_mean(
        CIRCUITS[inputs["topology"]],
        _supply(inputs),
        1e-3 * inputs["wanted_led_i_avg_mA"],
        reactive_kinds.dimmer_of(inputs),
        **_drops(inputs),
    )
    return {"series_resistor_ohm": ohms}


def _e_series_nearest(inputs):
    wanted, series = inputs["wanted_ohm"], inputs["series"]
    nearest = resistors.nearest(wanted, series)
    return {
        "nearest_by_ratio_ohm": nearest,
        "nearest_by_difference_ohm": resistors.nearest(wanted, series, by="difference"),
        "next_up_ohm": resistors.next_up(wanted, series),
        "next_down_ohm": resistors.next_down(wanted, series),
        "error_of_nearest_by_ratio_pct": 100.0 * (nearest / wanted - 1.0),
    }


def _resistor_limits(inputs):
    ohms, limiting = inputs["resistance_ohm"], inputs["limiting_element_v_rms_V"]
    watts = ratings.derated_watts(
        inputs["rated_p_W"], inputs["ambient_degC"], inputs["knee_degC"], inputs["zero_degC"]
    )
    return {
        "p_allowed_W": watts,
        "u_allowed_rms_V": ratings.volts_rms_limit(ohms, watts, limiting),
        "critical_resistance_ohm": ratings.critical_ohms(inputs["rated_p_W"], limiting),
        "limited_by": ratings.limited_by(ohms, watts, limiting),
    }


def _warmup(inputs):
    watts, rise, ambient = inputs["power_W"], inputs["rth_K_per_W"], inputs["ambient_degC"]
    return {
        "temperature_degC": heat.celsius_after(
            inputs["time_s"], watts, rise, inputs["tau_s"], ambient
        ),
        "final_temperature_degC": heat.final_celsius(watts, rise, ambient),
    }


def _touch_current(inputs):
    farads = inputs["series_capacitor_F"]
    amps = hazards.touch_amps_rms(
        _supply(inputs),
        inputs["series_resistance_ohm"] or 0.0,
        farads,
        inputs["bleeder_ohm"] if farads is not None else None,
        inputs["body_ohm"],
    )
    return {"touch_i_rms_mA": 1e3 * amps, "touch_i_peak_mA": 1e3 * sqrt(2.0) * amps}


def _tolerances(inputs):
    return tolerance.Tolerances(
        ohms_percent=inputs["resistor_tol_pct"],
        supply_percent=inputs["supply_tol_pct"],
        led_volts=inputs["led_vf_tol_V"],
    )


def _tolerance_corners(inputs):
    ranges = tolerance.worst_corners(
        CIRCUITS[inputs["topology"]],
        _supply(inputs),
        reactive_kinds.dimmer_of(inputs),
        _tolerances(inputs),
        ohms=inputs["series_resistor_ohm"],
        **_drops(inputs),
    )
    return {
        "led_i_avg_min_mA": 1e3 * ranges["led_amps_mean"].lowest,
        "led_i_avg_max_mA": 1e3 * ranges["led_amps_mean"].highest,
        "resistor_p_max_W": ranges["resistor_watts"].highest,
        "led_i_peak_max_mA": 1e3 * ranges["led_amps_peak"].highest,
    }


def _snubber_leak(inputs):
    # A sound element in this kind is a load like any other; led_i_avg is of one half-cycle.
    circuit = CIRCUITS[inputs["topology"]]
    ohms = inputs["heater_ohm"]
    left = off_states.past_a_capacitor(
        circuit, _supply(inputs), inputs["snubber_F"], inputs["snubber_ohm"],
        inputs["series_resistor_ohm"], inf if ohms is None else ohms, **_drops(inputs),
    )  # fmt: skip
    halves = 2.0 if circuit == "bridge" else 1.0
    return {
        "node_v_rms_V": left.volts_rms,
        "led_i_avg_mA": 1e3 * left.led_amps_mean / halves,
        "led_i_peak_mA": 1e3 * left.led_amps_peak,
        "branch_i_rms_mA": 1e3 * left.branch_amps_rms,
        "snubber_i_rms_mA": 1e3 * left.leak_amps_rms,
    }


def _series_split(inputs):
    count, total = inputs["n"], inputs["total_V"]
    worst = ratings.share_of_string(total, count, inputs["tolerance_pct"])
    nominal = ratings.share_of_string(total, count)
    return {
        "nominal_each_V": nominal,
        "worst_one_V": worst,
        "worst_over_nominal": worst / nominal,
    }


def _heater_on_dimmer(inputs):
    supply, dimmer = _supply(inputs), reactive_kinds.dimmer_of(inputs)
    ohms = heater.resistance(inputs["heater_rated_v_V"], inputs["heater_rated_p_W"])
    return {
        "heater_resistance_ohm": ohms,
        "heater_p_W": heater.watts(supply, dimmer, ohms),
        "heater_i_rms_A": heater.amps_rms(supply, dimmer, ohms),
    }


def _monte_carlo(inputs):
    boards = tolerance.random_boards(
        CIRCUITS[inputs["topology"]],
        _supply(inputs),
        reactive_kinds.dimmer_of(inputs),
        _tolerances(inputs),
        ohms=inputs["series_resistor_ohm"],
        count=1_000_000,
        **_drops(inputs),
    )
    amps = tolerance.spread(boards["led_amps_mean"])
    return {
        "led_i_avg_mean_mA": 1e3 * amps.mean,
        "led_i_avg_sd_mA": 1e3 * amps.standard_deviation,
        "resistor_p_mean_W": tolerance.spread(boards["resistor_watts"]).mean,
    } | {f"led_i_avg_p{p}_mA": 1e3 * value for p, value in amps.percentiles.items()}


def _led_direct_on_mains(inputs):
    end = burnout.led_on_mains(
        _supply(inputs),
        inputs["switch_on_angle_deg"],
        inputs["loop_ohm"],
        inputs["led_vf_V"],
        1e-6 * inputs["bond_wire_um"],
    )
    if not end.melts_in_first_half_cycle:
        return {"melts_in_first_half_cycle": False, "bond_wire_i2t_A2s": end.melting_integral}
    return {
        "melts_in_first_half_cycle": True,
        "time_us": 1e6 * end.seconds,
        "i_at_melt_A": end.amps,
        "energy_led_junction_mJ": 1e3 * end.led_joules,
        "energy_loop_resistance_mJ": 1e3 * end.loop_joules,
        "energy_from_mains_mJ": 1e3 * end.mains_joules,
        "bond_wire_i2t_A2s": end.melting_integral,
    }


def _perceived(inputs):
    ratio = inputs["relative_light"]
    return {
        "cie_lightness": light.lightness(ratio),
        "stevens_third": light.stevens(ratio, light.STEVENS_EXPONENTS["patch"]),
        "stevens_half": light.stevens(ratio, light.STEVENS_EXPONENTS["point"]),
    }


def _ieee1789_limits(inputs):
    hertz = inputs["flicker_Hz"]
    return {
        "noel_pct": light.no_effect_percent(hertz),
        "low_risk_pct": light.low_risk_percent(hertz),
    }


_KINDS = {
    "series_split": _series_split,
    "heater_on_dimmer": _heater_on_dimmer,
    "monte_carlo": _monte_carlo,
    "led_direct_on_mains": _led_direct_on_mains,
    "perceived": _perceived,
    "ieee1789_limits": _ieee1789_limits,
    "snubber_leak": _snubber_leak,
    "phase_cut": _phase_cut,
    "phase_cut_angle_for_rms": _angle_for_rms,
    "meter_on_half_wave": _meter_on_half_wave,
    "resistive_indicator": _resistive_indicator,
    "resistor_for_led_average": _resistor_for_led_average,
    "e_series_nearest": _e_series_nearest,
    "resistor_limits": _resistor_limits,
    "warmup": _warmup,
    "touch_current": _touch_current,
    "tolerance_corners": _tolerance_corners,
    **reactive_kinds.KINDS,
}
