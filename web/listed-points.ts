/** The lists of points that this browser keeps, inside the worker: fixes that a brief only names, and runways that finals lead to. */
import { joinPointLists, type PointList, readPoints } from "../src/index.ts";
import { placeLists } from "./store/places.ts";

const NONE: PointList = { points: [], runways: [] };
/** Lists are read once while they stay as they are: `name saved`. */
let read: { readonly key: string; readonly all: PointList } | null = null;

/** None where the browser keeps none, or cannot tell; what is wrong in a list is said where it is added. */
export async function listedPoints(): Promise<PointList> {
  try {
    const kept = await placeLists();
    const key = kept.map(({ name, saved }) => `${name} ${saved}`).join("\n");
    if (read?.key === key) return read.all;
    const each = kept.map(async ({ name, bytes }) =>
      readPoints([new Uint8Array(await bytes.arrayBuffer())], name).catch(() => NONE),
    );
    const all = joinPointLists(await Promise.all(each));
    read = { key, all };
    return all;
  } catch {
    return NONE;
  }
}
