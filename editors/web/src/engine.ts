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
  private waiting = new Map<number, Waiting>();
  private next = 0;
  private files: [string, string][] = [];

  constructor() {
    this.start();
  }

  private start(): void {
    this.worker = new Worker(trustedUrl("worker.js"), { type: "module" });
    this.worker.onmessage = ({ data }: MessageEvent<{ id: number; answer: string }>) => {
      const waiting = this.waiting.get(data.id);
      this.waiting.delete(data.id);
      if (!waiting) return;
      clearTimeout(waiting.timer);
      waiting.settle(data.answer);
    };
    this.worker.onerror = () => this.restart("the checker could not be started");
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
