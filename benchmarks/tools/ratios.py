# SPDX-License-Identifier: MPL-2.0
"""The table of ratios: rows of ratios.csv from the repetitions of the benchmarks."""

import csv
import re
import statistics


def values_of(term, benchmarks):
    """Repetitions of one term; None if one of its benchmarks did not run."""
    if " | " in term:
        known = [values for values in (values_of(part, benchmarks) for part in term.split(" | ")) if values]
        return min(known, key=statistics.median) if known else None
    factor, name = re.fullmatch(r"(?:([\d.]+) \* )?(.+)", term).groups()
    name, _, counter = name.partition("@")
    if name not in benchmarks:
        return None
    entry = benchmarks[name]
    values = entry["counters"].get(counter) if counter else entry["seconds"]
    return [float(factor or 1) * value for value in values] if values else None


def sum_of(expression, benchmarks):
    """Repetitions of a sum of terms: the first of each, the second of each, and so on."""
    total = None
    for sign, term in re.findall(r"(?:^| ([+-]) )(.+?)(?= [+-] |$)", expression):
        values = values_of(term, benchmarks)
        if values is None:
            return None
        signed = [-value for value in values] if sign == "-" else values
        total = signed if total is None else [a + b for a, b in zip(total, signed)]
    return total


def met(value, goal):
    """Whether a goal such as "<= 1.6" is met; None without one."""
    if not goal:
        return None
    relation, limit = goal.split()
    return value <= float(limit) if relation == "<=" else value >= float(limit)


def evaluate(file, benchmarks):
    """Median and spread of each row; the median is None where a benchmark did not run."""
    with file.open(newline="") as lines:
        rows = list(csv.DictReader(line for line in lines if not line.startswith("#")))
    results = []
    for row in rows:
        above = sum_of(row["above"], benchmarks)
        below = sum_of(row["below"], benchmarks) if row["below"] else None
        if above is None or (row["below"] and below is None):
            results.append({"what": row["what"], "median": None, "goal": row["goal"], "met": None})
            continue
        ratios = [a / b for a, b in zip(above, below)] if below else above
        median = statistics.median(ratios)
        results.append({"what": row["what"], "median": median, "lowest": min(ratios), "highest": max(ratios),
                        "repetitions": len(ratios), "goal": row["goal"], "met": met(median, row["goal"])})
    return results


def table(results):
    """As text: median, lowest and highest, goal."""
    width = max([len(row["what"]) for row in results] + [4])
    lines = [f"{'what':{width}} {'median':>9} {'lowest':>9} {'highest':>9}  goal"]
    for row in results:
        if row["median"] is None:
            lines.append(f"{row['what']:{width}} not measured")
            continue
        verdict = {True: "met", False: "NOT MET", None: ""}[row["met"]]
        numbers = " ".join(f"{row[key]:9.4g}" for key in ("median", "lowest", "highest"))
        lines.append(f"{row['what']:{width}} {numbers}  {row['goal']:9} {verdict}".rstrip())
    return "\n".join(lines)
