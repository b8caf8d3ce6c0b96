"""A small client for the language server: starts it as a child process, speaks frames, keeps what comes unasked."""

import json
import queue
import subprocess
import threading
import time


class Client:
    def __init__(self, command, capabilities=None, folder=None, options=None):
        self.process = subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE
        )
        self.notes = []
        self.arrived = queue.Queue()
        self.number = 0
        self.errors = []
        self.started = time.perf_counter()
        threading.Thread(target=self._read, daemon=True).start()
        threading.Thread(target=self._stderr, daemon=True).start()
        self.initialized = self.request(
            "initialize",
            {
                "processId": None,
                "rootUri": folder,
                "workspaceFolders": [{"uri": folder, "name": "root"}] if folder else None,
                "capabilities": capabilities or {},
                "initializationOptions": options,
            },
        )
        self.start_seconds = time.perf_counter() - self.started
        self.notify("initialized", {})

    def _stderr(self):
        for line in self.process.stderr:
            self.errors.append(line.decode(errors="replace"))

    def _read(self):
        out = self.process.stdout
        while True:
            length = None
            while True:
                line = out.readline()
                if not line:
                    self.arrived.put(None)
                    return
                line = line.strip()
                if not line:
                    break
                name, _, value = line.partition(b":")
                if name.lower() == b"content-length":
                    length = int(value)
            message = json.loads(out.read(length))
            message["_at"] = time.perf_counter()
            if "method" in message and "id" in message:
                self._send({"jsonrpc": "2.0", "id": message["id"], "result": self.answer(message)})
            self.arrived.put(message)

    def answer(self, message):
        if message["method"] == "workspace/configuration":
            return [None for _ in message["params"]["items"]]
        return None

    def _send(self, message):
        body = json.dumps(message).encode()
        self.process.stdin.write(b"Content-Length: %d\r\n\r\n" % len(body) + body)
        self.process.stdin.flush()

    def notify(self, method, params):
        self._send({"jsonrpc": "2.0", "method": method, "params": params})

    def ask(self, method, params):
        self.number += 1
        self._send({"jsonrpc": "2.0", "id": self.number, "method": method, "params": params})
        return self.number

    def wait(self, fits, timeout=30):
        """The first message that fits; others are kept for later."""
        for index, message in enumerate(self.notes):
            if fits(message):
                return self.notes.pop(index)
        end = time.perf_counter() + timeout
        while True:
            message = self.arrived.get(timeout=max(0.001, end - time.perf_counter()))
            if message is None:
                raise EOFError("".join(self.errors))
            if fits(message):
                return message
            self.notes.append(message)

    def request(self, method, params, timeout=30):
        number = self.ask(method, params)
        message = self.wait(lambda it: it.get("id") == number and "method" not in it, timeout)
        if "error" in message:
            raise RuntimeError(f"{method}: {message['error']}")
        return message.get("result")

    def open(self, uri, text, version=1):
        self.notify(
            "textDocument/didOpen",
            {"textDocument": {"uri": uri, "languageId": "dye", "version": version, "text": text}},
        )

    def close(self):
        self.request("shutdown", None)
        self.notify("exit", None)
        return self.process.wait(timeout=10)
