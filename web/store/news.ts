/** Tells every tab, this one too, that the logbook has changed. */

export type Changed = "flights" | "arrivals" | "templates" | "places";

const CHANNEL = "hindtrack logbook";
const listeners = new Set<(what: Changed) => void>();
const hear = (what: Changed): void => {
  for (const listener of listeners) listener(what);
};

let channel: BroadcastChannel | null = null;
function others(): BroadcastChannel | null {
  if (channel || typeof BroadcastChannel === "undefined") return channel;
  channel = new BroadcastChannel(CHANNEL);
  channel.onmessage = (event: MessageEvent<Changed>) => hear(event.data);
  return channel;
}

export function changed(what: Changed): void {
  others()?.postMessage(what);
  hear(what);
}

/** Returns what ends the listening. */
export function onChange(listener: (what: Changed) => void): () => void {
  others();
  listeners.add(listener);
  return () => void listeners.delete(listener);
}

/** Lets go of the other tabs, so that a test can end. */
export function closeNews(): void {
  channel?.close();
  channel = null;
}
