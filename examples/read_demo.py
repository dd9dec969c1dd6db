# SPDX-License-Identifier: MPL-2.0
"""Reads the results of the demo and says in plain words what they mean.

usage: python3 examples/read_demo.py SPRUCE_MODES.json LAMINATE_MODES.json SWEEP.json
"""

import json
import math
import sys

NAMED = ("M1", "M2", "M5")


def load(path):
    with open(path, encoding="utf-8") as file:
        return json.load(file)


def frequencies(result):
    """Frequency [Hz] of each mode that has a name."""
    return {mode["name"]: mode["frequency_hz"] for mode in result["modes"] if mode.get("name")}


def percent(value, reference):
    return 100.0 * (value / reference - 1.0)


def points(track, values):
    """(value of the key, frequency) of a track where it was followed."""
    return [(x, f) for x, f in zip(values, track["frequency_hz"]) if f is not None]


def exponent(pairs):
    """p of f ~ x^p between the ends of a track."""
    (x0, f0), (x1, f1) = pairs[0], pairs[-1]
    return math.log(f1 / f0) / math.log(x1 / x0)


def crossing(pairs, wanted):
    """Value of the key where the track passes the wanted frequency, None if it does not; straight between points."""
    for (x0, f0), (x1, f1) in zip(pairs, pairs[1:]):
        if min(f0, f1) <= wanted <= max(f0, f1) and f0 != f1:
            return x0 + (x1 - x0) * (wanted - f0) / (f1 - f0)
    return None


def compare(spruce, laminate):
    wood, made = frequencies(spruce), frequencies(laminate)
    print(f"The laminated top weighs {laminate['mass_g']:.0f} g, the spruce one {spruce['mass_g']:.0f} g "
          f"({percent(laminate['mass_g'], spruce['mass_g']):+.0f} %).")
    for name in NAMED:
        if name in wood and name in made:
            cents = 1200.0 * math.log2(made[name] / wood[name])
            print(f"  {name}: spruce {wood[name]:.1f} Hz, laminate {made[name]:.1f} Hz "
                  f"({percent(made[name], wood[name]):+.0f} %, {cents:+.0f} cents)")
        else:
            missing = " and ".join(title for title, found in (("spruce", wood), ("laminate", made)) if name not in found)
            print(f"  {name}: no mode of the {missing} has this shape")
    for title, found in (("spruce", wood), ("laminate", made)):
        if "M2" in found and "M5" in found:
            print(f"  M5 / M2 of the {title}: {found['M5'] / found['M2']:.2f} (many makers look for about 2)")


def read_sweep(sweep, spruce):
    wood = frequencies(spruce)
    values = [value[0] if isinstance(value, list) else value for value in sweep["values"]]
    mass_gain = percent(sweep["mass_g"][-1], sweep["mass_g"][0])
    print(f"Plies from {values[0]:g} to {values[-1]:g} times their thickness (the core stays): the mass goes from "
          f"{sweep['mass_g'][0]:.0f} to {sweep['mass_g'][-1]:.0f} g ({mass_gain:+.0f} %).")
    print("  A frequency in proportion to the thickness (power 1) is what bending of one solid sheet gives; power 0 is what")
    print("  stretching of an arch gives, where stiffness and mass grow alike.")
    meetings = {}
    for track in sweep["tracks"]:
        name, pairs = track.get("name"), points(track, values)
        if name not in NAMED or len(pairs) < 2:
            continue
        text = f"  {name}: {pairs[0][1]:.1f} to {pairs[-1][1]:.1f} Hz, as the thickness to the power {exponent(pairs):.2f}"
        if name in wood:
            meetings[name] = crossing(pairs, wood[name])
            text += (f"; meets the spruce's {wood[name]:.1f} Hz at {meetings[name]:.2f} times" if meetings[name] is not None
                     else f"; does not meet the spruce's {wood[name]:.1f} Hz in this range")
        print(text)
    print(verdict(meetings))


def verdict(meetings):
    """Whether one thickness brings all named modes to those of the spruce; 3 % of it is what a maker can hold."""
    met = [scale for scale in meetings.values() if scale is not None]
    if meetings and len(met) == len(meetings) and max(met) - min(met) <= 0.03:
        return f"All of {', '.join(meetings)} meet the spruce near {sum(met) / len(met):.2f} times: thickness alone does it."
    return ("No one thickness in this range brings these modes to those of the spruce: the layup or the shape has to change "
            "as well.")


def main():
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    spruce, laminate, sweep = (load(path) for path in sys.argv[1:])
    compare(spruce, laminate)
    read_sweep(sweep, spruce)
    print("The numbers hold for the invented data of these two files, without air. A prediction does not replace a test piece.")


if __name__ == "__main__":
    main()
