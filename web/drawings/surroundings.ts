/** What a drawing must know of its surroundings: the colours and type of the page, its width, screen or paper. */
import { type ReadonlySignal, signal } from "@preact/signals";
import { options } from "preact";
import { NARROW_PX } from "./scale.ts";

const NAMES = [
  "paper",
  "wash",
  "ink",
  "ink-2",
  "ink-3",
  "hair",
  "wind",
  "wind-wash",
  "solved",
  "outside",
  "outside-wash",
  "serif",
  "sans",
] as const;

/** The tokens by their names in the style sheet. */
export type Palette = Readonly<Record<(typeof NAMES)[number], string>>;

export interface Surroundings {
  readonly palette: Palette;
  readonly narrow: boolean;
  readonly paper: boolean;
}

/** Values that the first `:root` rule inside `@media print` gives to the tokens; style sheets of this page only. */
function printTokens(): Map<string, string> {
  const found = new Map<string, string>();
  for (const sheet of document.styleSheets) {
    for (const rule of sheet.cssRules) {
      if (!(rule instanceof CSSMediaRule) || rule.conditionText !== "print") continue;
      for (const inner of rule.cssRules) {
        if (!(inner instanceof CSSStyleRule) || !inner.selectorText.includes(":root")) continue;
        for (const name of NAMES) {
          const value = inner.style.getPropertyValue(`--${name}`).trim();
          if (value !== "") found.set(name, value);
        }
      }
    }
  }
  return found;
}

/** The tokens as they stand now; for paper, those of the print rules, since a canvas is painted before they apply. */
function readPalette(forPaper: boolean): Palette {
  const style = getComputedStyle(document.documentElement);
  const print = forPaper ? printTokens() : new Map<string, string>();
  const entries = NAMES.map((name) => [name, print.get(name) ?? style.getPropertyValue(`--${name}`).trim()]);
  return Object.fromEntries(entries) as Palette;
}

let shared: ReadonlySignal<Surroundings> | null = null;

/** One signal for the page, kept up to date with theme, width and printing. */
export function surroundings(): ReadonlySignal<Surroundings> {
  if (shared) return shared;
  const narrowQuery = matchMedia(`(max-width: ${NARROW_PX}px)`);
  const darkQuery = matchMedia("(prefers-color-scheme: dark)");
  const printQuery = matchMedia("print");
  const read = (paper: boolean): Surroundings => ({
    palette: readPalette(paper),
    narrow: !paper && narrowQuery.matches,
    paper,
  });
  const now = signal(read(printQuery.matches));
  const again = () => {
    now.value = read(printQuery.matches);
  };
  narrowQuery.addEventListener("change", again);
  darkQuery.addEventListener("change", again);
  printQuery.addEventListener("change", again);
  new MutationObserver(again).observe(document.documentElement, { attributeFilter: ["data-theme"] });
  // The browser takes the page as it stands when these handlers return, so the drawings must be done by then.
  addEventListener("beforeprint", () => atOnce(() => (now.value = read(true))));
  addEventListener("afterprint", () => atOnce(() => (now.value = read(false))));
  shared = now;
  return shared;
}

/** Lets a change of state render before the call returns. */
function atOnce(change: () => void): void {
  const usual = options.debounceRendering;
  const waiting: (() => void)[] = [];
  options.debounceRendering = (render) => waiting.push(render);
  try {
    change();
    for (let i = 0; i < waiting.length; i++) waiting[i]();
  } finally {
    if (usual) options.debounceRendering = usual;
    else delete options.debounceRendering;
  }
}
