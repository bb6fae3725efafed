/** The big run of verdicts, `npm run accuracy -- --verdicts`: how often they are wrong, or not given, criterion by criterion. */
import {
  approachesAboutLimits,
  arcsAboutLimits,
  courseHeightsAboutLimits,
  descentsAboutLimits,
} from "../grade/about-limits.ts";
import { calibrate } from "../grade/calibration.ts";
import { calibrateHolds } from "../grade/calibration-holds.ts";
import { calibrateApproaches, calibrateArcsAndDescents } from "../grade/calibration-others.ts";
import type { Tallies } from "../grade/tally.ts";

/** Never used for tuning. */
const FIRST_SEED = 700_000;

/** What keeps a criterion from being told more often, where it is a law of the log and not of the program. */
const WHY: Readonly<Record<string, string>> = {
  "height-briefed": "a GPS tells what the altimeter showed to 86 ft or worse (95 %)",
  "descent-height": "likewise, to 140 ft at 1,800 ft",
  "approach-fix-height": "likewise, to 130 ft so high above the field",
  "approach-glide-path": "down to 200 ft a height known to 30 to 60 ft is a third of the scale and more",
};

const percent = (n: number, of: number) => `${((100 * n) / Math.max(1, of)).toFixed(1)} %`;

export function printVerdicts(exercises: number, write: (line: string) => void, first = FIRST_SEED): void {
  const table = (title: string, tallies: Tallies) => {
    write("");
    write(title);
    write("| criterion | exercises | wrong of those given | cannot tell | |");
    write("|---|---|---|---|---|");
    for (const [id, { given, wrong, cannotTell }] of Object.entries(tallies)) {
      const why = Object.entries(WHY).find(([name]) => id.endsWith(name))?.[1] ?? "";
      const all = given + cannotTell;
      write(`| ${id} | ${all} | ${percent(wrong, given)} | ${percent(cannotTell, all)} | ${why} |`);
    }
  };
  table("Flown so that the truth is about the published limit, from half of it to one and a half", {
    ...courseHeightsAboutLimits(first, Math.ceil(exercises / 4)),
    ...arcsAboutLimits(first, exercises),
    ...descentsAboutLimits(first, exercises),
    ...approachesAboutLimits(first, exercises),
  });
  const { judged: given, wrong, cannotTell } = calibrate(first, Math.ceil(exercises / 4));
  table("Flown as they come, the limit drawn about the truth, from half of it to one and a half", {
    "course-needle": { given, wrong, cannotTell },
    ...calibrateHolds(first, exercises),
    ...calibrateArcsAndDescents(first, exercises),
    ...calibrateApproaches(first, exercises),
  });
}
