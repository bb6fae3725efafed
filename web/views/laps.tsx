/** The table of a hold: a lap is two rows, as flown and as its wind asked. */
import { duration, type HoldFacts } from "../../src/index.ts";
import { type LapCells, lapRows } from "../lap-rows.ts";

const COLUMNS: readonly (readonly [keyof LapCells, string, string])[] = [
  ["outboundTime", "Outbound", "by the clock"],
  ["outboundCorrection", "Outbound", "correction"],
  ["factor", "Times", "the need"],
  ["inboundTime", "Inbound", "time"],
  ["inboundCorrection", "Inbound", "correction"],
  ["rollOut", "Rolled out", "off course"],
  ["overshoot", "Past the", "course"],
  ["height", "Height", "mean"],
  ["wind", "Wind", "from"],
];

const legWords = ({ leg, timing }: HoldFacts): string =>
  leg.by === "distance"
    ? `outbound to ${leg.distanceNm} NM`
    : `${duration(leg.seconds)} ${timing === "us" ? "inbound (US timing)" : "outbound (ICAO timing)"}`;

export function Laps({ title, facts }: { title: string; facts: HoldFacts }) {
  const rows = lapRows(facts);
  // a column that says the same nothing throughout is left out
  const columns = COLUMNS.filter(([key]) =>
    rows.some(({ flown }) => flown[key] !== "" && flown[key] !== "not known"),
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard
    <section class="scroll" tabIndex={0} aria-label={`Laps, ${title}`}>
      <table class="data laps">
        <caption>
          Lap by lap: flown, and asked by the wind of the lap; {legWords(facts)}. Doubt (95 %) is left out
          where it is under the last figure.
        </caption>
        <thead>
          <tr>
            <th scope="col">Lap</th>
            <th scope="col">
              <span class="vh">Flown or asked</span>
            </th>
            {columns.map(([key, first, second]) => (
              <th key={key} scope="col" class="r">
                {first}
                <br />
                {second}
              </th>
            ))}
          </tr>
        </thead>
        {rows.map(({ lap, flown, asked }) => (
          <tbody key={lap}>
            <tr>
              <th scope="rowgroup" rowSpan={2} class="lap">
                {lap}
              </th>
              <th scope="row">flown</th>
              {columns.map(([key]) => (
                <td key={key} class="r">
                  {flown[key]}
                </td>
              ))}
            </tr>
            <tr class="asked">
              <th scope="row">asked</th>
              {columns.map(([key]) => (
                <td key={key} class="r">
                  {asked[key]}
                </td>
              ))}
            </tr>
          </tbody>
        ))}
      </table>
    </section>
  );
}
