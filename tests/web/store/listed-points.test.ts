/** The lists that a browser keeps serve every brief; what cannot be read of them takes no flight down, what nobody foresaw is heard of. */
import { expect, test, vi } from "vitest";
import { listedPoints } from "../../../web/listed-points.ts";
import { closeLogbook } from "../../../web/store/database.ts";
import { keepPlaces } from "../../../web/store/places.ts";
import { eachTestInAnEmptyBrowser } from "./fresh.ts";

eachTestInAnEmptyBrowser();

const list = (ident: string): Blob => new Blob([`ident,lat,lon\n${ident},35.6,172.3\n`]);
const idents = async (): Promise<string[]> => (await listedPoints()).points.map(({ ident }) => ident);

test("of several lists one that cannot be used leaves the others", async () => {
  await keepPlaces("orsa.csv", list("TARNO"));
  await keepPlaces("broken.csv", new Blob(["a page of words, and no headings"]));
  expect(await idents()).toEqual(["TARNO"]);
});

test("a list taken the place of is read anew", async () => {
  const now = vi.spyOn(Date, "now").mockReturnValue(1);
  await keepPlaces("orsa.csv", list("TARNO"));
  expect(await idents()).toEqual(["TARNO"]);
  now.mockReturnValue(2);
  await keepPlaces("orsa.csv", list("BELVO"));
  expect(await idents()).toEqual(["BELVO"]);
  now.mockRestore();
});

test("a browser that keeps nothing has no lists", async () => {
  await closeLogbook();
  vi.stubGlobal("indexedDB", {
    open: () => {
      throw new DOMException("refused", "SecurityError");
    },
  });
  expect(await listedPoints()).toEqual({ points: [], runways: [] });
  vi.unstubAllGlobals();
});

test("a mistake of the program is not taken for an empty list", async () => {
  await keepPlaces("orsa.csv", list("KESTI"));
  const slip = vi
    .spyOn(Blob.prototype, "arrayBuffer")
    .mockRejectedValue(new TypeError("x is not a function"));
  await expect(listedPoints()).rejects.toThrow("x is not a function");
  slip.mockRestore();
});

test("a list whose bytes the browser has lost takes no flight down", async () => {
  await keepPlaces("orsa.csv", list("LUMDO"));
  const lost = vi
    .spyOn(Blob.prototype, "arrayBuffer")
    .mockRejectedValue(new DOMException("gone", "NotReadableError"));
  expect(await idents()).toEqual([]);
  lost.mockRestore();
});
