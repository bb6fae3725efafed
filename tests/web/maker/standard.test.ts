/** No standard named, no verdict: a brief from nothing is held against what the reader chose, and against nothing else. */
import { beforeEach, expect, test } from "vitest";
import type { Flight } from "../../../web/flight.ts";
import { keptWords, standIn } from "../page-stand-in.ts";
import { documentNamed, eachTestInAnEmptyBrowser, NO_CHOICES } from "../store/fresh.ts";

standIn();
const { flight } = await import("../../../web/flight.ts");
const { history, values } = await import("../../../web/maker/making.ts");
const { closeMaker, openMaker } = await import("../../../web/maker/opened.ts");
const { chooseStandard } = await import("../../../web/maker/standard.ts");

eachTestInAnEmptyBrowser();
beforeEach(() => {
  history.value = null;
  keptWords.clear();
  flight.value = {
    document: documentNamed("one"),
    series: { path: null },
    waypoints: [],
    briefText: null,
    school: null,
    standards: [],
    id: null,
    opened: 1,
    request: { ...NO_CHOICES, files: [] },
  } as unknown as Flight;
});

test("where none was chosen yet, a new brief names none", () => {
  openMaker();
  expect(values.value).not.toHaveProperty("standard");
});

test("a new brief names the one chosen last, and none again once nothing was chosen", async () => {
  openMaker();
  chooseStandard("instrument-rating-eu");
  expect(values.value.standard).toBe("instrument-rating-eu");
  await closeMaker();
  openMaker();
  expect(values.value.standard).toBe("instrument-rating-eu");
  chooseStandard("");
  await closeMaker();
  openMaker();
  expect(values.value).not.toHaveProperty("standard");
});

test("a school's own standard, whose file another flight may lack, is not taken over", async () => {
  openMaker();
  chooseStandard("ours");
  await closeMaker();
  openMaker();
  expect(values.value).not.toHaveProperty("standard");
});
