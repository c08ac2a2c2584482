"""What a run with a JSON report needs, by the number of points: seconds of the processor and the most memory that was in use.

usage: points.py WATTFALL FEED OUT.json"""
import json
import os
import subprocess
import sys

program, feed, out = sys.argv[1:]
rows = []
for points in (10000, 50000, 100000):
    sweep = f"1.8 MHz to 30 MHz, {points} points"
    child = subprocess.Popen([program, "run", feed, "--sweep", sweep, "--threads", "1", "--to", "json"], stdout=subprocess.DEVNULL)
    _, status, usage = os.wait4(child.pid, 0)
    if status != 0:
        sys.exit(f"the run of {points} points failed")
    # Linux counts kilobytes.
    rows.append({"points": points, "seconds": usage.ru_utime + usage.ru_stime, "bytes": usage.ru_maxrss * 1024})
with open(out, "w") as file:
    json.dump(rows, file)
