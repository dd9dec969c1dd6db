#!/usr/bin/env python3
# SPDX-License-Identifier: MPL-2.0
"""Runs every benchmark program, then prints the table of ratios and writes benchmarks.json.

measure.py BUILD_FOLDER [--repetitions N] [--filter REGEX] [--most-unknowns N]
"""

import argparse
import datetime
import json
import os
import pathlib
import platform
import subprocess
import sys

import processes
import ratios

REPOSITORY = pathlib.Path(__file__).resolve().parents[2]


def short_name(name):
    """The name of a benchmark without what Google Benchmark adds to it."""
    return "/".join(part for part in name.split("/") if part.split(":")[0] not in ("iterations", "repeats", "real_time"))


def run_program(program, folder, options):
    """Repetitions of each benchmark of a program: seconds of processor time and counters."""
    out = folder / (program.name + ".json")
    subprocess.run([program, f"--benchmark_out={out}", "--benchmark_out_format=json",
                    f"--benchmark_repetitions={options.repetitions}", "--benchmark_enable_random_interleaving=true",
                    "--benchmark_display_aggregates_only=true", f"--benchmark_filter={options.filter}"], check=True)
    found = {}
    text = out.read_text() if out.exists() else ""
    for run in json.loads(text)["benchmarks"] if text.strip() else []:
        if run["run_type"] != "iteration" or run.get("error_occurred"):
            continue
        per_second = {"ns": 1e9, "us": 1e6, "ms": 1e3, "s": 1.0}[run["time_unit"]]
        entry = found.setdefault(short_name(run["name"]), {"seconds": [], "counters": {}})
        # On one thread processor time is what the clock shows on a quiet machine; several are timed by the clock.
        time = "real_time" if "/real_time" in run["name"] else "cpu_time"
        entry["seconds"].append(run[time] / per_second)
        known = ("name", "run_name", "run_type", "family_index", "per_family_instance_index", "repetitions",
                 "repetition_index", "threads", "iterations", "real_time", "cpu_time", "time_unit")
        for counter in run.keys() - set(known):
            entry["counters"].setdefault(counter, []).append(run[counter])
    return found


def machine():
    """The kind of machine, as the accepted numbers are kept with it."""
    model = "unknown processor"
    try:
        for line in pathlib.Path("/proc/cpuinfo").read_text().splitlines():
            if line.startswith("model name"):
                model = line.split(":", 1)[1].strip()
                break
    except OSError:
        pass
    return {"processor": model, "cores": os.cpu_count(), "system": platform.freedesktop_os_release()["PRETTY_NAME"],
            "load": os.getloadavg()[0]}


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("build", type=pathlib.Path)
    parser.add_argument("--repetitions", type=int, default=5)
    parser.add_argument("--filter", default=".", help="of Google Benchmark; a minus in front leaves out")
    parser.add_argument("--most-unknowns", type=float, default=1.5e5)
    options = parser.parse_args()
    folder = options.build / "benchmarks"
    result = {"date": datetime.date.today().isoformat(), "machine": machine(), "benchmarks": {}, "reports": {}}
    for program in sorted((folder / "programs").glob("*")):
        print(f"== {program.name}", flush=True)
        result["benchmarks"].update(run_program(program, folder, options))
    for program in sorted((folder / "reports").glob("*")):
        print(f"== {program.name}", flush=True)
        report = subprocess.run([program], check=True, capture_output=True, text=True).stdout
        print(report)
        result["reports"][program.name] = report
    print("== plate itself", flush=True)
    result["benchmarks"].update(
        processes.measure(options.build / "plate", REPOSITORY, options.repetitions, options.most_unknowns))
    result["ratios"] = ratios.evaluate(REPOSITORY / "benchmarks" / "ratios.csv", result["benchmarks"])
    out = folder / "benchmarks.json"
    out.write_text(json.dumps(result, indent=1) + "\n")
    print(ratios.table(result["ratios"]))
    print(f"\n{result['date']}, {result['machine']['processor']}, {result['machine']['cores']} cores, "
          f"load {result['machine']['load']:.1f}; all numbers: {out}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
