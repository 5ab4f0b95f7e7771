# SPDX-License-Identifier: Apache-2.0
"""What mypy must refuse, line by line."""

import quoin

quoin.solve(5)
quoin.solve("quoin: 1", threads="two")
quoin.solve("quoin: 1").svg("oil painting")
quoin.solve("quoin: 1").variants["as found"].field("light")
quoin.materials().lower()
