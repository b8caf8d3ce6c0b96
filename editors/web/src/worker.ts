/** The engine, off the page's own thread, so that typing never waits for it. */

interface Exports {
  memory: WebAssembly.Memory;
  tenter_input(length: number): number;
  tenter_call(): number;
  tenter_output_length(): number;
}

const scope = self as unknown as DedicatedWorkerGlobalScope;
/** What others may use is told again to a fresh engine. */
let stored: string | undefined;
let equip: (program: WebAssembly.Module) => void;
const program = new Promise<WebAssembly.Module>((given) => (equip = given));
let engine = start();

async function start(): Promise<Exports> {
  const { exports } = await WebAssembly.instantiate(await program, {});
  return exports as unknown as Exports;
}

function call(engine: Exports, question: string): string {
  const bytes = new TextEncoder().encode(question);
  const room = engine.tenter_input(bytes.length);
  if (room === 0 && bytes.length > 0) return JSON.stringify({ error: "this text is too long" });
  // The memory may have moved when room was made, and again when the answer was written.
  new Uint8Array(engine.memory.buffer, room, bytes.length).set(bytes);
  const answer = engine.tenter_call();
  return new TextDecoder().decode(new Uint8Array(engine.memory.buffer, answer, engine.tenter_output_length()));
}

async function answered(question: string): Promise<string> {
  try {
    if (question.startsWith('{"ask":"store"')) stored = question;
    return call(await engine, question);
  } catch (error) {
    // A mistake of ours on one text must not end the page: a fresh engine takes the next question.
    engine = start();
    if (stored) call(await engine, stored);
    return JSON.stringify({ error: `the checker broke down on this text (${error instanceof Error ? error.message : String(error)})` });
  }
}

scope.onmessage = async ({ data }: MessageEvent<{ program: WebAssembly.Module } | { id: number; question: string }>) => {
  if ("program" in data) return equip(data.program);
  let answer: string;
  try {
    answer = await answered(data.question);
  } catch (error) {
    answer = JSON.stringify({ error: String(error) });
  }
  scope.postMessage({ id: data.id, answer });
};
scope.postMessage("up");
export {};
