"""What a script with numpy does with the same designs: nodal matrices of all points stacked and solved at once, and by hand the
chain of parts, vectorised over the points. Answers are first held against the solver's (the JSON of bench_reference).

usage: script.py REFERENCE.json OUT.json [REPETITIONS]"""
import json
import sys
import time

import numpy as np

try:
    import scipy.sparse
    import scipy.sparse.linalg
except ImportError:
    scipy = None

LIGHT = 299792458.0


def spread(i):
    multiple = 0.6180339887498949 * (i + 1)
    return multiple - int(multiple)


# ---- parts: kind, name, nodes, numbers ----------------------------------------------------------------------------

def t_network(reference):
    """Node 4 is the transformer's inside; the load stands behind 1:2, so a quarter of its impedance at node 4."""
    line = (30.0, 50.0, 0.659, reference["k1"], reference["k2"])
    return 5, [("capacitor", "Cin", 0, 1, 180e-12, 1200.0), ("coil at", "L", 1, -1, 1.9e-6, 180.0, 7e6),
               ("capacitor", "Cout", 1, 2, 160e-12, 1200.0), ("line", "coax", 2, 3) + line,
               ("winding", "T.winding", 3, 4, 0.1e-6, 0.1), ("core", "T.core", 4, -1, 20e-6, 5000.0),
               ("load", "ant", 4, -1, (180.0 - 60.0j) / 4.0, 2.0)]


def ladder(unknowns, reference):
    parts = []
    for i in range(unknowns - 1):
        if i % 2 == 0:
            parts.append(("line", f"W{i}", i, i + 1, 0.3 + 3.0 * spread(i), 50.0, 0.66, reference["k1"], reference["k2"]))
        else:
            parts.append(("coil", f"L{i}", i, i + 1, (0.03 + 0.05 * spread(i)) * 1e-6, 200.0))
        parts.append(("capacitor", f"C{i}", i + 1, -1, (5.0 + 20.0 * spread(2 * i)) * 1e-12, 1000.0))
    parts.append(("load", "ant", unknowns - 1, -1, 60.0 + 10.0j, 1.0))
    return unknowns, parts


def relay_network(knobs, reference):
    """Columns of `knobs`: Cin, L, Cout."""
    line = (30.0, 50.0, 0.659, reference["k1"], reference["k2"])
    return 3, [("capacitor", "Cin", 0, -1, knobs[:, 0], 1000.0), ("coil", "L", 0, 1, knobs[:, 1], 200.0),
               ("capacitor", "Cout", 1, -1, knobs[:, 2], 1000.0), ("line", "coax", 1, 2) + line,
               ("load", "ant", 2, -1, 23.0 - 180.0j, 1.0)]


def relay_states():
    side, coils, capacitors = np.meshgrid(np.arange(2), np.arange(256), np.arange(256), indexing="ij")
    farads = (10e-12 * capacitors).ravel()
    side = side.ravel()
    return np.stack([np.where(side == 0, farads, 0.0), (50e-9 + 0.1e-6 * coils).ravel(), np.where(side == 0, 0.0, farads)], axis=1)


def gamma_of(part, hertz):
    _, _, _, _, length, _, velocity, k1, k2 = part
    alpha = (k1 * np.sqrt(hertz) + k2 * hertz) * (np.log(10.0) / 20.0)
    return (alpha + 1j * (2.0 * np.pi / (velocity * LIGHT)) * hertz) * length


def admittance(part, hertz):
    kind = part[0]
    w = 2.0 * np.pi * hertz
    if kind == "capacitor":
        b = w * part[4]
        return b / (1.0 + 1.0 / part[5] ** 2) * (1.0 / part[5] + 1j)
    if kind == "coil":
        return 1.0 / (w * part[4] * (1.0 / part[5] + 1j))
    if kind == "coil at":
        _, _, _, _, henries, q, at = part
        return 1.0 / ((2.0 * np.pi * at * henries / q) * np.sqrt(hertz / at) + 1j * w * henries)
    if kind == "winding":
        return 1.0 / (part[5] + 1j * w * part[4])
    if kind == "core":
        return 1.0 / part[5] - 1j / (w * part[4])
    return np.full_like(w, 1.0, dtype=complex) / part[4]


# ---- stacked nodal matrices ---------------------------------------------------------------------------------------

def admittances_of(parts, hertz):
    """Of each part y, or of a line (y11, y12)."""
    found = []
    for part in parts:
        if part[0] == "line":
            gamma = gamma_of(part, hertz)
            sinh = np.sinh(gamma)
            found.append((np.cosh(gamma) / (part[5] * sinh), -1.0 / (part[5] * sinh)))
        else:
            found.append((admittance(part, hertz), None))
    return found


def book(part, y, v1, v2, out):
    """Heat, peak volts and rms amps. A load behind a transformer stands for its own side of it."""
    name = part[1]
    if part[0] == "line":
        i1, i2 = y[0] * v1 + y[1] * v2, y[1] * v1 + y[0] * v2
        heat = (v1 * i1.conj()).real + (v2 * i2.conj()).real
        volts, amps = np.maximum(np.abs(v1), np.abs(v2)), np.maximum(np.abs(i1), np.abs(i2))
    else:
        v = v1 if v2 is None else v1 - v2
        i = y[0] * v
        heat, volts, amps = (v * i.conj()).real, np.abs(v), np.abs(i)
        if part[0] == "load" and part[5] != 1.0:
            volts, amps = volts * part[5], amps / part[5]
    out[name] = (heat, np.sqrt(2.0) * volts, amps)


def batched(network, hertz, watts=100.0, ohms=50.0):
    unknowns, parts = network
    ys = admittances_of(parts, hertz)
    matrix = np.zeros((len(hertz), unknowns, unknowns), dtype=complex)
    matrix[:, 0, 0] += 1.0 / ohms
    for part, (own, through) in zip(parts, ys):
        a, b = part[2], part[3]
        matrix[:, a, a] += own
        if b >= 0:
            matrix[:, b, b] += own
            off = -own if through is None else through
            matrix[:, a, b] += off
            matrix[:, b, a] += off
    right = np.zeros((len(hertz), unknowns, 1), dtype=complex)
    right[:, 0, 0] = 2.0 * np.sqrt(watts * ohms) / ohms
    v = np.linalg.solve(matrix, right)[:, :, 0]
    out = {}
    for part, y in zip(parts, ys):
        book(part, y, v[:, part[2]], v[:, part[3]] if part[3] >= 0 else None, out)
    return out


def sparse(network, hertz, watts=100.0, ohms=50.0):
    """scipy's sparse LU, a point at a time; admittances, assembly and books over all points at once."""
    unknowns, parts = network
    ys = admittances_of(parts, hertz)
    rows, columns, values = [0], [0], [np.full(len(hertz), 1.0 / ohms, dtype=complex)]
    for part, (own, through) in zip(parts, ys):
        a, b = part[2], part[3]
        off = -own if through is None else through
        for i, k, value in ((a, a, own), (b, b, own), (a, b, off), (b, a, off)):
            if i >= 0 and k >= 0:
                rows.append(i)
                columns.append(k)
                values.append(value)
    values = np.array(values)
    right = np.zeros(unknowns, dtype=complex)
    right[0] = 2.0 * np.sqrt(watts * ohms) / ohms
    v = np.empty((unknowns, len(hertz)), dtype=complex)
    for s in range(len(hertz)):
        matrix = scipy.sparse.csc_matrix((values[:, s], (rows, columns)), shape=(unknowns, unknowns))
        v[:, s] = scipy.sparse.linalg.splu(matrix).solve(right)
    out = {}
    for part, y in zip(parts, ys):
        book(part, y, v[part[2]], v[part[3]] if part[3] >= 0 else None, out)
    return out


# ---- by hand: the chain of parts ----------------------------------------------------------------------------------

def chain(network, hertz, watts=100.0, ohms=50.0, states=None):
    """Admittances from the far end back, then volts from the rig forward; all points at once, in blocks that fit the cache.
    `states`: so many settings at the one frequency; what does not depend on them is then reckoned once a block."""
    block = 1024
    count = states or len(hertz)
    outs = [chain_block(network, hertz if states else hertz[i:i + block], slice(i, i + block), watts, ohms) for i in range(0, count, block)]
    if len(outs) == 1:
        return outs[0]
    return {name: tuple(np.concatenate([out[name][k] for out in outs]) for k in range(3)) for name in outs[0]}


def chain_block(network, hertz, where, watts, ohms):
    parts = [tuple(x[where] if isinstance(x, np.ndarray) else x for x in part) for part in network[1]]
    seen = np.zeros(len(hertz), dtype=complex)
    steps = []
    for part in reversed(parts):
        if part[0] == "line":
            gamma = gamma_of(part, hertz)
            cosh, sinh = np.cosh(gamma), np.sinh(gamma)
            z = part[5]
            a = cosh + z * sinh * seen
            before = (sinh / z + cosh * seen) / a
            steps.append((part, a, before, seen))
            seen = before
            continue
        y = admittance(part, hertz)
        if part[3] < 0:
            steps.append((part, y, None, None))
            seen = seen + y
        else:
            # What is behind a part in series, and the share of the volts that it keeps.
            share = y / (y + seen)
            steps.append((part, y, share, None))
            seen = seen * share
    v = 2.0 * np.sqrt(watts * ohms) / (1.0 + ohms * seen)
    out = {}
    for part, first, second, third in reversed(steps):
        name = part[1]
        if part[0] == "line":
            i1 = v * second
            far = v / first
            i2 = far * third
            heat = (v * i1.conj()).real - (far * i2.conj()).real
            volts, amps = np.maximum(np.abs(v), np.abs(far)), np.maximum(np.abs(i1), np.abs(i2))
            v = far
        elif second is None:
            size = np.abs(v)
            heat, volts, amps = size * size * first.real, size, size * np.abs(first)
            if part[0] == "load" and part[5] != 1.0:
                volts, amps = volts * part[5], amps / part[5]
        else:
            kept = v * (1.0 - second)
            v = v * second
            size = np.abs(kept)
            heat, volts, amps = size * size * first.real, size, size * np.abs(first)
        out[name] = (heat, np.sqrt(2.0) * volts, amps)
    return out


# ---- the run ------------------------------------------------------------------------------------------------------

def hold_against(name, reference, out):
    for part, found in out.items():
        exact = reference["parts"][part]
        for key, series, scale in zip(("heat_w", "volts_peak", "amps_rms"), found, (100.0, None, None)):
            wanted = np.array(exact[key])
            limit = 1e-8 * (scale if scale else max(np.max(np.array(p[key])) for p in reference["parts"].values()))
            if not np.all(np.abs(series - wanted) <= limit):
                raise SystemExit(f"{name}: {part}: {key}: {series} is not {wanted}")


def main():
    reference = json.load(open(sys.argv[1]))
    repetitions = int(sys.argv[3]) if len(sys.argv) > 3 else 7
    few_points = {name: np.array(reference[name]["hertz"]) for name in "ABCD"}
    networks = {"A": t_network(reference["A"]), "B": ladder(41, reference["B"]), "C": ladder(2001, reference["C"])}
    points = {"A": 4096, "B": 1024, "C": 64}
    jobs = []
    for name in "ABC":
        hertz = np.linspace(1.8e6, 30e6, points[name])
        # Blocks that fit the cache, as the chain has them.
        step = {"A": 1024, "B": 128}.get(name)
        if step:
            hold_against(name, reference[name], batched(networks[name], few_points[name]))
            jobs.append((f"{name}/numpy", len(hertz), lambda n=networks[name], h=hertz, k=step: [batched(n, h[i:i + k]) for i in range(0, len(h), k)]))
        elif scipy is not None:
            hold_against(name, reference[name], sparse(networks[name], few_points[name]))
            jobs.append((f"{name}/numpy", len(hertz), lambda n=networks[name], h=hertz: sparse(n, h)))
        hold_against(name, reference[name], chain(networks[name], few_points[name]))
        jobs.append((f"{name}/script", len(hertz), lambda n=networks[name], h=hertz: chain(n, h)))
    few = np.array(reference["D"]["knobs"]).reshape(-1, 3)
    hold_against("D", reference["D"], batched(relay_network(few, reference["D"]), few_points["D"]))
    hold_against("D", reference["D"], chain(relay_network(few, reference["D"]), few_points["D"][:1], states=len(few)))
    states = relay_states()
    hertz = np.full(len(states), 7.1e6)
    part = states[7::16]
    jobs.append(("D/numpy", len(part), lambda: [batched(relay_network(part[i:i + 1024], reference["D"]), hertz[i:i + 1024]) for i in range(0, len(part), 1024)]))
    jobs.append(("D/script", len(states), lambda: chain(relay_network(states, reference["D"]), hertz[:1], states=len(states))))

    times = {name: [] for name, _, _ in jobs}
    for _, _, work in jobs:
        work()
    for _ in range(repetitions):
        for name, count, work in jobs:
            start = time.process_time()
            work()
            times[name].append((time.process_time() - start) / count * 1e9)
    json.dump({"numpy": np.__version__, "ns": {name: float(np.median(all_of)) for name, all_of in times.items()}}, open(sys.argv[2], "w"))


if __name__ == "__main__":
    main()
