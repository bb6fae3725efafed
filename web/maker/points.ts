/** The points and runways that can be named: of the log on the sheet, and of the lists kept in this browser. */
import { computed, signal } from "@preact/signals";
import {
  type Issue,
  issueSentence,
  joinPointLists,
  type KnownPoints,
  type ListedPoint,
  POINT_KINDS,
  type Position,
  pointsNamed,
} from "../../src/index.ts";
import { newAnalyst } from "../analyst.ts";
import { flight } from "../flight.ts";
import { failureWords } from "../outcome-words.ts";
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
const logPoints = computed<readonly ListedPoint[]>(() => flight.value?.waypoints ?? []);

/** The middle of the flight: of two points of one ident the nearer one is meant. */
export const middleOfFlight = computed<Position | null>(() => {
  const path = flight.value?.series.path;
  if (!path || path.latitude.length === 0) return null;
  const middle = path.latitude.length >> 1;
  return { latitude: path.latitude[middle]!, longitude: path.longitude[middle]! };
});

const isStation = ({ kind }: ListedPoint): boolean => kind === "vor" || kind === "ndb" || kind === "dme";
const key = ({ ident }: ListedPoint): string => ident.trim().toUpperCase();

/** Where a list has a station and the log a bare point of that ident, the station is said first: it knows more. */
const stationsOfLog = computed<readonly ListedPoint[]>(() => {
  const idents = new Set(logPoints.value.map(key));
  return lists.value.flatMap(({ points }) => points.filter((p) => isStation(p) && idents.has(key(p))));
});

/** What an ident alone means: one point an ident and place. */
export const known = computed<KnownPoints>(() => ({
  ...joinPointLists([
    { points: stationsOfLog.value, runways: [] },
    { points: logPoints.value, runways: [] },
    ...lists.value,
  ]),
  near: middleOfFlight.value,
}));

/** What can be chosen: of one ident and place, each kind that the log or a list says it is; stations first. */
export const choosable = computed<KnownPoints>(() => {
  const all = [...logPoints.value, ...lists.value.flatMap(({ points }) => points)];
  const ofKind = (kind: ListedPoint["kind"]) =>
    joinPointLists([{ points: all.filter((point) => point.kind === kind), runways: [] }]).points;
  return { points: POINT_KINDS.flatMap(ofKind), runways: [], near: middleOfFlight.value };
});

/** Which point an ident alone means, where there are several; null where there is nothing to tell apart. */
export function meantBy(ident: string): string | null {
  const named = pointsNamed(choosable.value, ident);
  const [first] = pointsNamed(known.value, ident);
  if (named.length < 2 || !first) return null;
  return `${KIND_WORDS[first.kind]} of ${sourceOfPoint(first)}; another is found under Points`;
}

/** Where a point is known from, for the reader. */
export function sourceOfPoint(point: ListedPoint): string {
  if (logPoints.value.includes(point)) return "the log";
  return lists.value.find(({ points }) => points.includes(point))?.name ?? "a list";
}

/** What a point is called by its kind. */
export const KIND_WORDS: Readonly<Record<ListedPoint["kind"], string>> = {
  waypoint: "waypoint",
  vor: "VOR",
  ndb: "NDB",
  dme: "DME",
  runway: "runway",
  other: "point",
};

const analyst = newAnalyst();
/** One after the other: a worker has one thing in hand. */
let turn: Promise<unknown> = Promise.resolve();

/** What a file holds as a list, and what there is to say of it; no list where it is none. */
function readList(file: File): Promise<{ list: NamedList | null; said: string[] }> {
  const read = turn.then(async () => {
    const outcome = await analyst.readList({ list: file });
    if (outcome.kind === "unusable" || outcome.kind === "fault")
      return { list: null, said: failureWords(outcome) };
    if (outcome.kind !== "list") return { list: null, said: [] };
    const { points, runways, issues } = outcome;
    const said = issues
      .filter(({ severity }) => severity !== "note")
      .map((issue) => issueSentence(wordable(issue)));
    return { list: { name: file.name, points, runways }, said };
  });
  turn = read.catch(() => {});
  return read;
}

const wordable = ({ facts, where, ...issue }: Issue) => ({
  ...issue,
  where: { ...where },
  facts: { ...facts },
});

let started: Promise<void> | null = null;
/** Reads the lists kept, once, and again whenever one changes in any tab; done when they were read first. */
export function startLists(): Promise<void> {
  if (started) return started;
  onChange((what) => {
    if (what === "places") void load();
  });
  started = load();
  return started;
}

async function load(): Promise<void> {
  try {
    const kept = await placeLists();
    const read = await Promise.all(kept.map(({ name, bytes }) => readList(new File([bytes], name))));
    lists.value = read.flatMap(({ list }) => list ?? []);
  } catch (error) {
    listWords.value = [storageTrouble(error).message];
  }
}

/** Reads lists and keeps them; what of them cannot be used is said, and the lists before stay. */
export async function addLists(files: readonly File[]): Promise<readonly string[]> {
  const words: string[] = [];
  for (const file of files) {
    const { list, said } = await readList(file);
    words.push(...said);
    if (!list) continue;
    lists.value = [...lists.value.filter(({ name }) => name !== list.name), list];
    try {
      await keepPlaces(file.name, file);
      words.push(`${list.name}: ${counted(list)}, kept in this browser.`);
    } catch (error) {
      words.push(storageTrouble(error).message);
    }
  }
  listWords.value = words;
  return words;
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
