/** Opens what lies beside a log: the brief, lists of points, a standard. */
import { readFile } from "node:fs/promises";
import {
  type BriefDraft,
  briefFromRoute,
  type ImportedLog,
  issueSentence,
  joinPointLists,
  type KnownPoints,
  type PointList,
  type Position,
  readBrief,
  readPlaces,
  readPoints,
  readStandard,
  TEST_STANDARDS,
  type TestStandard,
  UnusableInput,
} from "../index.ts";
import { note, UnusableFile } from "./output.ts";

/** One after the other, so that no two logs are held open at once. */
export async function inTurn<T, U>(items: readonly T[], work: (item: T) => Promise<U>): Promise<U[]> {
  const results: U[] = [];
  for (const item of items) results.push(await work(item));
  return results;
}

export async function openBytes(path: string): Promise<Buffer> {
  try {
    return await readFile(path);
  } catch (error) {
    throw new UnusableFile(path, "read", error as NodeJS.ErrnoException);
  }
}

/** A published standard by its name, else a school's own file. */
export async function openStandard(name: string): Promise<TestStandard | "none"> {
  if (name === "none") return name;
  const published = TEST_STANDARDS.find(({ id }) => id === name);
  return published ?? readStandard((await openBytes(name)).toString("utf8"), name);
}

/** A brief of our own, or the first route of a GPX file. */
export async function openBrief(path: string, known: KnownPoints | null): Promise<BriefDraft> {
  const bytes = await openBytes(path);
  const text = bytes.toString("utf8");
  if (!/^\s*</.test(text)) return readBrief(text, path, known);
  const { routes } = await readPlaces([bytes], path);
  const [route, ...others] = routes;
  if (!route) {
    throw new UnusableInput([{ code: "no-route", severity: "error", where: { file: path }, facts: {} }]);
  }
  if (others.length > 0) note(`${path}: its first route, ${route.name || "without a name"}, is the brief`);
  return briefFromRoute(route, path);
}

/** The user's point lists as one; what of them could not be used is said. Null where none is given. */
export async function openPoints(
  paths: readonly string[],
  say: (sentence: string) => void = note,
): Promise<PointList | null> {
  if (paths.length === 0) return null;
  const lists = await inTurn(paths, async (path) => readPoints([await openBytes(path)], path));
  for (const issue of lists.flatMap(({ issues }) => issues))
    if (issue.severity !== "note") say(issueSentence(issue));
  return joinPointLists(lists);
}

/** Of several points of one ident the one nearest to the middle of the log is meant. */
export function nearMiddle({ track }: ImportedLog): Position {
  const middle = track.length >> 1;
  return { latitude: track.latitude[middle]!, longitude: track.longitude[middle]! };
}
