/** Tables of who flew what, as a spreadsheet saves them (RFC 4180; semicolons where commas are decimal: common practice, no source). */
import { describe, expect, it } from "vitest";
import { isLabelTable, readLabelTable } from "../../src/import/index.ts";

const ROWS = [
  { file: "one.gpx", pilot: "Bo", aircraft: "school one" },
  { file: "week 2/two.gpx", pilot: "O'Hara, Al", aircraft: null },
];

describe("a table of labels", () => {
  it.each([
    ["plain", 'file,pilot,aircraft\none.gpx,Bo,school one\nweek 2/two.gpx,"O\'Hara, Al",\n'],
    [
      "with the mark of UTF-8, capitals, CRLF, another order and Windows' own slashes",
      '\uFEFFAircraft, File ,PILOT\r\nschool one,one.gpx, Bo \r\n,week 2\\two.gpx,"O\'Hara, Al"\r\n',
    ],
    ["parted by tabs", "file\tpilot\taircraft\n./one.gpx\tBo\tschool one\nweek 2/two.gpx\tO'Hara, Al\t\n"],
    ["parted by semicolons", "file;pilot;aircraft\none.gpx;Bo;school one\nweek 2/two.gpx;O'Hara, Al;\n;;\n"],
  ])("%s", (_, text) => {
    expect(isLabelTable(text)).toBe(true);
    expect(readLabelTable(text)).toMatchObject({ labels: ROWS, lacks: null });
  });

  it("says which column it lacks", () => {
    expect(readLabelTable("pilot,aircraft\nBo,x\n").lacks).toBe("file");
    expect(readLabelTable("file,who\na.gpx,Bo\n").lacks).toBe("pilot or aircraft");
    expect(readLabelTable("").lacks).toBe("file");
    expect(readLabelTable("file,pilot\na.gpx,Bo\n")).toEqual({
      labels: [{ file: "a.gpx", pilot: "Bo", aircraft: null }],
      lacks: null,
      headings: ["file", "pilot"],
    });
  });

  it("is told though the column of files has another name, for then that can be said", () => {
    const text = "Name,Pilot\na.gpx,Bo\n";
    expect(isLabelTable(text)).toBe(true);
    expect(readLabelTable(text)).toMatchObject({ lacks: "file", headings: ["Name", "Pilot"] });
    expect(isLabelTable("time,lat,lon,pilot\n1,2,3,Bo\n")).toBe(false);
  });

  it.each(["time,lat,lon\n1,2,3\n", "ident,lat,lon\nTARNO,1,2\n", '<?xml version="1.0"?>\n<gpx/>', ""])(
    "%j is none",
    (text) => expect(isLabelTable(text)).toBe(false),
  );
});
