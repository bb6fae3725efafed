/** Work that only one tab should do at a time. */

/** Runs the work unless another tab is at it: then null. Where the browser has no locks, it just runs. */
export async function alone<T>(name: string, work: () => Promise<T>): Promise<T | null> {
  if (!navigator.locks) return work();
  return navigator.locks.request(`hindtrack ${name}`, { ifAvailable: true }, async (lock) =>
    lock ? work() : null,
  );
}
