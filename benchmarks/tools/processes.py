# SPDX-License-Identifier: MPL-2.0
"""What is measured on whole runs of the executable: start, growth with the size of the problem."""

import json
import math
import os
import subprocess
import tempfile

# Edge lengths in mm of the arched spruce plate, which has no small parts, and the unknowns they give.
SIZES = {22.0: 1e4, 12.0: 3e4, 6.2: 1e5, 3.5: 3e5, 1.9: 1e6}


def run(arguments):
    """Standard output, seconds of processor time and bytes of memory at the greatest of one process."""
    with tempfile.TemporaryFile() as out:
        process = subprocess.Popen([str(argument) for argument in arguments], stdout=out)
        _, status, usage = os.wait4(process.pid, 0)
        process.returncode = os.waitstatus_to_exitcode(status)
        if process.returncode != 0:
            raise RuntimeError(f"{arguments}: exit status {process.returncode}")
        out.seek(0)
        return out.read(), usage.ru_utime + usage.ru_stime, usage.ru_maxrss * 1024


def slope(points):
    """Exponent of growth: least squares through logarithms."""
    x = [math.log(a) for a, _ in points]
    y = [math.log(b) for _, b in points]
    mean_x, mean_y = sum(x) / len(x), sum(y) / len(y)
    return sum((a - mean_x) * (b - mean_y) for a, b in zip(x, y)) / sum((a - mean_x) ** 2 for a in x)


def growth(plate, repository, repetitions, most_unknowns, idle_memory):
    """Exponents of time and memory, without the memory that the idle program takes."""
    found = {"growth/time exponent": [], "growth/memory exponent": [], "growth/greatest memory": []}
    points = []
    for repetition in range(repetitions):
        time, memory = [], []
        for size, expected in SIZES.items():
            if expected > most_unknowns or (expected > 5e5 and repetition > 0):
                continue
            out, seconds, peak = run([plate, "modes", repository / "benchmarks" / "arched_spruce.toml", "--json",
                                      "--set", f"mesh.size={size}"])
            unknowns = json.loads(out)["unknowns"]
            time.append((unknowns, seconds))
            memory.append((unknowns, peak - idle_memory))
            points.append({"unknowns": unknowns, "seconds": seconds, "bytes": peak})
            print(f"{unknowns} unknowns: {seconds:.2f} s, {peak / 2**30:.2f} GiB", flush=True)
        found["growth/time exponent"].append(slope(time))
        found["growth/memory exponent"].append(slope(memory))
        found["growth/greatest memory"].append(max(peak for _, peak in memory) / 2**30)
    result = {name: {"seconds": [], "counters": {"value": values}} for name, values in found.items()}
    result["growth/points"] = {"seconds": [], "counters": {}, "points": points}
    return result


def measure(plate, repository, repetitions, most_unknowns):
    """All of them, as benchmarks by name."""
    runs = [run([plate, "--help"]) for _ in range(4 * repetitions)]
    result = {"plate --help": {"seconds": [seconds for _, seconds, _ in runs], "counters": {}}}
    # A small job loads the same libraries as the modes of a plate.
    _, _, idle_memory = run([plate, "laminate", repository / "examples" / "viola" / "laminate_top.toml"])
    result.update(growth(plate, repository, repetitions, most_unknowns, idle_memory))
    return result
