import { describe, expect, it } from "vitest";
import { readLog } from "../../src/index.ts";
import { COLUMN_CHOICES, chosenColumns, stillNeeded } from "../../web/column-choices.ts";

describe("by construction: columns as a reader chooses them", () => {
  it("asks for latitude and longitude, and for no more", () => {
    expect(stillNeeded(["", "longitude"])).toBe("Choose the latitude.");
    expect(stillNeeded(["time", ""])).toBe("Choose the latitude and the longitude.");
    expect(stillNeeded(["latitude", "longitude"])).toBe("");
  });

  it.each(COLUMN_CHOICES)("the reader of tables understands “$words”", async ({ id, column }) => {
    if (column === "latitude" || column === "longitude" || column === "date") return;
    const value = column === "time" ? "2026-10-17T09:44:10Z" : "12";
    const csvColumns = chosenColumns(["latitude", "longitude", id]);
    const table = new TextEncoder().encode(`35.6;172.3;${value}\n35.6;172.301;${value}\n`);
    const { track, issues } = await readLog([table], "bare.csv", { csvColumns });
    expect(track[column as "altitude"]?.[0]).toBeGreaterThan(0);
    expect(issues).toEqual([]);
  });
});
