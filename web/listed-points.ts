/** The lists of points that this browser keeps, inside the worker: fixes that a brief only names, and runways that finals lead to. */
import { joinPointLists, type PointList, readPoints, UnusableInput } from "../src/index.ts";
import { placeLists } from "./store/places.ts";
import type { PlaceList } from "./store/schema.ts";
import { StorageTrouble } from "./store/trouble.ts";

const NONE: PointList = { points: [], runways: [] };
/** Lists are read once while they stay as they are: `name saved`. */
let read: { readonly key: string; readonly all: PointList } | null = null;

/** A browser that keeps nothing, or cannot tell, has no lists: the flight is read without them, the logbook says why. */
async function keptLists(): Promise<PlaceList[]> {
  try {
    return await placeLists();
  } catch (error) {
    if (error instanceof StorageTrouble) return [];
    throw error;
  }
}

/** Nothing of a list that cannot be used, which is said where it is added, or whose bytes the browser no longer gives. */
async function pointsIn({ name, bytes }: PlaceList): Promise<PointList> {
  try {
    return await readPoints([new Uint8Array(await bytes.arrayBuffer())], name);
  } catch (error) {
    if (error instanceof UnusableInput || error instanceof DOMException) return NONE;
    throw error;
  }
}

/** All of them as one; none where the browser keeps none. */
export async function listedPoints(): Promise<PointList> {
  const kept = await keptLists();
  const key = kept.map(({ name, saved }) => `${name} ${saved}`).join("\n");
  if (read?.key === key) return read.all;
  const all = joinPointLists(await Promise.all(kept.map(pointsIn)));
  read = { key, all };
  return all;
}
