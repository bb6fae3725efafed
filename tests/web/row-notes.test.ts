/** Remarks live in the row of their flight, each once, wherever its exercise stands after a new working out. */
import { expect, test, vi } from "vitest";
import type { DebriefDocument, InstructorNotes } from "../../src/index.ts";
import type { Debriefed } from "../../web/messages.ts";
import { keptWords, standIn } from "./page-stand-in.ts";
import { documentNamed, eachTestInAnEmptyBrowser, file, NO_CHOICES } from "./store/fresh.ts";

standIn();
const { flight } = await import("../../web/flight.ts");
const { requestOf } = await import("../../web/request.ts");
const { keeperOf, rowKeeper } = await import("../../web/row-notes.ts");
const { show, showAgain } = await import("../../web/show.ts");
const { addFlights, changeRows, documentOf, flightRow, keepDocument } = await import(
  "../../web/store/flights.ts"
);
const { NO_NOTES } = await import("../../web/store/schema.ts");

eachTestInAnEmptyBrowser();

const FILES = [file("log.gpx", "<gpx/>")];
const REQUEST = requestOf(FILES, NO_CHOICES);

/** A flight with exercises of these titles. */
const debriefed = (...titles: string[]): Debriefed => {
  const bare = documentNamed("one");
  const exercises = titles.map((title) => ({ kind: "course", title, verdicts: [] }));
  const document = {
    ...bare,
    log: { ...bare.log, file: "log.gpx", issues: [] },
    exercises,
    overrules: [],
  } as unknown as DebriefDocument;
  return { document, leftOut: [], unread: [] } as unknown as Debriefed;
};
const remark = (exercise: number): InstructorNotes => ({
  remarks: [{ exercise, title: "Hold at TARNO", text: "late" }],
  overrules: [],
});

test("a remark just typed, whose exercise moves before it is carried into the row, stands there once", async () => {
  const [row] = await addFlights([{ files: FILES, choices: NO_CHOICES, fingerprint: "f" }], null);
  const before = debriefed("Hold at TARNO");
  await keepDocument(row!.id, before.document, 1);
  show(before, REQUEST, row!);
  rowKeeper(row!.id, NO_NOTES).keep(before.document, remark(0));
  const after = debriefed("Course 241°M to TARNO", "Hold at TARNO");
  await keepDocument(row!.id, after.document, 1);
  showAgain(after, REQUEST, row!);
  expect(flight.value!.document.remarks).toEqual(remark(1).remarks);
  await new Promise((done) => setTimeout(done, 700)); // longer than the pause before it is carried
  await vi.waitFor(() => expect([...keptWords.keys()]).toEqual([]));
  expect((await flightRow(row!.id))!.notes).toEqual(remark(1));
  expect((await documentOf(row!.id))!.remarks).toEqual(remark(1).remarks);
});

test("a sheet that is left and comes up again shows what was written on it since, here or in another tab", async () => {
  const [row] = await addFlights([{ files: FILES, choices: NO_CHOICES, fingerprint: "f" }], null);
  const { document } = debriefed("Hold at TARNO");
  keeperOf(row!.id, document).keep(document, remark(0));
  expect(keeperOf(row!.id, document).kept(document)).toEqual(remark(0));
  await vi.waitFor(async () => expect((await flightRow(row!.id))!.notes).toEqual(remark(0)));
  // written elsewhere while no sheet follows
  const later = { remarks: [{ exercise: 0, title: "Hold at TARNO", text: "in time" }], overrules: [] };
  await changeRows([row!.id], () => ({ notes: later }));
  const heard: InstructorNotes[] = [];
  const end = keeperOf(row!.id, document).follow!((notes) => heard.push(notes));
  await vi.waitFor(() => expect(heard.at(-1)).toEqual(later));
  expect(keeperOf(row!.id, document).kept(document)).toEqual(later);
  end();
});

test("what was kept by the name of the file goes into the row, once, and out of where it was", async () => {
  const [row] = await addFlights([{ files: FILES, choices: NO_CHOICES, fingerprint: "f" }], null);
  const { document } = debriefed("Course 241°M to TARNO", "Hold at TARNO");
  keptWords.set(`hindtrack notes log.gpx ${document.log.startUtc}`, JSON.stringify(remark(0)));
  show({ ...debriefed(), document }, REQUEST, row!);
  await vi.waitFor(async () => expect((await flightRow(row!.id))!.notes).toEqual(remark(1)));
  await vi.waitFor(() => expect([...keptWords.keys()]).toEqual([]));
  expect((await flightRow(row!.id))!.notes).toEqual(remark(1));
});
