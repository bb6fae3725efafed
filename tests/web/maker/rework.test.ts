/** What is typed in the maker goes into the flight that the maker was opened on, all of it, and into no other. */
import { beforeEach, expect, test, vi } from "vitest";
import { readBrief } from "../../../src/index.ts";
import type { Debriefed } from "../../../web/messages.ts";
import { asked, keptWords, nextAsked, standIn } from "../page-stand-in.ts";
import { documentNamed, eachTestInAnEmptyBrowser, file, NO_CHOICES } from "../store/fresh.ts";

standIn();
const { flight, notices } = await import("../../../web/flight.ts");
const { requestOf } = await import("../../../web/request.ts");
const { addFlights, sourceOf } = await import("../../../web/store/flights.ts");
const { change, history } = await import("../../../web/maker/making.ts");
const { resultOf } = await import("../../../web/maker/outcome.tsx");
const { notWorkedOut } = await import("../../../web/maker/rework.ts");
const { keepMaking, madeInto } = await import("../../../web/maker/kept-making.ts");
const { closeMaker, openMaker, takeUpKept } = await import("../../../web/maker/opened.ts");

eachTestInAnEmptyBrowser();
beforeEach(() => {
  history.value = null;
  flight.value = null;
  asked.length = 0;
  keptWords.clear();
});

const BRIEF = (course: number) =>
  `brief: 1\nfixes: { TARNO: { lat: 35.6, lon: 172.3 } }\nexercises:\n  - { course: ${course}, to: TARNO }\n`;

/** As much of a flight worked out as the page's state looks at. */
const debriefed = (name: string, text: string | null): Debriefed => {
  const bare = documentNamed(name);
  return {
    document: { ...bare, log: { ...bare.log, file: `${name}.gpx` }, exercises: [], overrules: [] },
    series: { path: null },
    routes: [],
    waypoints: [],
    briefText: text === null ? null : { file: "brief.yaml", text },
    school: null,
    standards: [],
    leftOut: [],
    unread: [],
  } as unknown as Debriefed;
};

/** A flight of the logbook, on the sheet. */
async function onSheet(name: string, course: number, opened: number) {
  const files = [file(`${name}.gpx`, `<gpx>${name}</gpx>`), file("brief.yaml", BRIEF(course))];
  const [row] = await addFlights([{ files, choices: NO_CHOICES, fingerprint: name }], null);
  return {
    ...debriefed(name, BRIEF(course)),
    id: row!.id,
    opened,
    request: requestOf(files, NO_CHOICES),
  };
}

async function courseOf(id: string): Promise<number | undefined> {
  const { files } = (await sourceOf(id))!;
  const text = await files.find(({ name }) => name === "brief.yaml")!.bytes.text();
  const [exercise] = readBrief(text, "brief.yaml").exercises;
  return exercise?.kind === "course" ? exercise.course?.degrees : undefined;
}

test("another flight comes onto the sheet while something was just typed: its own brief stays, the other gets what was typed", async () => {
  const one = await onSheet("one", 241, 1);
  const other = await onSheet("other", 90, 2);
  flight.value = one;
  openMaker();
  change(["exercises", 0, "course"], "250");
  flight.value = other;
  const { request, answer } = await nextAsked();
  expect(request.files.map(({ name }) => name)).toEqual(["one.gpx", "brief.yaml"]);
  answer({ kind: "done", flight: debriefed("one", BRIEF(250)) });
  await vi.waitFor(async () => expect(await courseOf(one.id)).toBe(250));
  expect(await courseOf(other.id)).toBe(90);
  expect(flight.value).toBe(other);
});

test("another flight comes onto the sheet in the middle of the work: it stays as it is", async () => {
  const one = await onSheet("one", 241, 1);
  const other = await onSheet("other", 90, 2);
  flight.value = one;
  openMaker();
  change(["exercises", 0, "course"], "250");
  const { answer } = await nextAsked();
  flight.value = other;
  answer({ kind: "done", flight: debriefed("one", BRIEF(250)) });
  await vi.waitFor(async () => expect(await courseOf(one.id)).toBe(250));
  expect(await courseOf(other.id)).toBe(90);
  expect(flight.value).toBe(other);
  expect(asked).toEqual([]);
});

test("Done in the middle of the work: what was typed last is worked out and kept, and stands by until then", async () => {
  const one = await onSheet("one", 241, 1);
  flight.value = one;
  openMaker();
  change(["exercises", 0, "course"], "250");
  const first = await nextAsked();
  change(["exercises", 0, "course"], "260");
  const closed = closeMaker();
  expect(JSON.stringify([...keptWords.values()])).toContain("260");
  first.answer({ kind: "done", flight: debriefed("one", BRIEF(250)) });
  const second = await nextAsked();
  second.answer({ kind: "done", flight: debriefed("one", BRIEF(260)) });
  await closed;
  expect(await courseOf(one.id)).toBe(260);
  expect(flight.value?.briefText?.text).toBe(BRIEF(260));
  expect(keptWords.size).toBe(0);
});

test("what could not be worked out after Done is there again when the maker is opened", async () => {
  flight.value = await onSheet("one", 241, 1);
  openMaker();
  change(["exercises", 0, "course"], "250");
  const closed = closeMaker();
  (await nextAsked()).answer({ kind: "fault", text: "out of memory" });
  await closed;
  openMaker();
  expect(history.value?.now.exercises).toEqual([{ course: "250", to: "TARNO" }]);
});

test("a brief that cannot be worked out shows that and why, and no result of the brief before; the next one that can shows its own", async () => {
  const one = await onSheet("one", 241, 1);
  const result = { source: "brief", title: "Course 241°M to TARNO", verdicts: [] };
  const standing = { ...one, document: { ...one.document, exercises: [result] } };
  flight.value = standing as unknown as typeof one;
  openMaker();
  expect(resultOf(0)).toBe(result);
  change(["exercises", 0, "altitude_ft"], "3000");
  (await nextAsked()).answer({ kind: "fault", text: "invalid needle: NaN" });
  await vi.waitFor(() =>
    expect(notWorkedOut.value.join()).toMatch(/failed on these files: invalid needle: NaN/),
  );
  expect(notices.value.at(-1)).toMatch(/still that of the brief before/);
  expect(resultOf(0)).toBeNull();
  change(["exercises", 0, "altitude_ft"], "2000");
  (await nextAsked()).answer({ kind: "done", flight: debriefed("one", BRIEF(241)) });
  await vi.waitFor(() => expect(notWorkedOut.value).toEqual([]));
  expect(notices.value).toEqual([]);
});

/** As much as a letter typed before a reload leaves behind. */
const typed = (course: string) => ({
  brief: 1,
  fixes: { TARNO: { lat: 35.6, lon: 172.3 } },
  exercises: [{ course, to: "TARNO" }],
});

test("a reload before the work began: what was typed last is worked out, and once", async () => {
  const one = await onSheet("one", 241, 1);
  keepMaking(one, typed("250"));
  flight.value = one;
  const taken = takeUpKept(one);
  const { request, answer } = await nextAsked();
  const text = await request.files.find(({ name }) => name === "brief.yaml")!.text();
  answer({ kind: "done", flight: debriefed("one", text) });
  await taken;
  expect(await courseOf(one.id)).toBe(250);
  expect(flight.value?.briefText?.text).toBe(text);
  await takeUpKept(flight.value!);
  expect(asked).toEqual([]);
});

test("a reload when the brief of the letter before had been kept: the last letter is worked out over it", async () => {
  const one = await onSheet("one", 241, 1);
  keepMaking(one, typed("25"));
  madeInto(one, BRIEF(25));
  keepMaking(one, typed("250"));
  flight.value = { ...one, briefText: { file: "brief.yaml", text: BRIEF(25) } };
  const taken = takeUpKept(flight.value);
  (await nextAsked()).answer({ kind: "done", flight: debriefed("one", BRIEF(250)) });
  await taken;
  expect(await courseOf(one.id)).toBe(250);
});

test("a brief given since then is not replaced by what was typed before it", async () => {
  const one = await onSheet("one", 241, 1);
  keepMaking(one, typed("250"));
  flight.value = { ...one, briefText: { file: "given.yaml", text: BRIEF(90) } };
  await takeUpKept(flight.value);
  expect(asked).toEqual([]);
  openMaker();
  expect(history.value?.now.exercises).toEqual([{ course: 90, to: "TARNO" }]);
});
