/** Names and tags just given to a flight: written down at once, and gone from here when they stand in its row. */
import { changeRows } from "./store/flights.ts";
import type { Labels } from "./store/schema.ts";

/** What was given: a name in place of another; of the tags only what comes and goes, for another tab may have given some too. */
export interface LabelChange extends Partial<Pick<Labels, "pilot" | "aircraft">> {
  readonly tags?: TagChange;
}
export interface TagChange {
  readonly add: readonly string[];
  readonly drop: readonly string[];
}

/** From the tags that were shown to those that were typed over them. */
export const tagChange = (shown: readonly string[], typed: readonly string[]): TagChange => ({
  add: typed.filter((tag) => !shown.includes(tag)),
  drop: shown.filter((tag) => !typed.includes(tag)),
});

const withTags = (tags: readonly string[], { add, drop }: TagChange): string[] => [
  ...new Set([...tags.filter((tag) => !drop.includes(tag)), ...add]),
];

/** One change after another, as one. */
const oneTagChange = (first: TagChange, second: TagChange): TagChange => ({
  add: withTags(first.add, second),
  drop: withTags(first.drop, { add: second.drop, drop: second.add }),
});

const PREFIX = "hindtrack labels on the way ";

/** The database takes a moment; a page may end within it. Without this storage the database alone must do. */
function put(id: string, labels: LabelChange | null): void {
  try {
    if (labels) localStorage.setItem(PREFIX + id, JSON.stringify(labels));
    else localStorage.removeItem(PREFIX + id);
  } catch {
    // no storage: then nothing was on the way either
  }
}

function onTheWay(id: string): LabelChange | null {
  try {
    const way = JSON.parse(localStorage.getItem(PREFIX + id) ?? "null");
    // an earlier version wrote the tags down as they were to be
    return way && Array.isArray(way.tags) ? { ...way, tags: { add: way.tags, drop: [] } } : way;
  } catch {
    return null;
  }
}

/** Writes labels into a row; what is given meanwhile stays on the way for its own turn. @throws StorageTrouble */
export async function carryLabels(id: string, given: LabelChange): Promise<void> {
  const before = onTheWay(id);
  const tags =
    before?.tags && given.tags ? oneTagChange(before.tags, given.tags) : (given.tags ?? before?.tags);
  const labels: LabelChange = { ...before, ...given, ...(tags ? { tags } : {}) };
  put(id, labels);
  const { tags: change, ...names } = labels;
  await changeRows([id], (row) => (change ? { ...names, tags: withTags(row.tags, change) } : names));
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
