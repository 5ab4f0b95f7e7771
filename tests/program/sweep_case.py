# SPDX-License-Identifier: Apache-2.0
"""The case that sweeps of tests vary."""

CASE = """quoin: 1
title: Corner, invented
spaces:
  hall: {is: inside, temperature: 20, humidity: 50}
  yard: {is: outside, temperature: -5}
section:
  corner:
    layers:
      - {material: lime plaster, thickness: 15}
      - {material: common brick, thickness: 327}
"""
