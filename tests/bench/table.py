"""One table out of the benchmarks' results: ratio, target, met or not; what else was measured; and the scaling curve as SVG.

usage: table.py RESULTS_FOLDER SCALING.csv SCALING.svg [--keep FILE] [--save FILE]"""
import argparse
import csv
import glob
import json
import math
import os
import statistics
import sys

TARGETS = [("against numpy batched (C: sparse)", "numpy", {"A": 60, "B": 300, "C": 150, "D": 1200}),
           ("against the hand-vectorised script", "script", {"A": 15, "B": 15, "C": 40, "D": 35}),
           ("against Eigen dense", "dense", {"A": 40, "B": 200, "D": 400}),
           ("against Eigen dense, fixed size", "fixed", {"A": None, "D": None}),
           ("against Eigen SparseLU", "sparse", {"A": None, "B": None, "C": None, "D": None}),
           ("against KLU, refactored", "klu", {"A": 25, "B": 25, "C": 25, "D": None})]

# What the program itself takes, plugins and all.
BYTES_OF_NO_POINTS = 12e6


def read(folder):
    """Medians of nanoseconds an item by name, counters, what ran, and the least of the nanoseconds."""
    times, counters, context = {}, {}, {}
    for name in sorted(glob.glob(os.path.join(folder, "bench*.json"))):
        data = json.load(open(name))
        context = data["context"]
        for run in data["benchmarks"]:
            if run.get("run_type") != "iteration":
                continue
            key = run["run_name"].removesuffix("/real_time").removesuffix("/iterations:1")
            times.setdefault(key, []).append(1e9 / run["items_per_second"])
            counters[key] = {k: run[k] for k in ("flops", "robust", "evaluations", "numbers", "bytes") if k in run}
    for name in sorted(glob.glob(os.path.join(folder, "script*.json"))):
        data = json.load(open(name))
        context["numpy"] = data["numpy"]
        for key, value in data["ns"].items():
            times.setdefault(key, []).append(value)
    return {key: statistics.median(all_of) for key, all_of in times.items()}, counters, context, {key: min(all_of) for key, all_of in times.items()}


def processor():
    for line in open("/proc/cpuinfo"):
        if line.startswith("model name"):
            return line.split(":", 1)[1].strip()
    return "?"


def exponent(rows, least):
    """Slope of log cost over log size, by least squares, from `least` unknowns on."""
    points = [(math.log(n), math.log(t)) for n, t in rows if n >= least]
    if len(points) < 2:
        return float("nan")
    mx, my = (sum(p[k] for p in points) / len(points) for k in (0, 1))
    return sum((x - mx) * (y - my) for x, y in points) / sum((x - mx) ** 2 for x, _ in points)


def draw(curves, path):
    width, height, left, bottom = 640, 420, 70, 50
    xs = [math.log10(n) for rows in curves.values() for n, _ in rows]
    ys = [math.log10(t) for rows in curves.values() for _, t in rows]
    x0, x1, y0, y1 = math.floor(min(xs)), math.ceil(max(xs)), math.floor(min(ys)), math.ceil(max(ys))

    def place(n, t):
        x = left + (math.log10(n) - x0) / (x1 - x0) * (width - left - 20)
        y = height - bottom - (math.log10(t) - y0) / (y1 - y0) * (height - bottom - 20)
        return f"{x:.1f},{y:.1f}"

    out = [f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" font-family="sans-serif" font-size="12">',
           f'<rect width="{width}" height="{height}" fill="white"/>']
    for decade in range(x0, x1 + 1):
        x = place(10.0 ** decade, 10.0 ** y0).split(",")[0]
        out.append(f'<line x1="{x}" x2="{x}" y1="20" y2="{height - bottom}" stroke="#ddd"/>')
        out.append(f'<text x="{x}" y="{height - bottom + 16}" text-anchor="middle">1e{decade}</text>')
    for decade in range(y0, y1 + 1):
        y = place(10.0 ** x0, 10.0 ** decade).split(",")[1]
        out.append(f'<line x1="{left}" x2="{width - 20}" y1="{y}" y2="{y}" stroke="#ddd"/>')
        out.append(f'<text x="{left - 6}" y="{y}" text-anchor="end" dominant-baseline="middle">1e{decade}</text>')
    out.append(f'<text x="{(width + left) / 2}" y="{height - 12}" text-anchor="middle">unknowns</text>')
    out.append(f'<text x="16" y="{height / 2}" text-anchor="middle" transform="rotate(-90 16 {height / 2})">ns a point</text>')
    for (kind, rows), colour in zip(curves.items(), ("#06c", "#c40")):
        out.append(f'<polyline fill="none" stroke="{colour}" stroke-width="2" points="{" ".join(place(n, t) for n, t in rows)}"/>')
        x, y = place(*rows[-1]).split(",")
        out.append(f'<text x="{float(x) - 4}" y="{float(y) - 8}" fill="{colour}" text-anchor="end">{kind}</text>')
    out.append("</svg>")
    open(path, "w").write("\n".join(out) + "\n")


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("folder")
    arguments.add_argument("scaling")
    arguments.add_argument("svg")
    arguments.add_argument("--keep")
    arguments.add_argument("--save")
    asked = arguments.parse_args()
    times, counters, context, least = read(asked.folder)
    # The solver as it answers such a question: D on the collapsed network.
    ours = {"A": times["A/wattfall"], "B": times["B/wattfall"], "C": times["C/wattfall"], "D": min(times["D/wattfall"], times["D/collapsed"])}
    print(f"{processor()}; {context['compiler']}; {context['flags']}; kernel {context['kernel']}; "
          f"numpy {context.get('numpy', 'not there')}; load {context['load_avg'][0]:.1f}")
    print("wattfall, ns a point (medians): " + ", ".join(f"{k} {v:.1f}" for k, v in ours.items()) +
          f"; D uncollapsed {times['D/wattfall']:.1f}; asked once, for the books: " +
          ", ".join(f"{k} {times[k + '/once']:.1f}" for k in "ABCD"))
    ratios = {}
    print(f"{'':38}" + "".join(f"{k:^24}" for k in "ABCD"))
    for title, key, targets in TARGETS:
        if not any(f"{design}/{key}" in times for design in "ABCD"):
            continue
        cells = []
        for design in "ABCD":
            name = f"{design}/{key}"
            if name not in times:
                cells.append("-" if design not in targets else "not measured")
                continue
            ratio = times[name] / ours[design]
            ratios[name] = ratio
            target = targets.get(design)
            verdict = "" if target is None else f" of {target}, " + ("met" if ratio >= target else "not met")
            cells.append(f"{ratio:.1f}x{verdict}")
        print(f"{title:38}" + "".join(f"{cell:^24}" for cell in cells))
    for kernel in ("baseline", "v3", "v4"):
        if f"peak/{kernel}" not in times:
            continue
        peak = 1.0 / times[f"peak/{kernel}"]
        shares = []
        for design in "ABC":
            work = times[f"eliminate/{design}/{kernel}"] - times[f"gather/{design}/{kernel}"]
            share = counters[f"eliminate/{design}/{kernel}"]["flops"] / work / peak
            if kernel == context["kernel"]:
                ratios[f"eliminate/{design}"] = share
            shares.append(f"{design} {share * 100:.0f} %")
        print(f"multiply-add peak of {kernel}: {peak:.1f} Gflop/s; elimination's share (target 40 %): " + ", ".join(shares))
    for key in ("ledger", "document"):
        print(f"{key}, ns a point: " + ", ".join(f"{k} {times[f'{key}/{k}']:.0f} ({times[f'{key}/{k}'] / ours[k]:.0f} times the solution)" for k in "AB"))
    speedups = {k: least[f"threads/{k}/1"] / least[f"threads/{k}/2"] for k in "BC"}
    print(f"two threads against one, the best of each, {os.cpu_count()} processors (target 1.8): " +
          ", ".join(f"{k} {value:.2f}x, {'met' if value >= 1.8 else 'not met'}" for k, value in speedups.items()))
    ratios["json"] = times["json/printf"] / times["json/writer"]
    print(f"JSON of 100,000 points of A, {counters['json/writer']['bytes'] / 1e6:.0f} MB with {counters['json/printf']['numbers'] / 1e6:.1f} million numbers: "
          f"{times['json/writer'] / 1e4:.2f} s; solving, booking and the same numbers with printf: {times['json/printf'] / 1e4:.2f} s, "
          f"{ratios['json']:.1f} times as long (target 1), " + ("met" if ratios["json"] > 1 else "not met"))
    rows = json.load(open(os.path.join(asked.folder, "points.json")))
    growth = exponent([(row["points"], row["bytes"] - BYTES_OF_NO_POINTS) for row in rows], 1)
    print("a run of A with its JSON: " + ", ".join(f"{row['points']} points {row['seconds']:.2f} s, {row['bytes'] / 1e6:.0f} MB" for row in rows) +
          f"; memory grows as n^{growth:.2f} (target 1), " + ("met" if growth <= 1.05 else "not met"))
    start = times["start/wattfall"] / times["start/empty"]
    ratios["start"] = 1.0 / start
    print(f"start-up to first answer: {start:.2f} times an empty program with the same shared libraries (target 2), "
          + ("met" if start <= 2.0 else "not met") + f"; {times['start/wattfall'] / 1e6:.2f} ms")
    print("tune: " + ", ".join(f"{k} {times['tune/' + k] / 1e6:.2f} ms, {counters['tune/' + k]['evaluations']:.0f} evaluations" for k in "LT"))
    curves = {}
    for row in csv.DictReader(open(asked.scaling)):
        curves.setdefault(row["kind"], []).append(row)
    for kind, target in (("ladder", 1.1), ("grid", 1.5)):
        slope = exponent([(float(r["unknowns"]), float(r["ns_per_point"])) for r in curves[kind]], 100)
        work = exponent([(float(r["unknowns"]), float(r["operations"])) for r in curves[kind]], 100)
        last = curves[kind][-1]
        print(f"{kind}: cost a point grows as n^{slope:.2f} from 100 unknowns (target {target}), " + ("met" if slope <= target else "not met") +
              f"; its operations as n^{work:.2f}; at {last['unknowns']}: {float(last['ns_per_point']) / 1e6:.2f} ms a point, {float(last['bytes_per_unknown']):.0f} bytes an unknown, "
              f"plan {float(last['plan_s']):.2f} s, compile {float(last['compile_s']):.2f} s, robust {last['robust_states']}")
    draw({kind: [(float(r["unknowns"]), float(r["ns_per_point"])) for r in rows] for kind, rows in curves.items()}, asked.svg)
    # Ratios depend on how wide the kernel is, so they are kept for each.
    if asked.save:
        kept = json.load(open(asked.save)) if os.path.exists(asked.save) else {}
        kept[context["kernel"]] = {key: float(f"{value:.3g}") for key, value in ratios.items()}
        with open(asked.save, "w") as file:
            json.dump(kept, file, indent=1, sort_keys=True)
            file.write("\n")
    if asked.keep:
        kept = json.load(open(asked.keep)).get(context["kernel"]) if os.path.exists(asked.keep) else None
        if kept is None:
            print(f"no ratios are kept for the kernel {context['kernel']}")
            return
        fallen = [key for key, value in kept.items() if ratios.get(key, value) < 0.7 * value]
        for key in fallen:
            print(f"FALLEN: {key} is {ratios[key]:.3g}, was {kept[key]:.3g}")
        sys.exit(3 if fallen else 0)


if __name__ == "__main__":
    main()
