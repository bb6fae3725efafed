/** As much of a browser as the page's own state asks for: an address, a store of words, and a worker that answers when the test says so. */
import type { OpenRequest, WorkerMessage } from "../../web/messages.ts";

const kept = new Map<string, string>();
const words = {
  getItem: (key: string) => kept.get(key) ?? null,
  setItem: (key: string, value: string) => void kept.set(key, value),
  removeItem: (key: string) => void kept.delete(key),
};

/** What the page asked of its workers and has no answer to yet, in order. */
export const asked: { readonly request: OpenRequest; readonly answer: (message: WorkerMessage) => void }[] =
  [];

class WaitingWorker {
  onmessage: ((event: { data: WorkerMessage }) => void) | null = null;
  onerror = null;
  postMessage(request: OpenRequest): void {
    asked.push({ request, answer: (data) => this.onmessage?.({ data }) });
  }
  terminate(): void {
    this.onmessage = null;
  }
}

/** Before anything of the page is imported. */
export function standIn(): void {
  const page = {
    location: { hash: "", href: "http://localhost/" },
    history: { state: null, replaceState: () => {} },
    addEventListener: () => {},
    scrollTo: () => {},
    requestAnimationFrame: () => 0,
    document: { querySelector: () => null, getElementById: () => null },
    localStorage: words,
    navigator: {},
    Worker: WaitingWorker,
  };
  for (const [name, value] of Object.entries(page))
    Object.defineProperty(globalThis, name, { value, configurable: true, writable: true });
}

export const keptWords = kept;

/** The next thing asked, taken out of the waiting ones. */
export async function nextAsked(): Promise<(typeof asked)[number]> {
  for (let i = 0; i < 400 && asked.length === 0; i++) await new Promise((done) => setTimeout(done, 10));
  const next = asked.shift();
  if (!next) throw new Error("the page asked nothing of its worker");
  return next;
}
