/** Work that only one tab should do at a time. */

/** Runs the work unless another tab is at it: then null. Where the browser has no locks, it just runs. */
export async function alone<T>(name: string, work: () => Promise<T>): Promise<T | null> {
  if (!navigator.locks) return work();
  return navigator.locks.request(`hindtrack ${name}`, { ifAvailable: true }, async (lock) =>
    lock ? work() : null,
  );
}

/** For browsers without locks: one thing after the other in this tab. */
let turn: Promise<unknown> = Promise.resolve();

/** Runs the work once nothing else of this name runs, in whatever tab. */
export function inTurn<T>(name: string, work: () => Promise<T>): Promise<T> {
  if (navigator.locks) return navigator.locks.request(`hindtrack ${name}`, work) as Promise<T>;
  const mine = turn.then(work);
  turn = mine.catch(() => {});
  return mine;
}
