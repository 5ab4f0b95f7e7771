# SPDX-License-Identifier: Apache-2.0
"""Runs a command several times and prints the wall time and peak memory of the whole process.

usage: whole_process.py RUNS COMMAND [ARGUMENT...]
"""

import os
import statistics
import sys
import time


def measured(command):
    """Seconds and mebibytes of one run, its output thrown away."""
    silent = [(os.POSIX_SPAWN_OPEN, 1, os.devnull, os.O_WRONLY, 0)]
    start = time.perf_counter()
    child = os.posix_spawnp(command[0], command, os.environ, file_actions=silent)
    _, status, usage = os.wait4(child, 0)
    seconds = time.perf_counter() - start
    if status != 0:
        sys.exit(f"{' '.join(command)}: exit {os.waitstatus_to_exitcode(status)}")
    return seconds, usage.ru_maxrss / 1024


def main():
    runs, command = int(sys.argv[1]), sys.argv[2:]
    seconds, memory = zip(*(measured(command) for _ in range(runs)))
    print(f"{' '.join(command)}\n  {runs} runs: best {min(seconds):.3f} s, "
          f"median {statistics.median(seconds):.3f} s, peak memory {max(memory):.0f} MiB")


if __name__ == "__main__":
    main()
