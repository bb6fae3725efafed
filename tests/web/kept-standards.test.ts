/** Which standard a flight is held against: chosen, given, named by the brief, the usual one, in this order. */
import { expect, test } from "vitest";
import { readBrief, readStandard, TEST_STANDARDS } from "../../src/index.ts";
import { readArchive } from "../../web/archive/read.ts";
import { writeArchive } from "../../web/archive/write.ts";
import { type KeptStandard, standardFor } from "../../web/kept-standards.ts";
import { dropStandard, keepStandard, keptStandards, makeUsual } from "../../web/store/standards.ts";
import { keepTemplate, templates } from "../../web/store/templates.ts";
import { eachTestInAnEmptyBrowser } from "./store/fresh.ts";

eachTestInAnEmptyBrowser();

const SCHOOL = (id: string) => `standard: 1\nid: ${id}\ntitle: School ${id}\ncitation: Order 7\n`;
const school = (id: string) => readStandard(SCHOOL(id), `${id}.yaml`);
const kept = (id: string, usual = false): KeptStandard => ({ standard: school(id), usual });
const brief = (standard = "") =>
  readBrief(
    `brief: 1\n${standard && `standard: ${standard}\n`}fixes: { TARNO: { lat: 35.6, lon: 172.3 } }\nexercises: [{ course: 241, to: TARNO }]\n`,
    "brief.yaml",
  );
const EU = TEST_STANDARDS.find(({ id }) => id === "instrument-rating-eu")!;
const idOf = (found: ReturnType<typeof standardFor>) => (typeof found === "string" ? found : found?.id);

test.each([
  ["nothing where nobody says anything", null, null, brief(), [kept("a")], undefined],
  ["the usual one where the brief names none", null, null, brief(), [kept("a"), kept("b", true)], "b"],
  ["none of the kept ones without a brief", null, null, null, [kept("b", true)], undefined],
  [
    "a kept one that the brief names, before the usual one",
    null,
    null,
    brief("a"),
    [kept("a"), kept("b", true)],
    "a",
  ],
  [
    "a published one that the brief names, before the usual one",
    null,
    null,
    brief(EU.id),
    [kept("b", true)],
    EU.id,
  ],
  [
    "nothing for a name that nobody has, not the usual one",
    null,
    null,
    brief("c"),
    [kept("b", true)],
    undefined,
  ],
  [
    "the one given with the flight, before the brief's",
    null,
    school("g"),
    brief(EU.id),
    [kept("b", true)],
    "g",
  ],
  ["a kept one that was chosen, before the one given", "a", school("g"), brief(EU.id), [kept("a")], "a"],
  ["a published one that was chosen", EU.id, school("g"), brief(), [kept("b", true)], EU.id],
  ["nothing, where that was chosen", "none", school("g"), brief(EU.id), [kept("b", true)], "none"],
])("%s", (_, chosen, given, draft, all, id) => {
  expect(idOf(standardFor({ chosen, given, brief: draft }, all))).toBe(id);
});

test("a saved logbook carries the standards kept", async () => {
  await keepStandard("a", SCHOOL("a"));
  const saved = await writeArchive("2026-10-17T00:00:00Z");
  await dropStandard("a");
  expect(await keptStandards()).toEqual([]);
  await readArchive(new Uint8Array(await saved.arrayBuffer()), "logbook.zip");
  expect((await keptStandards()).map(({ yaml }) => yaml)).toEqual([SCHOOL("a")]);
});

test("a saved logbook carries which standard is usual, for a browser where none is", async () => {
  await keepStandard("a", SCHOOL("a"));
  await makeUsual("a");
  const saved = new Uint8Array(await (await writeArchive("2026-10-17T00:00:00Z")).arrayBuffer());
  const usual = async () => (await keptStandards()).filter((one) => one.usual).map(({ yaml }) => yaml);
  await dropStandard("a");
  await readArchive(saved, "logbook.zip");
  expect(await usual()).toEqual([SCHOOL("a")]);
  await dropStandard("a");
  await keepStandard("b", SCHOOL("b"));
  await makeUsual("b");
  await readArchive(saved, "logbook.zip");
  expect(await usual()).toEqual([SCHOOL("b")]);
});

test("kept standards are no briefs to fly again; one of them is usual, also after it is given anew", async () => {
  await keepTemplate("Radials", "brief: 1\nfixes: {}\nexercises: []\n");
  await keepStandard("a", SCHOOL("a"));
  await keepStandard("b", SCHOOL("b"));
  expect((await templates()).map(({ name }) => name)).toEqual(["Radials"]);
  const usual = async () => (await keptStandards()).map(({ usual }) => usual ?? false);
  await makeUsual("a");
  expect(await usual()).toEqual([true, false]);
  await makeUsual("b");
  await keepStandard("b", SCHOOL("b").replace("Order 7", "Order 8"));
  expect(await usual()).toEqual([false, true]);
  await makeUsual(null);
  expect(await usual()).toEqual([false, false]);
  await dropStandard("a");
  expect((await keptStandards()).map(({ yaml }) => yaml)).toEqual([
    SCHOOL("b").replace("Order 7", "Order 8"),
  ]);
});
