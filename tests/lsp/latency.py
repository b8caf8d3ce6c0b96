"""Measures the language server over stdio, with the messages a real client sends, and prints a table.

    cargo build --release -p tenter-lsp
    python3 tests/lsp/latency.py target/release/tenter-lsp [--rounds 200] [--check]

Typing is one character at a time into a step in the middle of the file. "push" is the time from the change to the
findings of that version; "pull" sends the change and straight behind it the requests an editor sends (findings, hints
of the visible lines), and counts until both are answered. With --check the exit code is 1 when a bound is missed.

The last column is the time the server's own threads were on a processor for one edit with its completion (Linux only):
what stays the same when other programs are busy too. On a loaded machine believe that one.
"""

import argparse
import pathlib
import sys
import tempfile
import time

sys.path.insert(0, str(pathlib.Path(__file__).parent))
from client import Client  # noqa: E402

RECIPE = """recipe Measured {number}
  about    Made up to be measured.
  room     22 °C

goods tees
  pieces   6
  weight   165 g each
  fibre    100% cotton
  state    scoured, dry

dye lagoon
  class    reactive dichlorotriazine
  index    C.I. Reactive Blue 4
  colour   #1d5fa6

dye marigold
  class    reactive dichlorotriazine
  index    C.I. Reactive Yellow 86
  colour   #f0b323

mix soda soak
  8 L      water at 40 °C
  60 g/L   soda ash

layout rings
  zone 45% rim
  zone 35% middle
  zone 20% heart

steps prepare
  wear     dust mask, gloves, goggles
  soak     tees in soda soak for 20 min
  spin     tees to 65% pickup
  fold     tees as rings

steps colour
  sprinkle 4 g/piece lagoon on rim
  sprinkle 1.5 g/piece marigold on heart
  sprinkle 12 g/piece soda ash on front
  irrigate 350 mL/piece water at 82 °C
  batch    tees for 4 h in sealed bag

steps wash off
  rinse    tees in cold water until nearly clear
  soap off tees in 20 L water at 60 °C with 1 g/L textile detergent, 2 times
  dry      tees

"""
PULL = {"textDocument": {"diagnostic": {}, "inlayHint": {}, "completion": {"completionItem": {"snippetSupport": True}}}}


def long_recipe(lines):
    """One recipe of about so many lines: more dyes, bottles and steps, not more recipes."""
    text = RECIPE.format(number=0).split("steps wash off")[0]
    number = 0
    while text.count("\n") < lines - 8:
        number += 1
        text = text.replace(
            "layout rings",
            f"mix bottle {number}\n  {400 + number} mL   water at 30 °C\n  {20 + number} g     lagoon\n"
            f"  {10 + number} g     soda ash\n\nlayout rings",
            1,
        )
        text = text.rstrip("\n") + f"\n  squirt   {20 + number} mL/piece from bottle {number} on rim\n"
    return text + "\nsteps wash off" + RECIPE.split("steps wash off")[1]


def many_recipes(size):
    parts, length, number = [], 0, 0
    while length < size:
        number += 1
        part = RECIPE.format(number=number)
        parts.append(part)
        length += len(part.encode())
    return "".join(parts)


def percentile(times, share):
    ordered = sorted(times)
    return ordered[min(len(ordered) - 1, int(len(ordered) * share))] * 1000


def busy(process):
    """Time the threads of a process were on a processor, s."""
    total = 0
    for task in pathlib.Path(f"/proc/{process}/task").iterdir():
        try:
            total += int((task / "schedstat").read_text().split()[0])
        except (OSError, IndexError, ValueError):
            pass
    return total / 1e9


def typing(command, text, capabilities, rounds, folder=None):
    """Times of: change to findings (and hints when the client pulls), and completion behind a change."""
    client = Client(command, capabilities, folder)
    uri = "untitled:measured" if folder is None else folder + "/measured.dye"
    client.open(uri, text)
    pulls = bool(capabilities)
    lines = text.split("\n")
    middle = len(lines) // 2
    row = next(i for i in range(middle, len(lines)) if lines[i].startswith("  irrigate") or lines[i].startswith("  squirt"))
    column = len(lines[row].encode("utf-16-le")) // 2
    around = {"start": {"line": max(0, row - 30), "character": 0}, "end": {"line": row + 30, "character": 0}}
    document = {"uri": uri}
    version = 1
    found, completed, worked = [], [], []

    def published(wanted):
        return lambda m: (
            m.get("method") == "textDocument/publishDiagnostics"
            and m["params"]["uri"] == uri
            and m["params"].get("version") == wanted
        )

    if not pulls:
        client.wait(published(1), 120)
    else:
        client.request("textDocument/diagnostic", {"textDocument": document}, 120)
    tail = ""
    words = " for 12 min # soaks well"
    for number in range(rounds):
        version += 1
        if len(tail) < len(words):
            letter = words[len(tail)]
            at = {"line": row, "character": column + len(tail)}
            change = {"range": {"start": at, "end": at}, "text": letter}
            tail += letter
        else:
            end = {"line": row, "character": column + len(tail)}
            change = {"range": {"start": {"line": row, "character": column}, "end": end}, "text": ""}
            tail = ""
        before = busy(client.process.pid)
        start = time.perf_counter()
        client.notify(
            "textDocument/didChange",
            {"textDocument": {"uri": uri, "version": version}, "contentChanges": [change]},
        )
        if pulls:
            first = client.ask("textDocument/diagnostic", {"textDocument": document})
            second = client.ask("textDocument/inlayHint", {"textDocument": document, "range": around})
            ends = [
                client.wait(lambda m, n=n: m.get("id") == n and "method" not in m)["_at"] for n in (first, second)
            ]
            found.append(max(ends) - start)
        else:
            found.append(client.wait(published(version))["_at"] - start)
        start = time.perf_counter()
        asked = client.ask(
            "textDocument/completion",
            {"textDocument": document, "position": {"line": row, "character": column + len(tail)}},
        )
        completed.append(client.wait(lambda m: m.get("id") == asked and "method" not in m)["_at"] - start)
        time.sleep(0.002)
        worked.append(busy(client.process.pid) - before)
    started = client.start_seconds
    memory = resident(client.process.pid)
    errors = client.errors
    client.close()
    if any("panicked" in line for line in errors):
        raise RuntimeError("".join(errors))
    return started, found, completed, memory, worked


def resident(process):
    try:
        for line in pathlib.Path(f"/proc/{process}/status").read_text().splitlines():
            if line.startswith("VmRSS"):
                return int(line.split()[1]) / 1024
    except OSError:
        pass
    return float("nan")


def collection(command, count, rounds):
    """Cold reading of a folder, typing meanwhile, memory afterwards."""
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        for number in range(count):
            place = folder / f"season {number // 500}"
            place.mkdir(exist_ok=True)
            (place / f"recipe-{number}.dye").write_text(RECIPE.format(number=number))
        capabilities = dict(PULL, window={"workDoneProgress": True})
        start = time.perf_counter()
        client = Client(command, capabilities, folder.as_uri())
        uri = folder.as_uri() + "/open.dye"
        client.open(uri, RECIPE.format(number="open"))
        times = []
        version = 1
        ready = None
        while ready is None or len(times) < rounds:
            version += 1
            sent = time.perf_counter()
            at = {"line": 0, "character": 7}
            client.notify(
                "textDocument/didChange",
                {
                    "textDocument": {"uri": uri, "version": version},
                    "contentChanges": [{"range": {"start": at, "end": at}, "text": "x"}],
                },
            )
            asked = client.ask("textDocument/diagnostic", {"textDocument": {"uri": uri}})
            times.append(client.wait(lambda m: m.get("id") == asked and "method" not in m)["_at"] - sent)
            for note in client.notes:
                if note.get("method") == "$/progress" and note["params"]["value"]["kind"] == "end":
                    ready = ready or note["_at"]
            if time.perf_counter() - start > 120:
                raise RuntimeError("the collection was never read")
            time.sleep(0.005)
        memory = resident(client.process.pid)
        found = client.request("workspace/symbol", {"query": f"Measured {count - 1}"})
        if not found:
            raise RuntimeError("the last recipe is not known")
        client.close()
        return ready - start, times, memory


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("server")
    parser.add_argument("--rounds", type=int, default=200)
    parser.add_argument("--recipes", type=int, default=10_000)
    parser.add_argument("--check", action="store_true")
    options = parser.parse_args()
    command = [options.server]
    rows, missed = [], []

    def row(what, unit, p50, p99, bound=None, worked=None):
        own = "" if worked is None else f"{percentile(worked, 0.5):8.2f} {percentile(worked, 0.99):8.2f}"
        rows.append((what, f"{p50:8.2f}", f"{p99:8.2f}", unit, "" if bound is None else f"< {bound}", own))
        if bound is not None and not p99 < bound:
            missed.append(what)

    short, long = long_recipe(200), many_recipes(1_000_000)
    starts = [typing(command, "mix a\n  1 L water\n\nsteps\n  irrigate 1 L water\n", PULL, 1)[0] for _ in range(20)]
    row("start to initialized", "ms", percentile(starts, 0.5), percentile(starts, 0.99), 50)
    for name, text, bound in (("200 lines", short, 10), ("1 MB", long, 50)):
        for way, capabilities in (("push", {}), ("pull", PULL)):
            rounds = options.rounds if text is short else max(50, options.rounds // 2)
            _, found, completed, memory, worked = typing(command, text, capabilities, rounds)
            what = "findings" if way == "push" else "findings and hints"
            row(f"{name}, {way}: {what}", "ms", percentile(found, 0.5), percentile(found, 0.99), bound, worked)
            row(f"{name}, {way}: completion", "ms", percentile(completed, 0.5), percentile(completed, 0.99), 10)
        row(f"{name}: resident", "MB", memory, memory)
    ready, times, memory = collection(command, options.recipes, options.rounds)
    row(f"{options.recipes} recipes read cold", "s", ready, ready, 3)
    row("typing meanwhile and after", "ms", percentile(times, 0.5), percentile(times, 0.99), 10)
    row(f"{options.recipes} recipes: resident", "MB", memory, memory, 150)
    print(f"200 lines: {short.count(chr(10))} lines, 1 MB: {len(long.encode()) / 1e6:.2f} MB, {long.count('recipe ')} recipes")
    print(f"{'':42} {'p50':>8} {'p99':>8}     {'bound':6} {'busy p50':>8} {'p99':>8}")
    for what, p50, p99, unit, bound, own in rows:
        print(f"{what:42} {p50} {p99} {unit:3} {bound:6} {own}".rstrip())
    if missed:
        print("missed:", "; ".join(missed))
    return 1 if missed and options.check else 0


if __name__ == "__main__":
    sys.exit(main())
