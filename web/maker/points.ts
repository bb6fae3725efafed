/** The points and runways that can be named: of the log on the sheet, and of the lists kept in this browser. */
import { computed, signal } from "@preact/signals";
import {
  issueSentence,
  joinPointLists,
  type KnownPoints,
  type ListedPoint,
  type Position,
  readPoints,
  UnusableInput,
} from "../../src/index.ts";
import { flight } from "../flight.ts";
import { onChange } from "../store/news.ts";
import { dropPlaces, keepPlaces, placeLists } from "../store/places.ts";
import { storageTrouble } from "../store/trouble.ts";

export interface NamedList {
  readonly name: string;
  readonly points: KnownPoints["points"];
  readonly runways: KnownPoints["runways"];
}

/** Lists kept, by name. */
export const lists = signal<readonly NamedList[]>([]);
/** What there is to say of the lists given last. */
export const listWords = signal<readonly string[]>([]);

/** Points that the log itself names. */
export const logPoints = computed<readonly ListedPoint[]>(() => flight.value?.waypoints ?? []);

/** The middle of the flight: of two points of one ident the nearer one is meant. */
export const middleOfFlight = computed<Position | null>(() => {
  const path = flight.value?.series.path;
  if (!path || path.latitude.length === 0) return null;
  const middle = path.latitude.length >> 1;
  return { latitude: path.latitude[middle]!, longitude: path.longitude[middle]! };
});

export const known = computed<KnownPoints>(() => ({
  ...joinPointLists([{ points: logPoints.value, runways: [] }, ...lists.value]),
  near: middleOfFlight.value,
}));

/** Where a point is known from, for the reader. */
export function sourceOfPoint(point: ListedPoint): string {
  if (logPoints.value.includes(point)) return "the log";
  return lists.value.find(({ points }) => points.includes(point))?.name ?? "a list";
}

async function readList(name: string, bytes: Uint8Array): Promise<{ list: NamedList; said: string[] }> {
  const { points, runways, issues } = await readPoints([bytes], name);
  const said = issues
    .filter(({ severity }) => severity !== "note")
    .map((issue) => issueSentence(wordable(issue)));
  return { list: { name, points, runways }, said };
}

const wordable = ({ facts, where, ...issue }: UnusableInput["issues"][number]) => ({
  ...issue,
  where: { ...where },
  facts: { ...facts },
});

let started = false;
/** Reads the lists kept, once, and again whenever one changes in any tab. */
export function startLists(): void {
  if (started) return;
  started = true;
  onChange((what) => {
    if (what === "places") void load();
  });
  void load();
}

async function load(): Promise<void> {
  try {
    const kept = await placeLists();
    const read: NamedList[] = [];
    for (const { name, bytes } of kept) {
      try {
        read.push((await readList(name, new Uint8Array(await bytes.arrayBuffer()))).list);
      } catch (error) {
        if (!(error instanceof UnusableInput)) throw error;
      }
    }
    lists.value = read;
  } catch (error) {
    listWords.value = [storageTrouble(error).message];
  }
}

/** Reads lists and keeps them; what of them cannot be used is said, and the lists before stay. */
export async function addLists(files: readonly File[]): Promise<void> {
  const words: string[] = [];
  for (const file of files) {
    try {
      const { list, said } = await readList(file.name, new Uint8Array(await file.arrayBuffer()));
      lists.value = [...lists.value.filter(({ name }) => name !== list.name), list];
      words.push(`${list.name}: ${counted(list)}, kept in this browser.`, ...said);
      await keepPlaces(file.name, file);
    } catch (error) {
      if (error instanceof UnusableInput)
        words.push(...error.issues.map((issue) => issueSentence(wordable(issue))));
      else words.push(storageTrouble(error).message);
    }
  }
  listWords.value = words;
}

export function counted({ points, runways }: NamedList): string {
  const some = (n: number, word: string) => `${n.toLocaleString("en")} ${word}${n === 1 ? "" : "s"}`;
  return runways.length > 0
    ? `${some(points.length, "point")}, ${some(runways.length, "landing direction")}`
    : some(points.length, "point");
}

export async function removeList(name: string): Promise<void> {
  lists.value = lists.value.filter((list) => list.name !== name);
  try {
    await dropPlaces(name);
  } catch (error) {
    listWords.value = [storageTrouble(error).message];
  }
}
