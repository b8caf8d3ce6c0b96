"""What Kate and the server said to each other: heard.py LOG. Ends with 0 if a finding was told and a name completed."""

import json
import sys

said = [json.loads(line) for line in open(sys.argv[1], encoding="utf-8")]
asked = {one["message"]["id"]: one["message"]["method"] for one in said if one["from"] == "kate" and "method" in one["message"] and "id" in one["message"]}
opened = [one["message"]["params"]["textDocument"] for one in said if one["message"].get("method") == "textDocument/didOpen"]
findings, labels = [], []
for one in said:
    message = one["message"]
    if one["from"] != "server":
        continue
    if message.get("method") == "textDocument/publishDiagnostics":
        findings += [found.get("code") for found in message["params"]["diagnostics"]]
    if asked.get(message.get("id")) == "textDocument/completion" and message.get("result"):
        result = message["result"]
        labels += [item["label"] for item in (result["items"] if isinstance(result, dict) else result)]
checks = [
    ("Kate opens the file as `dye`", bool(opened) and opened[0]["languageId"] == "dye", opened),
    ("the misspelt verb is told", "unknown-verb" in findings, findings),
    ("`soda s` completes to `soda soak`", "soda soak" in labels, labels),
]
for what, holds, seen in checks:
    print(f"  {'ok     ' if holds else 'FAILED '} {what}{'' if holds else f': {seen}'}")
sys.exit(0 if all(holds for _, holds, _ in checks) else 1)
