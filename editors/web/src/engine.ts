/** Asks the engine in its worker. */

import type { Questions } from "./answers";
import { trustedUrl } from "./trusted";

/** Said when an answer could not be had. */
export class Trouble extends Error {}

/** An answer that takes longer than this will not come. */
const PATIENCE = 20_000;

interface Waiting {
  settle(answer: string): void;
  fail(error: Error): void;
  timer: ReturnType<typeof setTimeout>;
}

export class Engine {
  private worker!: Worker;
  /** Fetched and compiled once, on the page's side: this begins before the worker is up, and a fresh worker gets the same. */
  private program: Promise<WebAssembly.Module> | undefined;
  /** Whether the worker that is up has the program. */
  private equipped = false;
  private isUp!: () => void;
  /** Settled when the first worker runs, or cannot. */
  private readonly up = new Promise<void>((up) => (this.isUp = up));
  private waiting = new Map<number, Waiting>();
  private next = 0;
  private files: [string, string][] = [];

  constructor() {
    this.start();
    this.fetched().catch(() => undefined);
  }

  /** Settled when the engine works on its own, or cannot: what keeps the page busy no longer keeps the engine waiting. */
  async underWay(): Promise<void> {
    await Promise.all([this.up, this.equip().catch(() => undefined)]);
  }

  /** The program. What failed is tried again with the next question. */
  private fetched(): Promise<WebAssembly.Module> {
    this.program ??= compiled().catch((error: unknown) => {
      this.program = undefined;
      throw new Trouble(error instanceof Error ? error.message : String(error));
    });
    return this.program;
  }

  /** Gives the worker the program, unless it has it. */
  private async equip(): Promise<void> {
    const program = await this.fetched();
    if (this.equipped) return;
    this.equipped = true;
    this.worker.postMessage({ program });
  }

  private start(): void {
    this.worker = new Worker(trustedUrl("worker.js"));
    this.equipped = false;
    this.worker.onmessage = ({ data }: MessageEvent<"up" | { id: number; answer: string }>) => {
      if (data === "up") return this.isUp();
      const waiting = this.waiting.get(data.id);
      this.waiting.delete(data.id);
      if (!waiting) return;
      clearTimeout(waiting.timer);
      waiting.settle(data.answer);
    };
    this.worker.onerror = () => {
      this.isUp();
      this.restart("the checker could not be started");
    };
    if (this.files.length > 0) void this.ask("store", { files: this.files });
  }

  private restart(why: string): void {
    this.worker.terminate();
    const waiting = [...this.waiting.values()];
    this.waiting.clear();
    for (const one of waiting) {
      clearTimeout(one.timer);
      one.fail(new Trouble(why));
    }
    this.start();
  }

  /** Texts that a recipe may take names from. */
  async store(files: [string, string][]): Promise<void> {
    this.files = files;
    await this.ask("store", { files });
  }

  /** Asks one question. */
  async ask<K extends keyof Questions>(ask: K, question: Questions[K][0]): Promise<Questions[K][1]> {
    await this.equip();
    const id = this.next++;
    const text = await new Promise<string>((settle, fail) => {
      const timer = setTimeout(() => this.restart("the checker did not come to an end on this text"), PATIENCE);
      this.waiting.set(id, { settle, fail, timer });
      this.worker.postMessage({ id, question: JSON.stringify({ ask, ...question }) });
    });
    const answer = JSON.parse(text) as Questions[K][1] | { error: string };
    if (answer !== null && typeof answer === "object" && "error" in answer) throw new Trouble(answer.error);
    return answer as Questions[K][1];
  }
}

async function compiled(): Promise<WebAssembly.Module> {
  const response = await fetch("engine.wasm");
  if (!response.ok) throw new Error(`the engine could not be fetched: ${response.status}`);
  // Compiled while it comes in, where the server says what it is.
  if (response.headers.get("content-type") === "application/wasm") return WebAssembly.compileStreaming(response);
  return WebAssembly.compile(await response.arrayBuffer());
}
