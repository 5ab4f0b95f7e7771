# SPDX-License-Identifier: Apache-2.0
"""Runs a sweep by GNU parallel, and by Slurm on the loopback address: all parts join to one run's rows.

usage: test_cluster.py PROGRAM SOURCE_DIR (parallel | slurm)

Ends with 77, after a word, where the engine cannot be had.
"""

import os
import pathlib
import shutil
import socket
import subprocess
import sys
import tempfile
import time

from sweep_case import CASE

PROGRAM, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])

SWEEP = """vary: 1
case: corner.yaml
over:
  section/corner/layers/1/thickness: {from: 215, to: 525, step: 10}
  spaces/yard/temperature: {from: -10, to: 9, step: 1}
table: [coldest, fRsi, psi]
"""
PARTS = 4


def skip(why):
    print(f"skipped: {why}")
    sys.exit(77)


def gathered(folder):
    done = subprocess.run([PROGRAM, "gather", str(folder)], check=True, capture_output=True,
                          text=True)
    assert " 0 missing" in done.stderr, done.stderr
    return done.stdout


def by_parallel(folder):
    if shutil.which("parallel") is None:
        skip("no GNU parallel here")
    subprocess.run([SOURCE / "tools/cluster/parallel", folder / "sweep.yaml", folder / "parts",
                    str(PARTS)], check=True, env={**os.environ, "QUOIN": PROGRAM})
    # A part that is run again solves nothing.
    again = subprocess.run([PROGRAM, "vary", folder / "sweep.yaml", "-o", folder / "parts", "--part",
                            f"2/{PARTS}"], check=True, capture_output=True, text=True)
    assert " 0 of them solved now" in again.stderr, again.stderr


def free_port():
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return one.getsockname()[1]


class Slurm:
    """munged, slurmctld and slurmd for as long as a test lasts, in a folder of their own."""

    def __init__(self, folder):
        self.folder = folder
        self.started = []
        host = socket.gethostname().split(".")[0]
        (folder / "spool").mkdir()
        (folder / "state").mkdir()
        (folder / "key").write_bytes(os.urandom(1024))
        (folder / "key").chmod(0o400)
        folder.chmod(0o755)
        (folder / "slurm.conf").write_text(f"""ClusterName=test
SlurmctldHost={host}(127.0.0.1)
SlurmUser=root
SlurmctldPort={free_port()}
SlurmdPort={free_port()}
AuthType=auth/munge
AuthInfo=socket={folder}/munge.socket
CredType=cred/munge
MpiDefault=none
ProctrackType=proctrack/pgid
TaskPlugin=task/none
ReturnToService=2
SchedulerType=sched/builtin
SelectType=select/cons_tres
SelectTypeParameters=CR_Core
AccountingStorageType=accounting_storage/none
JobAcctGatherType=jobacct_gather/none
SlurmctldPidFile={folder}/slurmctld.pid
SlurmdPidFile={folder}/slurmd.pid
SlurmctldLogFile={folder}/slurmctld.log
SlurmdLogFile={folder}/slurmd.log
SlurmdSpoolDir={folder}/spool
StateSaveLocation={folder}/state
NodeName={host} NodeAddr=127.0.0.1 CPUs={os.cpu_count()} State=UNKNOWN
PartitionName=all Nodes={host} Default=YES MaxTime=INFINITE State=UP
""")
        self.environment = {**os.environ, "SLURM_CONF": str(folder / "slurm.conf"),
                            "QUOIN": PROGRAM}

    def start(self, *command):
        log = open(self.folder / (pathlib.Path(command[0]).name + ".out"), "w")
        self.started.append(subprocess.Popen(command, stdout=log, stderr=log,
                                             env=self.environment))

    def __enter__(self):
        self.start("munged", "--foreground", "--force", f"--socket={self.folder}/munge.socket",
                   f"--key-file={self.folder}/key", f"--pid-file={self.folder}/munge.pid",
                   f"--log-file={self.folder}/munge.log", f"--seed-file={self.folder}/seed")
        time.sleep(1)
        self.start("slurmctld", "-D", "-c")
        self.start("slurmd", "-D")
        return self

    def __exit__(self, *_):
        for process in reversed(self.started):
            process.terminate()
        for process in self.started:
            try:
                process.wait(timeout=10)
            except subprocess.TimeoutExpired:
                process.kill()
                process.wait()

    def run(self, *command):
        return subprocess.run(command, env=self.environment, capture_output=True, text=True,
                              cwd=self.folder)

    def wait_until_idle(self):
        for _ in range(30):
            if "idle" in self.run("sinfo", "-h", "-o", "%t").stdout:
                return True
            time.sleep(1)
        return False


def by_slurm(folder):
    missing = [name for name in ("munged", "slurmctld", "slurmd", "sbatch")
               if shutil.which(name) is None]
    if missing:
        skip(f"no {', '.join(missing)} here")
    if os.geteuid() != 0:
        skip("its daemons need root")
    # What a daemon of a daemon still writes when it ends is no fault of the sweep.
    with (tempfile.TemporaryDirectory(dir="/var/tmp", ignore_cleanup_errors=True) as name,
          Slurm(pathlib.Path(name)) as slurm):
        if not slurm.wait_until_idle():
            for log in sorted(slurm.folder.glob("*.log")) + sorted(slurm.folder.glob("*.out")):
                print(f"== {log.name}\n{log.read_text()[-1500:]}")
            skip("its daemons do not start on this machine")
        sent = slurm.run("sbatch", "--wait", f"--array=1-{PARTS}", f"--output={folder}/%a.out",
                         str(SOURCE / "tools/cluster/slurm"), str(folder / "sweep.yaml"),
                         str(folder / "parts"))
        assert sent.returncode == 0, sent


def main():
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        (folder / "corner.yaml").write_text(CASE, "utf-8")
        (folder / "sweep.yaml").write_text(SWEEP, "utf-8")
        {"parallel": by_parallel, "slurm": by_slurm}[sys.argv[3]](folder)
        assert len(list((folder / "parts").glob("part-*.sqlite"))) == PARTS
        subprocess.run([PROGRAM, "vary", "--quiet", folder / "sweep.yaml", "-o", folder / "whole"],
                       check=True)
        assert gathered(folder / "parts") == gathered(folder / "whole")


if __name__ == "__main__":
    main()
