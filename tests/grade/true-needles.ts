/** The true needles of a drawn approach over the rows that its facts judge, and the true height over the final fix. */
import type { ApproachFacts } from "../../src/approach/facts.ts";
import type { Scenario, TrueColumns } from "../../src/simulator/index.ts";
import { trueFinal } from "../support/true-final.ts";

const RADIAN = Math.PI / 180;

export function trueNeedles(facts: ApproachFacts, scenario: Scenario, columns: TrueColumns) {
  const [from, to] = [Date.parse(facts.judged.fromUtc!), Date.parse(facts.judged.toUtc!)];
  const final = trueFinal(columns, facts.runway.threshold, facts.finalCourseTrueDeg);
  let [lateral, vertical] = [0, 0];
  for (let k = 0; k < columns.length; k++) {
    const time = scenario.start.time + columns.seconds[k]! * 1000;
    if (time < from || time > to) continue;
    const { needle, before } = final(k);
    if (Math.abs(needle) > Math.abs(lateral)) lateral = needle;
    const height = (columns.altitude[k]! - facts.runway.elevationFt!) * 0.3048;
    if (height < 200 * 0.3048) continue;
    // a path of 3° that crosses the threshold at 50 ft, over the earth's curve
    const away = before + (50 * 0.3048) / Math.tan(3 * RADIAN);
    const seen = Math.atan2(height - away ** 2 / (2 * 6371000), away) / RADIAN;
    if (Math.abs(seen - 3) / 0.7 > Math.abs(vertical)) vertical = (seen - 3) / 0.7;
  }
  const passed = facts.finalFixPassage?.utc;
  const second = passed === undefined ? -1 : Math.round((Date.parse(passed) - scenario.start.time) / 1000);
  return { lateral, vertical, atFix: columns.altitude[second] ?? null };
}
