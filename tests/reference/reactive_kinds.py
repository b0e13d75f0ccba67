"""Reference cases of capacitor droppers, neon lamps and bleeders: rename, convert units, call."""

from math import inf, isnan

from helpers.physics import capacitor_dropper, capacitors, mains, neon, phase_cut, switch_on

_WIRE_OHMS = 1e-9


def _supply(inputs):
    return mains.Supply(inputs["supply_v_rms_V"], inputs["supply_f_Hz"])


def dimmer_of(inputs):
    return phase_cut.Dimmer(inputs["cut_mode"], inputs["angle_deg"])


def _given(value, absent):
    """A part that is not there comes as null or as the word none."""
    return absent if value is None or value == "none" else value


def _parts(inputs):
    return capacitor_dropper.Parts(
        farads=inputs["capacitor_F"],
        surge_ohms=inputs["surge_resistor_ohm"],
        bleeder_ohms=_given(inputs.get("bleeder_ohm"), inf),
        led_volts=inputs["led_vf_V"],
        led_ohms=_given(inputs.get("led_series_resistor_ohm"), 0.0),
        diode_volts=inputs["diode_vd_V"],
        smoothing_farads=_given(inputs.get("smoothing_F"), 0.0),
    )


def _capacitive_dropper(inputs):
    # Zero ohms stand in cases without a dimmer, where the heater plays no part; a wire otherwise.
    heater = _given(inputs.get("heater_ohm"), inf) or _WIRE_OHMS
    point = capacitor_dropper.steady(
        _parts(inputs), _supply(inputs), dimmer_of(inputs), heater_ohms=heater
    )
    return {
        "led_i_avg_mA": 1e3 * point.led_amps_mean,
        "led_i_rms_mA": 1e3 * point.led_amps_rms,
        "line_i_rms_mA": 1e3 * point.line_amps_rms,
        "led_i_peak_mA": 1e3 * point.led_amps_peak,
        "line_i_peak_mA": 1e3 * point.line_amps_peak,
        "cap_i_rms_mA": 1e3 * point.capacitor_amps_rms,
        "cap_v_peak_V": point.capacitor_volts_peak,
        "surge_resistor_p_W": point.surge_watts,
        "bleeder_p_W": point.bleeder_watts,
        "led_p_W": point.led_watts,
        "r_led_p_W": point.led_resistor_watts,
        "bridge_p_W": point.bridge_watts,
        "heater_path_p_W": point.heater_watts,
        "source_p_W": point.source_watts,
        "energy_per_day_Wh": point.watt_hours_per_day,
        "apparent_power_VA": point.apparent_volt_amps,
        "led_conduction_fraction": point.led_conduction_fraction,
        "light_percent_flicker_pct": point.light_percent_flicker,
        "light_flicker_index": point.light_flicker_index,
        "light_fundamental_Hz": point.light_fundamental_hertz,
    }


def _dropper_switch_on(inputs):
    first = switch_on.inrush(
        _parts(inputs),
        _supply(inputs),
        inputs["switch_on_angle_deg"],
        inputs["capacitor_precharge_V"],
    )
    return {
        "inrush_peak_A": first.amps_peak,
        "inrush_charge_uC": 1e6 * first.coulombs,
        "inrush_i2t_A2s": first.ampere_squared_seconds,
        "surge_resistor_energy_J": first.surge_joules,
        "first_pulse_us": 1e6 * first.seconds,
    }


def _neon_indicator(inputs):
    lamp = neon.glow(
        _supply(inputs),
        dimmer_of(inputs),
        ohms=inputs["series_resistor_ohm"],
        strike_volts=inputs["strike_V"],
        maintain_volts=inputs["maintain_V"],
    )
    return {
        "lamp_lit": lamp.lit,
        "lamp_i_avg_abs_mA": 1e3 * lamp.amps_mean,
        "lamp_i_rms_mA": 1e3 * lamp.amps_rms,
        "lamp_i_peak_mA": 1e3 * lamp.amps_peak,
        "conduction_fraction": lamp.conduction_fraction,
        "resistor_p_W": lamp.resistor_watts,
        "lamp_p_W": lamp.lamp_watts,
        "branch_p_W": lamp.branch_watts,
        "energy_per_day_Wh": lamp.branch_watt_hours_per_day,
        "strike_angle_deg": None if isnan(lamp.strike_degrees) else lamp.strike_degrees,
        "extinguish_angle_deg": None if isnan(lamp.end_degrees) else lamp.end_degrees,
        "light_fundamental_Hz": lamp.light_fundamental_hertz,
        "light_flicker_index": lamp.light_flicker_index,
    }


def _bleeder(inputs):
    farads, start = inputs["capacitor_F"], inputs["v_start_peak_V"]
    limit, late = inputs["v_limit_V"], inputs["t_limit_s"]
    ohms = _given(inputs["bleeder_ohm"], inf)
    return {
        "bleeder_max_ohm": capacitors.largest_bleeder(farads, start, limit, late),
        "v_at_t_V": capacitors.volts_left(late, farads, ohms, start),
        "time_to_limit_s": capacitors.seconds_to(limit, farads, ohms, start),
        "tau_s": capacitors.time_constant(farads, ohms),
        "bleeder_p_W": capacitors.bleeder_watts(inputs["mains_v_rms_V"], ohms),
    }


KINDS = {
    "capacitive_dropper": _capacitive_dropper,
    "dropper_switch_on": _dropper_switch_on,
    "neon_indicator": _neon_indicator,
    "bleeder": _bleeder,
}
