/** Files given together: which are of one flight, and which brief is whose. The flights are drawn by hand, no source. */
import { expect, test } from "vitest";
import { leftOutWords, whenCancelled } from "../../web/outcome-words.ts";
import {
  briefsOfFlights,
  type LogTrace,
  leftOutBriefs,
  type Spot,
  sortIntoFlights,
} from "../../web/several.ts";

const START = Date.UTC(2026, 9, 17, 1);

/** Straight north at 100 kt from a place, a point a minute. */
function flown(fromMin: number, minutes: number, latitude = 35.6, longitude = 172.3): LogTrace {
  const startMs = START + fromMin * 60_000;
  const spots = Array.from({ length: minutes + 1 }, (_, i): [number, Spot] => [
    startMs / 60_000 + i,
    [latitude + (i * 100) / 3600, longitude],
  ]);
  return {
    startMs,
    endMs: startMs + minutes * 60_000,
    first: spots[0]![1],
    last: spots.at(-1)![1],
    minutes: new Map(spots),
  };
}

test("two recorders of one aircraft are one flight, whatever their order", () => {
  const [one, other] = [flown(0, 40), flown(5, 30, 35.6 + 500 / 3600)];
  expect(sortIntoFlights([one, other])).toEqual([[0, 1]]);
  expect(sortIntoFlights([other, one])).toEqual([[0, 1]]);
});

test("two aircraft in the air at the same time are two, on the same course a mile apart too", () => {
  expect(sortIntoFlights([flown(0, 40), flown(0, 40, 35.6, 172.321)])).toEqual([[0], [1]]);
});

test("a receiver that is wrong for a minute parts nothing", () => {
  const other = flown(0, 40);
  const wrong = new Map(other.minutes).set(START / 60_000 + 7, [36.6, 172.3]);
  expect(sortIntoFlights([flown(0, 40), { ...other, minutes: wrong }])).toEqual([[0, 1]]);
});

test("a file that goes on where the last one ended is of the same flight; after a turnround it is another", () => {
  const first = flown(0, 20);
  const next = flown(21, 20, first.last[0]);
  expect(sortIntoFlights([next, first])).toEqual([[0, 1]]);
  expect(sortIntoFlights([first, flown(35, 20, first.last[0])])).toEqual([[0], [1]]);
  expect(sortIntoFlights([first, flown(21, 20, first.last[0] + 1)])).toEqual([[0], [1]]);
});

test("across the antimeridian the way is short", () => {
  const west = flown(0, 20, 35.6, 179.999);
  expect(sortIntoFlights([west, flown(0, 20, 35.6, -179.999)])).toEqual([[0, 1]]);
});

test("logs without times stand alone", () => {
  expect(sortIntoFlights([null, flown(0, 10), null])).toEqual([[0], [1], [2]]);
});

test("a brief goes with the log of its own name, in whatever case", () => {
  expect(briefsOfFlights([["A.gpx"], ["b.igc", "b2.gpx"]], ["b.yaml", "a.yml"])).toEqual({
    briefs: [1, 0],
    unused: [],
  });
});

test("one brief of no log's name goes with every flight that has none; of two, neither does", () => {
  expect(briefsOfFlights([["a.gpx"], ["b.gpx"], ["c.gpx"]], ["b.yaml", "lesson.yaml"])).toEqual({
    briefs: [1, 0, 1],
    unused: [],
  });
  expect(briefsOfFlights([["a.gpx"], ["b.gpx"]], ["one.yaml", "two.yaml"])).toEqual({
    briefs: [null, null],
    unused: [0, 1],
  });
});

test("a brief whose log is one flight with another names the log, the other and the brief that was taken", () => {
  const flights = [["a.gpx"], ["gap_faf.gpx", "ft.gpx"]];
  const left = leftOutBriefs(flights, ["gap_faf.yaml", "ft.yaml", "one.yaml", "two.yaml"]);
  expect(left).toEqual([
    { name: "ft.yaml", joined: { log: "ft.gpx", others: ["gap_faf.gpx"], brief: "gap_faf.yaml" } },
    { name: "one.yaml", joined: null },
    { name: "two.yaml", joined: null },
  ]);
  expect(leftOutWords(left)).toEqual([
    "Left out: ft.yaml. Its log ft.gpx is of one flight with gap_faf.gpx, which is held against gap_faf.yaml.",
    "Left out: one.yaml, two.yaml. A brief goes with the log of its own name.",
  ]);
  expect(leftOutWords([])).toEqual([]);
  // nor does it go to the flight that has none
  expect(briefsOfFlights(flights, ["gap_faf.yaml", "ft.yaml"])).toEqual({ briefs: [null, 0], unused: [1] });
});

test("cancelled: what was finished counts, what was not goes, and what is gone was not added", () => {
  const row = (id: string, analysis: number | null) => ({ id, analysis });
  expect(whenCancelled([row("a", 3), row("b", null), null])).toEqual({
    unfinished: ["b"],
    words: "Cancelled: 1 of 3 flights added to the logbook.",
  });
});
