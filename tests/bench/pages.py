#!/usr/bin/env python3
"""pages.py PROGRAM: what a page of 1,000 points and 4 variants costs beside the JSON document of the same run.

Processor time of whole runs, the least of several, so that what else the machine does counts little: first with the document alone, then with the page
beside it. Their difference is the page's own: the document read again, everything drawn and written."""
import os
import resource
import subprocess
import sys
import tempfile

PARTS = """source rig at desk : 100 W, 50 ohm
line coax from desk to mast : 26 m of RG-58
capacitor Cin from mast to mid : 118 pF, Q 1200, limit 1.5 kV
inductor L from mid to ground : 2.4 uH, Q 180 at 7 MHz
capacitor Cout from mid to feed : 330 pF, Q 1200
load wires at feed : 61 - j142 ohm, radiates 94 %
plane antenna at feed
require swr at desk below 1.5
"""


def seconds(arguments):
    before = resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime
    code = subprocess.run(arguments, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL).returncode
    if code not in (0, 1):
        sys.exit(f"{' '.join(arguments)}: {code}")
    return resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime - before


def main():
    program, rounds = sys.argv[1], 9
    with tempfile.TemporaryDirectory() as folder:
        feed, json, page = (os.path.join(folder, name) for name in ("long.feed", "long.json", "long.html"))
        variants = "".join(f'variant "{name}" {{\n  change coax : {metres} m of RG-58\n}}\n' for name, metres in zip("abcd", (10, 20, 30, 40)))
        with open(feed, "w", encoding="utf-8") as file:
            file.write('design "long"\n' + PARTS + variants + "sweep 7 MHz to 7.3 MHz, 1000 points\n")
        alone = [program, "run", feed, "--threads", "1", "--to", "json=" + json]
        run, both = float("inf"), float("inf")
        for _ in range(rounds):  # in turn, so that a slow minute meets both
            run = min(run, seconds(alone))
            both = min(both, seconds(alone + ["--to", "page=" + page]))
        own = both - run
        print("| 1,000 points x 4 variants | processor time, s | of the run with its JSON |\n| --- | ---: | ---: |")
        print(f"| run, JSON of {os.path.getsize(json):,} bytes | {run:.3f} | 1.00 |")
        print(f"| page of {os.path.getsize(page):,} bytes, its own | {own:.3f} | {own / run:.2f} |")
        if own >= 0.2:
            sys.exit("a page is to take less than 0.2 s")


main()
