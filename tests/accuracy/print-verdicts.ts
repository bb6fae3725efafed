/** The big run of verdicts, `npm run accuracy -- --verdicts`: how often they are wrong, or not given, criterion by criterion, and what decides. */
import type { Tallies, Tally } from "../grade/tally.ts";
import { joinedLines, type VerdictLines } from "./verdict-lines.ts";

/** What keeps a criterion from being told more often, where it is a law of the log and not of the program. */
const WHY: Readonly<Record<string, string>> = {
  "height-briefed":
    "what the altimeter showed is known to 75 ft and, for a day 15° off standard, 60 ft for each 1,000 ft (95 %)",
  "descent-height": "likewise: 140 ft at 1,800 ft",
  "approach-fix-height": "likewise: 130 ft so high above the field",
  "approach-glide-path": "down to 200 ft a height known to 30 to 60 ft is a third of the scale and more",
};

const percent = (n: number, of: number) => `${((100 * n) / Math.max(1, of)).toFixed(1)} %`;

/** The middle doubt, of the limit; empty where none has an amount. */
function usualDoubt({ doubts }: Tally): string {
  const sorted = [...doubts].sort((a, b) => a - b);
  const middle = sorted[sorted.length >> 1];
  return middle === undefined ? "" : `${(100 * middle).toFixed(0)} %`;
}

const usualReason = ({ reasons }: Tally): string =>
  Object.entries(reasons)
    .sort((a, b) => b[1] - a[1])
    .map(([reason, n]) => `${reason} ${n}`)
    .join(", ");

export function printVerdicts(parts: readonly VerdictLines[], write: (line: string) => void): void {
  const { aboutLimits, limitsDrawn } = joinedLines(parts);
  const table = (title: string, tallies: Tallies) => {
    write("");
    write(title);
    write("| criterion | exercises | wrong of those given | cannot tell | why not | doubt, of the limit | |");
    write("|---|---|---|---|---|---|---|");
    for (const [id, tally] of Object.entries(tallies)) {
      const { given, wrong, cannotTell } = tally;
      const why = Object.entries(WHY).find(([name]) => id.endsWith(name))?.[1] ?? "";
      const all = given + cannotTell;
      const cells = [id, all, percent(wrong, given), percent(cannotTell, all)];
      write(`| ${[...cells, usualReason(tally), usualDoubt(tally), why].join(" | ")} |`);
    }
  };
  table(
    "Flown so that the truth is about the published limit, from half of it to one and a half",
    aboutLimits,
  );
  table(
    "Flown as they come, the limit drawn about the truth, from half of it to one and a half",
    limitsDrawn,
  );
}
