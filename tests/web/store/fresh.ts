/** An empty browser for each test: the standard's database, in memory (fake-indexeddb, which passes most of the W3C's own tests of IndexedDB). */
import { IDBFactory } from "fake-indexeddb";
import "fake-indexeddb/auto";
import { afterAll, beforeEach } from "vitest";
import type { DebriefDocument } from "../../../src/index.ts";
import { closeLogbook } from "../../../web/store/database.ts";
import { closeNews } from "../../../web/store/news.ts";
import type { Choices, KeptFile } from "../../../web/store/schema.ts";

export function eachTestInAnEmptyBrowser(): void {
  beforeEach(async () => {
    await closeLogbook();
    globalThis.indexedDB = new IDBFactory();
  });
  afterAll(closeNews);
}

export const NO_CHOICES: Choices = { route: null, flight: null, columns: null, standard: null };

export const file = (name: string, text: string): KeptFile => ({ name, bytes: new Blob([text]) });

/** As much of a document as the store looks at. */
export const documentNamed = (title: string): DebriefDocument =>
  ({
    format: "hindtrack-debrief",
    log: { name: title, startUtc: "2026-10-17T01:12:00.000Z", endUtc: null, flight: 0 },
    brief: null,
    wind: null,
    exercises: [
      { kind: "course", verdicts: [{ verdict: "met" }, { verdict: "not met" }] },
      { kind: "course", verdicts: [{ verdict: "met" }] },
      { kind: "hold", verdicts: [] },
    ],
    remarks: [],
  }) as unknown as DebriefDocument;
