/** A name given to a flight as the page ends is in its row when the page opens again. */
import { expect, test } from "vitest";
import { carryAllLabels, carryLabels, tagChange } from "../../web/labels-on-the-way.ts";
import { addFlights, changeRows, flightRow } from "../../web/store/flights.ts";
import { eachTestInAnEmptyBrowser, file, NO_CHOICES } from "./store/fresh.ts";

/** Its entries are its own keys, as in a browser. */
const words: Record<string, string> & Pick<Storage, "getItem" | "setItem" | "removeItem"> = Object.create({
  getItem(this: Record<string, string>, key: string) {
    return this[key] ?? null;
  },
  setItem(this: Record<string, string>, key: string, value: string) {
    this[key] = value;
  },
  removeItem(this: Record<string, string>, key: string) {
    delete this[key];
  },
});
Object.defineProperty(globalThis, "localStorage", { value: words, configurable: true });

eachTestInAnEmptyBrowser();

const NEW = { files: [file("log.gpx", "<gpx/>")], choices: NO_CHOICES, fingerprint: "f" };
const added = async () => (await addFlights([NEW], null))[0]!.id;

test("a name whose row was not yet written is carried into it at the next opening", async () => {
  const id = await added();
  const writing = carryLabels(id, { pilot: "P" });
  expect(Object.keys(words), "written down before anything else").toHaveLength(1);
  const left = { ...words };
  await writing;
  await changeRows([id], () => ({ pilot: "" })); // as if the page had ended before its row was written
  Object.assign(words, left);
  await carryAllLabels();
  expect((await flightRow(id))!.pilot).toBe("P");
  expect(Object.keys(words)).toEqual([]);
});

test("two given at once both stand, and nothing stays on the way", async () => {
  const id = await added();
  await Promise.all([carryLabels(id, { pilot: "P" }), carryLabels(id, { aircraft: "school aircraft" })]);
  expect(await flightRow(id)).toMatchObject({ pilot: "P", aircraft: "school aircraft", tags: [] });
  expect(Object.keys(words)).toEqual([]);
});

test("tags given in two tabs at once all stand: each tab writes only what came and went", async () => {
  const id = await added();
  await changeRows([id], () => ({ tags: ["night", "lesson 6"] }));
  const shown = ["night", "lesson 6"];
  const one = carryLabels(id, { tags: tagChange(shown, ["night", "lesson 6", "windy"]) });
  const other = carryLabels(id, { tags: tagChange(shown, ["lesson 6", "with B."]) });
  await Promise.all([one, other]);
  expect((await flightRow(id))!.tags.toSorted()).toEqual(["lesson 6", "windy", "with B."]);
  await carryLabels(id, { tags: tagChange(["windy"], []) });
  expect((await flightRow(id))!.tags.toSorted()).toEqual(["lesson 6", "with B."]);
  expect(Object.keys(words)).toEqual([]);
});

test("what an earlier version had on the way is carried too", async () => {
  const id = await added();
  Object.assign(words, { [`hindtrack labels on the way ${id}`]: '{"tags":["night"]}' });
  await carryAllLabels();
  expect((await flightRow(id))!.tags).toEqual(["night"]);
});

test("a flight that is gone takes what was on the way with it", async () => {
  Object.assign(words, { "hindtrack labels on the way gone": '{"pilot":"P"}' });
  await carryAllLabels();
  expect(Object.keys(words)).toEqual([]);
});
