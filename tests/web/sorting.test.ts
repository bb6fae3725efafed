import { expect, test } from "vitest";
import { fileRole, sortFiles } from "../../web/sorting.ts";

test.each([
  ["log.gpx", '<?xml version="1.0"?><gpx>', "log"],
  ["log.gpx", '\uFEFF\n <gpx version="1.1">', "log"],
  ["no-ending", "# lesson 6\n\nbrief: 1\ntitle: x\n", "brief"],
  ["misnamed.gpx", '{ "brief": 1 }', "brief"],
  ["lesson.yaml", "titel: without any key that we know", "brief"],
  ["notes.txt", "met at the field", "log"],
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
  expect(sortFiles(files)).toEqual({ logs: ["b", "c"], brief: "a", leftOut: ["d"] });
});
