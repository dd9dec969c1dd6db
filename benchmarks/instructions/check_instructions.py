#!/usr/bin/env python3
# SPDX-License-Identifier: MPL-2.0
"""Counts the instructions of the kernels and compares them with the accepted counts.

check_instructions.py PROGRAM COMPILER [--accept]

Fails if a kernel takes over 10 % more instructions than accepted, or is not in the table. Counts belong to a build: to
the compiler, and to the kind of processor, since kernels may have a version for wide arithmetic. With a build that the
table does not know, the exit status is 77 (skipped). --accept writes the counts of this build anew.
"""

import csv
import os
import pathlib
import re
import subprocess
import sys
import tempfile

SKIPPED = 77
ALLOWED = 1.10
TABLE = pathlib.Path(__file__).with_name("accepted_instructions.csv")
PROCESSOR = pathlib.Path("/proc/cpuinfo")
# The C library picks variants of its functions by the processor; these are the plainest.
PLAIN_PROCESSOR = ",".join(
    "-" + name
    for name in ("AVX", "AVX2", "AVX512F", "AVX512VL", "AVX512BW", "FMA", "FMA4", "BMI1", "BMI2", "ERMS", "FSRM", "SSE4_1", "SSE4_2",
                 "SSSE3", "XSAVEC", "RTM", "MOVBE", "LZCNT", "POPCNT"))


def count(program):
    """Instructions of each kernel, in the order in which they ran."""
    with tempfile.TemporaryDirectory() as folder:
        command = ["valgrind", "--tool=callgrind", f"--callgrind-out-file={folder}/counts", program]
        run = subprocess.run(command, capture_output=True, text=True, check=False,
                             env={**os.environ, "GLIBC_TUNABLES": "glibc.cpu.hwcaps=" + PLAIN_PROCESSOR})
        if run.returncode != 0:
            sys.exit(f"{' '.join(command)}: status {run.returncode}\n{run.stderr}")
        found = {}
        for file in pathlib.Path(folder).iterdir():
            text = file.read_text()
            name = re.search(r"^desc: Trigger: Client Request: (.*)$", text, re.MULTILINE)
            total = re.search(r"^(?:totals|summary): (\d+)", text, re.MULTILINE)
            if name and total:
                found[name.group(1).strip()] = int(total.group(1))
        return {name: found[name] for name in run.stdout.splitlines()}


def build_name(compiler):
    """The compiler, and whether the processor has what kernels choose their version by."""
    known = PROCESSOR.read_text().split() if PROCESSOR.exists() else []
    return compiler + (" AVX2" if "avx2" in known and "fma" in known else "")


def read_table():
    with TABLE.open(newline="") as file:
        lines = [line for line in file if not line.startswith("#")]
    return [(row["build"], row["kernel"], int(row["instructions"])) for row in csv.DictReader(lines)]


def write_table(rows):
    comments = [line for line in TABLE.read_text().splitlines() if line.startswith("#")]
    with TABLE.open("w", newline="") as file:
        file.write("\n".join(comments) + "\n")
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(("build", "kernel", "instructions"))
        writer.writerows(rows)


def main():
    program, compiler = sys.argv[1:3]
    build = build_name(compiler)
    counts = count(program)
    rows = read_table()
    if sys.argv[3:] == ["--accept"]:
        others = [row for row in rows if row[0] != build]
        write_table(others + [(build, name, instructions) for name, instructions in counts.items()])
        print(f"accepted for {build}: {TABLE}")
        return 0
    accepted = {kernel: instructions for known, kernel, instructions in rows if known == build}
    if not accepted:
        print(f"no accepted counts for {build}; bash benchmarks/run.sh --accept writes them")
        return SKIPPED
    status = 0
    print(f"{'kernel':32} {'instructions':>14} {'accepted':>14} {'ratio':>7}")
    for name, instructions in counts.items():
        before = accepted.get(name)
        ratio = instructions / before if before else float("nan")
        verdict = "" if ratio <= ALLOWED else "  not accepted: more than 10 % above, or new"
        if verdict:
            status = 1
        print(f"{name:32} {instructions:14} {before or 0:14} {ratio:7.3f}{verdict}")
    for name in accepted.keys() - counts.keys():
        print(f"{name}: accepted, but not counted any more")
        status = 1
    if status:
        print("If the change is wanted: bash benchmarks/run.sh --accept, and say why in the commit.")
    return status


if __name__ == "__main__":
    sys.exit(main())
