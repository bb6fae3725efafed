/** The flights of a folder, each on a core that is free, their results in the order of the flights. */
import type { FlightTask } from "./documents-of.ts";
import type { FlightResult } from "./habits-worker.ts";

/** Flights given out ahead for each core: enough that none waits, few enough that results do not pile up. Chosen. */
const AHEAD = 4;

/** Runs the tasks on their cores and hands the results over in the order of the tasks. */
export async function inOrder(
  tasks: readonly FlightTask[],
  cores: number,
  take: (result: FlightResult, task: FlightTask) => Promise<void>,
): Promise<void> {
  const { Tinypool } = await import("tinypool");
  const threads = Math.max(1, Math.min(cores, tasks.length));
  const pool = new Tinypool({
    filename: new URL("./habits-worker.js", import.meta.url).href,
    minThreads: threads,
    maxThreads: threads,
  });
  const lost = (error: unknown): FlightResult => ({
    done: false,
    why: [`the work on it broke off: ${error instanceof Error ? error.message : error}`],
  });
  const waiting: { readonly task: FlightTask; readonly result: Promise<FlightResult> }[] = [];
  const next = async () => {
    const { task, result } = waiting.shift()!;
    await take(await result, task);
  };
  try {
    for (const task of tasks) {
      waiting.push({ task, result: pool.run(task).catch(lost) });
      if (waiting.length >= AHEAD * threads) await next();
    }
    while (waiting.length > 0) await next();
  } finally {
    await pool.destroy();
  }
}
