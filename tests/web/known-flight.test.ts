/** Files of a flight that is in the logbook already come again: the flight stands as it was chosen there. */
import { expect, test } from "vitest";
import { ANALYSIS_VERSION } from "../../src/index.ts";
import type { Debriefed } from "../../web/messages.ts";
import { asked, nextAsked, standIn } from "./page-stand-in.ts";
import { documentNamed, eachTestInAnEmptyBrowser, file, NO_CHOICES } from "./store/fresh.ts";

standIn();
const { flight, notices } = await import("../../web/flight.ts");
const { openFiles } = await import("../../web/opening.ts");
const { requestOf } = await import("../../web/request.ts");
const { arrivals } = await import("../../web/store/arrivals.ts");
const { addFlights, documentOf, flightRows, keepDocument } = await import("../../web/store/flights.ts");
const { fingerprintOf } = await import("../../web/store/identity.ts");

eachTestInAnEmptyBrowser();

const FILES = [file("log.gpx", "<gpx/>"), file("brief.yaml", "brief: 1")];
const STANDARD = "instrument-rating-eu";

/** A flight worked out, named by the standard that it is held against. */
const debriefed = (standard: string | null): Debriefed => {
  const bare = documentNamed(standard ?? "as the brief says");
  return {
    document: { ...bare, log: { ...bare.log, issues: [] }, exercises: [], overrules: [] },
    series: { path: null },
    routes: [],
    waypoints: [],
    briefText: null,
    school: null,
    standards: [],
    leftOut: [],
    unread: [],
  } as unknown as Debriefed;
};

async function inTheLogbook(): Promise<string> {
  const choices = { ...NO_CHOICES, standard: STANDARD };
  const [row] = await addFlights([{ files: FILES, choices, fingerprint: await fingerprintOf(FILES) }], null);
  await keepDocument(row!.id, debriefed(STANDARD).document, ANALYSIS_VERSION);
  return row!.id;
}

test("held against another standard in the logbook, it is shown and kept so", async () => {
  const id = await inTheLogbook();
  const opened = openFiles(requestOf(FILES, NO_CHOICES));
  const first = await nextAsked();
  first.answer({ kind: "done", flight: debriefed(first.request.standard) });
  const again = await nextAsked();
  expect(again.request.standard).toBe(STANDARD);
  again.answer({ kind: "done", flight: debriefed(again.request.standard) });
  await opened;
  expect((await documentOf(id))!.log.name).toBe(STANDARD);
  expect(flight.value).toMatchObject({ id, request: { standard: STANDARD } });
  expect(flight.value!.document.log.name).toBe(STANDARD);
  expect(await flightRows()).toHaveLength(1);
  expect(await arrivals()).toEqual([]);
  expect(notices.value.join(" ")).toContain("was in the logbook already");
});

test("with the same choices it is worked out once", async () => {
  const id = await inTheLogbook();
  const opened = openFiles(requestOf(FILES, { ...NO_CHOICES, standard: STANDARD }));
  const { answer } = await nextAsked();
  answer({ kind: "done", flight: debriefed(STANDARD) });
  await opened;
  expect(asked).toEqual([]);
  expect(flight.value?.id).toBe(id);
});
