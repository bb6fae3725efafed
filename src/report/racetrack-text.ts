/** The answer for the next hold as plain text for a terminal. */
import type { RacetrackAnswer } from "../debrief/document.ts";
import { CAUTION } from "../quantity/caution.ts";
import { wrap } from "./text.ts";
import { racetrackWords } from "./words/index.ts";

export function racetrackText(answer: RacetrackAnswer): string {
  const words = racetrackWords(answer);
  const [asked, legs] = [wrap(words.asked), words.legs];
  return `${[
    asked,
    "",
    wrap(words.law),
    ...legs.map(([name, text]) => `   ${name.padEnd(9)}${wrap(text, " ".repeat(12)).trimStart()}`),
    ...(words.rules.length > 0
      ? ["", "What the rules of thumb come to in this wind", ...words.rules.map((rule) => wrap(rule, "   "))]
      : []),
    "",
    wrap(words.stillAir),
    ...words.notes.map((note) => wrap(note)),
    "",
    wrap(CAUTION),
  ].join("\n")}\n`;
}
