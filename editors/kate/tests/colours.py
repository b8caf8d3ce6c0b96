"""What Kate's own highlighter makes of a recipe: colours.py RECIPE TRACE, where TRACE is its `--syntax-trace=format`."""

import re
import sys

EXPECTED = [
    ("recipe", "recipe", "Kind"), ("recipe", "Jollify", "Title"), ("  about", "about", "Key"), ("  about", "A verb", "Prose"),
    ("  room", "room", "Key"), ("  room", "22", "Number"), ("  room", "°C", "Unit"), ("  squirt", "squirt", "Verb"),
    ("  squirt", "70", "Number"), ("  squirt", "mL/piece", "Unit"), ("  squirt", "from", "Clause"), ("  soap off", "soap off", "Verb"),
    ("  soap off", "times", "Unit"), ("  rinse", "until", "Clause"), ("  colour", "#1d5fa6", "Colour"),
    ("  presss", "# finding", "Comment"), ("  presss", "presss", "Text"), ("  zone", "60", "Number"), ("  zone", "%", "Unit"),
    ("steps wash", "wash", "Title"), ("  pieces", "pieces", "Key"),
]


def names(source, trace):
    """For each line of the source, where which format begins: {line: {column: name}}."""
    rows = [re.sub(r"\x1b\[[0-9;]*[mK]", "", row) for row in trace.split("\n")]
    at = 0
    for number, line in enumerate(source):
        following = source[number + 1] if number + 1 < len(source) else ""
        while at < len(rows) and rows[at] != line:
            at += 1
        below = []
        at += 1
        while at < len(rows) and rows[at] != following and rows[at].strip():
            below.append(rows[at])
            at += 1
        found = {}
        for row in below:
            for match in re.finditer(r"[A-Z][a-z]+", row):
                found.setdefault(match.start(), match.group())
        yield line, found


def main():
    source = open(sys.argv[1], encoding="utf-8").read().split("\n")
    lines = list(names(source, open(sys.argv[2], encoding="utf-8").read()))
    failed = 0
    for start, word, wanted in EXPECTED:
        line, found = next((line, found) for line, found in lines if line.startswith(start))
        column = line.index(word)
        # A unit is coloured with the blank before it.
        last = max((place for place in found if place <= column), default=None)
        seen = found.get(last)
        print(f"  {'ok     ' if seen == wanted else 'FAILED '} {word!r} in {start.strip()!r} is {wanted}{'' if seen == wanted else f', not {seen}'}")
        failed += seen != wanted
    return 1 if failed else 0


sys.exit(main())
