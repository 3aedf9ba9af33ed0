"""Does what the README says runs the program, in a fresh copy, and sees the job begin.

Run by hand: python tests/terminal/readme_run.py FOLDER-OF-A-FRESH-COPY
"""

from __future__ import annotations

import re
import shlex
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.terminal.driver import Terminal

#: Installing takes as long as the network does.
PATIENCE_S = 900.0


def main(folder: Path) -> None:
    """Run the block marked 'run', begin a job, leave."""
    text = (folder / "README.md").read_text("utf-8")
    block = re.search(r"<!-- run -->\s*```sh\n(.*?)```", text, re.DOTALL)
    if block is None:
        raise SystemExit("the README has no block marked 'run'")
    command = f"cd {shlex.quote(str(folder))} && {block.group(1).strip()}"
    with tempfile.TemporaryDirectory() as home:
        with Terminal(Path(home), command=["bash", "-euo", "pipefail", "-c", command]) as run:
            run.until("begin the job", PATIENCE_S)
            run.press("door", "enter")
            run.until("read and understood")
            run.press("f10")
            code = run.wait()
        kept = list((Path(home) / "booth" / "jobs").glob("*.jsonl"))
    if code != 0 or len(kept) != 1:
        raise SystemExit(f"the program ended with {code}, and {len(kept)} jobs were kept")
    print("the README's command ran the program, a job was begun and kept")


if __name__ == "__main__":
    main(Path(sys.argv[1]).resolve())
