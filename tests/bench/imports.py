"""How long the imports of a lesson's set-up cell take, and where the time goes.

Run `python tests/bench/imports.py`; it ends with code 1 if a bar is missed. In a Jupyter kernel
IPython is there already, so two figures stand side by side: all of it in a fresh process, and what
comes on top of a kernel. What any notebook with sliders and numbers would import stands beside.
"""

import argparse
import ast
import json
import re
import subprocess
import sys
from pathlib import Path
from statistics import median

HERE = Path(__file__).resolve()
ROOT = HERE.parents[2]
sys.path.insert(0, str(HERE.parent))

from measured import heading, verdict  # noqa: E402

BAR_SECONDS = 0.6
RUNS = 10
KERNEL = "import IPython, ipykernel.ipkernel, ipykernel.zmqshell"
BASELINE = "import IPython, ipywidgets, numpy"


def set_up_imports(lesson):
    """Return the import lines of a lesson's set-up cell."""
    cells = json.loads(lesson.read_text(encoding="utf-8"))["cells"]
    source = next("".join(cell["source"]) for cell in cells if cell["id"] == "set-up")
    found = [n for n in ast.parse(source).body if isinstance(n, (ast.Import, ast.ImportFrom))]
    return "; ".join(map(ast.unparse, found))


def seconds(imports, before="pass"):
    """Return the median time of some imports, each time in a fresh process [s]."""
    program = (
        f"{before}\nfrom time import perf_counter\nstart = perf_counter()\n"
        f"{imports}\nprint(perf_counter() - start)"
    )
    return median(float(_python("-c", program).stdout) for _ in range(RUNS))


def _python(*arguments):
    command = [sys.executable, *arguments]
    return subprocess.run(command, cwd=ROOT, check=True, capture_output=True, text=True)


def profile(imports, before="pass", rows=14):
    """Return the costliest imports as `-X importtime` sees them: own and cumulated ms, module."""
    mark = "import sys; print('=====', file=sys.stderr, flush=True)"
    said = _python("-X", "importtime", "-c", f"{before}\n{mark}\n{imports}").stderr
    found = re.findall(r"import time: +(\d+) \| +(\d+) \| ( *)(\S+)", said.split("=====")[1])
    ranked = sorted(found, key=lambda row: -int(row[1]))[:rows]
    return [
        f"{int(own) / 1e3:8.1f} {int(all_) / 1e3:8.1f}  {name}" for own, all_, _, name in ranked
    ]


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--lesson", default="*", help="a pattern of file names, all if left out")
    arguments = parser.parse_args()
    print(heading("python tests/bench/imports.py"))
    print(f"medians of {RUNS} fresh processes, warm")
    print(f"{1e3 * seconds(BASELINE):5.0f} ms  baseline: {BASELINE}")
    code = 0
    for lesson in sorted((ROOT / "lessons").glob(f"{arguments.lesson}.ipynb")):
        imports = set_up_imports(lesson)
        fresh, on_top = seconds(imports), seconds(imports, before=KERNEL)
        print(f"\n{lesson.name}: {imports}")
        code |= verdict(
            max(fresh, on_top) <= BAR_SECONDS,
            f"{1e3 * fresh:.0f} ms in a fresh process, {1e3 * on_top:.0f} ms on top of a kernel "
            f"(bar: {1e3 * BAR_SECONDS:.0f})",
        )
        print("on top of a kernel, costliest first (own ms, with all below it ms, module):")
        print("\n".join(profile(imports, before=KERNEL)))
    return code


if __name__ == "__main__":
    sys.exit(main())
