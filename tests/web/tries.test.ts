/** Files whose reading ends the page each time are left aside, and lost no more than any others; a question is no such end. */
import { beforeEach, expect, test } from "vitest";
import { asked, nextAsked, standIn } from "./page-stand-in.ts";
import { eachTestInAnEmptyBrowser, file, NO_CHOICES } from "./store/fresh.ts";

standIn();
const { notices, question } = await import("../../web/flight.ts");
const { openFiles, resumeArrivals } = await import("../../web/opening.ts");
const { requestOf } = await import("../../web/request.ts");
const { MOST_TRIES } = await import("../../web/setting-aside.ts");
const { arrivals, arrive, beginArrival } = await import("../../web/store/arrivals.ts");
const { flightRows, sourceOf } = await import("../../web/store/flights.ts");

eachTestInAnEmptyBrowser();
beforeEach(() => {
  asked.length = 0;
  notices.value = [];
});

const TABLE = [file("log.csv", "a,b\n1,2\n")];
const COLUMNS = { kind: "columns", file: "log.csv", rows: [["a", "b"]], meanings: [] } as never;

test("a question that is left open over many reloads is asked again, and nothing is said to have closed", async () => {
  const opened = openFiles(requestOf(TABLE, NO_CHOICES));
  (await nextAsked()).answer(COLUMNS);
  await opened;
  for (let reload = 0; reload <= MOST_TRIES; reload++) {
    question.value = null;
    const resumed = resumeArrivals();
    (await nextAsked()).answer(COLUMNS);
    await resumed;
    expect(question.value).toMatchObject({ file: "log.csv" });
  }
  expect(notices.value).toEqual([]);
  expect(await arrivals()).toHaveLength(1);
});

test("files that did end the page each time stay in the logbook with the reason, as they were given", async () => {
  const { id } = await arrive(TABLE, NO_CHOICES, { pilot: "P", aircraft: "", tags: [] });
  for (let i = 0; i < MOST_TRIES; i++) await beginArrival(id);
  await resumeArrivals();
  expect(asked).toEqual([]);
  expect(notices.value.join(" ")).toMatch(/log\.csv: the page closed each time/);
  const [row] = await flightRows();
  expect(row).toMatchObject({ pilot: "P", trouble: expect.stringMatching(/closed each time/) });
  expect(await (await sourceOf(row!.id))!.files[0]!.bytes.text()).toBe("a,b\n1,2\n");
  expect(await arrivals()).toEqual([]);
});
