/** Names and tags just given to a flight: written down at once, and gone from here when they stand in its row. */
import { changeRows } from "./store/flights.ts";
import type { Labels } from "./store/schema.ts";

const PREFIX = "hindtrack labels on the way ";

/** The database takes a moment; a page may end within it. Without this storage the database alone must do. */
function put(id: string, labels: Partial<Labels> | null): void {
  try {
    if (labels) localStorage.setItem(PREFIX + id, JSON.stringify(labels));
    else localStorage.removeItem(PREFIX + id);
  } catch {
    // no storage: then nothing was on the way either
  }
}

function onTheWay(id: string): Partial<Labels> | null {
  try {
    return JSON.parse(localStorage.getItem(PREFIX + id) ?? "null") as Partial<Labels> | null;
  } catch {
    return null;
  }
}

/** Writes labels into a row; what is given meanwhile stays on the way for its own turn. @throws StorageTrouble */
export async function carryLabels(id: string, given: Partial<Labels>): Promise<void> {
  const labels = { ...onTheWay(id), ...given };
  put(id, labels);
  await changeRows([id], () => labels);
  if (JSON.stringify(onTheWay(id)) === JSON.stringify(labels)) put(id, null);
}

function idsOnTheWay(): string[] {
  try {
    return Object.keys(localStorage).flatMap((key) =>
      key.startsWith(PREFIX) ? [key.slice(PREFIX.length)] : [],
    );
  } catch {
    return [];
  }
}

/** What was on the way when the page ended. @throws StorageTrouble */
export async function carryAllLabels(): Promise<void> {
  for (const id of idsOnTheWay()) await carryLabels(id, {});
}
