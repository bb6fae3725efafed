/** Whose line is whose file: names as people and systems write them (capitals and folders: common practice, no source). */
import { describe, expect, it } from "vitest";
import { labelledFiles } from "../../src/import/index.ts";

const line = (file: string, pilot: string) => ({ file, pilot, aircraft: null });
const pilots = (files: string[], ...lines: [file: string, pilot: string][]) => {
  const { byFile, ...rest } = labelledFiles(
    files,
    lines.map(([file, pilot]) => line(file, pilot)),
  );
  return { ...rest, by: Object.fromEntries([...byFile].map(([file, { pilot }]) => [file, pilot])) };
};
const NOTHING = { unknown: [], unclear: [], twice: [], otherwise: [] };

describe("a line means a file", () => {
  it("by its very name, though another differs from it only by capitals", () => {
    expect(pilots(["a.gpx", "A.GPX"], ["A.GPX", "Al"], ["a.gpx", "Bo"])).toEqual({
      ...NOTHING,
      by: { "a.gpx": "Bo", "A.GPX": "Al" },
    });
  });

  it("with other capitals, which is said", () => {
    expect(pilots(["Week 1/a.gpx"], ["week 1/A.GPX", "Bo"])).toEqual({
      ...NOTHING,
      by: { "Week 1/a.gpx": "Bo" },
      otherwise: [{ file: "Week 1/a.gpx", written: "week 1/A.GPX" }],
    });
  });

  it("without its folders, or with more of them, where only one file is called so", () => {
    expect(pilots(["week 1/a.gpx", "b.gpx"], ["a.gpx", "Bo"], ["home/logs/b.gpx", "Al"])).toEqual({
      ...NOTHING,
      by: { "week 1/a.gpx": "Bo", "b.gpx": "Al" },
    });
  });

  it("not where two files are called so, and not by a part of a name", () => {
    const { by, unclear, unknown } = pilots(["1/a.gpx", "2/a.gpx"], ["a.gpx", "Bo"], ["1/la.gpx", "Al"]);
    expect({ by, unclear, unknown }).toEqual({ by: {}, unclear: ["a.gpx"], unknown: ["1/la.gpx"] });
    expect(pilots(["1/a.gpx", "2/a.gpx"], ["2/a.gpx", "Bo"]).by).toEqual({ "2/a.gpx": "Bo" });
    expect(pilots(["la.gpx"], ["a.gpx", "Bo"]).unknown).toEqual(["a.gpx"]);
  });
});

describe("several lines of one file", () => {
  it("that say the same are named and hold; that differ are named and do not", () => {
    const files = ["a.gpx", "b.gpx"];
    expect(pilots(files, ["a.gpx", "Bo"], ["b.gpx", "Bo"], ["b.gpx", "Al"], ["a.gpx", "Bo"])).toEqual({
      ...NOTHING,
      by: { "a.gpx": "Bo" },
      twice: ["a.gpx"],
      unclear: ["b.gpx"],
    });
  });

  it("the very name counts before one in a folder that is not there", () => {
    const { by, unknown } = pilots(["a.gpx"], ["old/a.gpx", "Al"], ["a.gpx", "Bo"]);
    expect({ by, unknown }).toEqual({ by: { "a.gpx": "Bo" }, unknown: ["old/a.gpx"] });
  });
});
