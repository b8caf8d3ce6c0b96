"""Stands between Kate and the server and writes down each message: tap.py LOG COMMAND..."""

import json
import subprocess
import sys
import threading

log = open(sys.argv[1], "a", encoding="utf-8", buffering=1)
server = subprocess.Popen(sys.argv[2:], stdin=subprocess.PIPE, stdout=subprocess.PIPE)


def pass_on(source, sink, who):
    while True:
        head = b""
        while not head.endswith(b"\r\n\r\n"):
            byte = source.read(1)
            if not byte:
                sink.close()
                return
            head += byte
        length = next(int(line.split(b":")[1]) for line in head.split(b"\r\n") if line.lower().startswith(b"content-length"))
        body = source.read(length)
        log.write(json.dumps({"from": who, "message": json.loads(body)}) + "\n")
        sink.write(head + body)
        sink.flush()


threading.Thread(target=pass_on, args=(sys.stdin.buffer, server.stdin, "kate"), daemon=True).start()
pass_on(server.stdout, sys.stdout.buffer, "server")
