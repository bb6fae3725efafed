import { expect, test } from "vitest";
import { addedTo, fileRole, isPointList, sortFiles } from "../../web/sorting.ts";

test.each([
  ["log.gpx", '<?xml version="1.0"?><gpx>', "log"],
  ["log.gpx", '\uFEFF\n <gpx version="1.1">', "log"],
  ["no-ending", "# lesson 6\n\nbrief: 1\ntitle: x\n", "brief"],
  ["misnamed.gpx", '{ "brief": 1 }', "brief"],
  ["lesson.yaml", "titel: without any key that we know", "brief"],
  ["notes.txt", "met at the field", "log"],
  ["school.yaml", "# ours\nstandard: 1\nid: ours\n", "standard"],
  ["school.json", '{"standard":1,"id":"ours"}', "standard"],
  ["lesson.yaml", "standard: instrument-rating-us\nbrief: 1\n", "brief"],
  ["lesson.json", '{"standard":"ours","exercises":[]}', "brief"],
] as const)("%s that begins %j is a %s (what is in it decides before its name)", (name, text, role) => {
  expect(fileRole(name, text)).toBe(role);
});

test("all logs and the first brief are taken, the rest is named", () => {
  const files = [
    { file: "a", role: "brief" },
    { file: "b", role: "log" },
    { file: "c", role: "log" },
    { file: "d", role: "brief" },
  ] as const;
  expect(sortFiles(files)).toEqual({
    logs: ["b", "c"],
    brief: "a",
    briefs: ["a", "d"],
    standard: null,
    leftOut: ["d"],
  });
});

test("a brief or a standard goes to the flight on the sheet, a log makes a new one", () => {
  const none = { logs: [], brief: null, briefs: [], standard: null, leftOut: [] };
  const standing = { ...none, logs: ["log"], brief: "old" };
  expect(addedTo(standing, { ...none, standard: "ours" })).toEqual(["log", "old", "ours"]);
  expect(addedTo(standing, { ...none, brief: "new" })).toEqual(["log", "new"]);
  expect(addedTo(standing, { ...none, logs: ["other"] })).toEqual(["other"]);
  expect(addedTo(null, { ...none, standard: "ours" })).toEqual(["ours"]);
});

test.each([
  ["ident,lat,lon,kind\nTARNO,35.6,172.3,vor\n", true],
  ["# Orsa Vale\nName;Latitude;Longitude\nTARNO;35,6;172,3\n", true],
  ["time,lat,lon,name\n10:00:00,35.6,172.3,x\n", false],
  ["lat,lon,alt\n35.6,172.3,1000\n", false],
  ["<gpx><wpt lat='1' lon='2'><name>A</name></wpt></gpx>", false],
  ["brief: 1\nfixes:\n  TARNO: { lat: 1, lon: 2 }\n", false],
] as const)("%j is a list of points: %s", (beginning, is) => {
  expect(isPointList(beginning)).toBe(is);
});
