"""Runs the Python block of README.md that queries sweep.sqlite, in the folder of a sweep's results."""

import re
import sys

text = open(sys.argv[1], encoding="utf-8").read()
blocks = [block for block in re.findall(r"```python\n(.*?)```", text, re.S) if "sweep.sqlite" in block]
if len(blocks) != 1:
    sys.exit("README.md has %d queries of sweep.sqlite, not one" % len(blocks))
exec(compile(blocks[0], "README.md", "exec"))
