"""Reads the plain forms of a quantity as a study writes them; the best value, in SI."""

import re

_PREFIX = {"": 1.0, "n": 1e-9, "u": 1e-6, "m": 1e-3, "k": 1e3, "M": 1e6, "c": 1e-2}
_BASE = ["ohm", "V", "A", "W", "s", "Hz", "H", "C", "m", "Pa", "K", "g"]
_SPECIAL = {
    "": 1.0,
    "%": 1e-2,
    "ppm": 1e-6,
    "L": 1e-3,
    "min": 60.0,
    "h": 3600.0,
}


def _factor(symbol):
    """One symbol with its prefix and exponent, such as mm2."""
    name, power = re.fullmatch(r"([^\d\s]*)(\d?)", symbol).groups()
    exponent = int(power or 1)
    if name in _SPECIAL:
        return _SPECIAL[name] ** exponent
    for base in _BASE:
        if name.endswith(base) and name[: -len(base)] in _PREFIX:
            return _PREFIX[name[: -len(base)]] ** exponent
    raise ValueError(f"unit {symbol!r}")


def unit_factor(unit):
    """SI per unit, for products and one fraction: W/(m K), m3/h, ppm/K."""
    top, _, bottom = unit.partition("/")
    result = 1.0
    for symbol in re.split(r"[\s·]+", top.strip()):
        result *= _factor(symbol) if symbol not in ("1", "") else 1.0
    for symbol in re.split(r"[\s·]+", bottom.strip(" ()")):
        result /= _factor(symbol) if symbol else 1.0
    return result


def read(raw):
    """Best value [SI] of a number, a text, or a map with a value and its source."""
    if isinstance(raw, dict):
        raw = raw["value"]
    if isinstance(raw, (int, float)):
        return float(raw)
    text = raw.strip()
    gauge = re.fullmatch(r"AWG (\d+)", text)
    if gauge:
        # ASTM B258: 0.005 in at AWG 36, 0.46 in at AWG 0000, equal ratios between.
        return 0.127e-3 * 92.0 ** ((36 - int(gauge[1])) / 39)
    best = re.split(r"[±~]", text)[0].strip()
    span = re.fullmatch(r"([-\d.eE]+?)\.\.([-\d.eE]+)\s*(.*)", best)
    single = re.fullmatch(r"([-+]?\d*\.?\d+(?:[eE][-+]?\d+)?)(?:\(\d+\))?\s*(.*)", best)
    if span:
        number, unit = (float(span[1]) + float(span[2])) / 2, span[3]
    elif single:
        number, unit = float(single[1]), single[2]
    else:
        raise ValueError(f"quantity {text!r}")
    if unit in ("degC", "°C"):
        return number + 273.15
    return number * unit_factor(unit)
