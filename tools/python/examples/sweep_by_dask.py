# SPDX-License-Identifier: Apache-2.0
"""Many corners at once on Dask's local cluster, to be read as a table.

usage: sweep_by_dask.py [WORKERS]

For a million rows `quoin vary` is the better tool: it keeps what is solved and shares fields.
"""

import itertools
import sys

from dask.distributed import Client, LocalCluster

import quoin


def solved(thickness, moisture):
    case = f"""quoin: 1
title: Corner of an invented house
spaces:
  room: {{is: inside, temperature: 19, humidity: 55}}
  outdoors: {{is: outside, temperature: 0}}
materials:
  wall brick: {{like: common brick, moisture: {moisture}}}
section:
  corner:
    layers:
      - {{material: lime plaster, thickness: 15}}
      - {{material: wall brick, thickness: {thickness}}}
"""
    found = quoin.solve(case).findings["variants"][0]
    return (thickness, moisture, found["surface"]["spaces"]["room"]["coldest"]["fRsi"],
            found["psi_W_mK"][0]["value"])


def main():
    workers = int(sys.argv[1]) if len(sys.argv) > 1 else 2
    axes = [215, 225, 327, 340, 440], ["dry", "sheltered", "damp"]
    with LocalCluster(n_workers=workers, threads_per_worker=1, dashboard_address=None) as cluster, \
            Client(cluster) as client:
        rows = client.gather(client.map(solved, *zip(*itertools.product(*axes))))
    print("thickness mm,moisture,fRsi,psi W/(m·K)")
    for thickness, moisture, factor, psi in rows:
        print(f"{thickness},{moisture},{factor:.3f},{psi:.3f}")


if __name__ == "__main__":
    main()
