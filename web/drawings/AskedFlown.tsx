/** What was flown against what the wind asked for, a row a lap: the outbound factor and the outbound time, at fixed scales. */
import { type HoldFacts, type HoldLap, outboundClock } from "./contract.ts";
import { Drawing } from "./Drawing.tsx";
import { line, pathThrough } from "./path.ts";
import { ticksWithin } from "./rows.ts";
import { PX_PER_MM } from "./scale.ts";

/** The look: 0 to 6 times, and 0 to 120 s, are 66 mm. */
const PLOT_PX = 66 * PX_PER_MM;
const LEFT_PX = 44;
const RIGHT_PX = 36;
const WIDTH_PX = Math.ceil(LEFT_PX + PLOT_PX + RIGHT_PX);
const ROW_PX = 23;
const HEAD_PX = 50;
const FOOT_PX = 26;

export interface AskedFlownRow {
  readonly flown: number | null;
  /** Half-widths of 95 % intervals. */
  readonly flown95: number | null;
  readonly asked: number | null;
  readonly asked95: number | null;
}

const solvedOf = ({ solved }: HoldLap) => (solved && !("none" in solved) ? solved : null);

export const factorRows = ({ laps }: Pick<HoldFacts, "laps">): AskedFlownRow[] =>
  laps.map((lap) => ({
    flown: lap.factorOfNeed,
    flown95: lap.factorOfNeed95,
    asked: solvedOf(lap)?.factor ?? null,
    asked95: lap.doubt?.factor95 ?? null,
  }));

/** Both by the clock: from wings level or abeam the fix, whichever came later. */
export const timeRows = ({ laps }: Pick<HoldFacts, "laps">): AskedFlownRow[] =>
  laps.map((lap) => {
    const solved = solvedOf(lap);
    return {
      flown: lap.outbound.seconds,
      flown95: null,
      asked: solved && outboundClock(solved).seconds,
      asked95: lap.doubt?.outbound95S ?? null,
    };
  });

export function AskedFlown({ facts }: { facts: HoldFacts }) {
  const rule = facts.leg.by === "time" ? facts.leg.seconds : null;
  const factors = factorRows(facts);
  return (
    <div class="asked-flown">
      {factors.some(({ flown, asked }) => flown !== null && asked !== null) && (
        <Rows
          title="Outbound correction, times the inbound need"
          rows={factors}
          most={6}
          step={1}
          text={(value) => (value === 0 ? "0" : `×${value}`)}
          digits={1}
          rule={3}
          ruleWords="×3, the rule"
        />
      )}
      {timeRows(facts).some(({ asked }) => asked !== null) && (
        <Rows
          title="Outbound time by the clock, s"
          rows={timeRows(facts)}
          most={120}
          step={20}
          text={String}
          digits={0}
          rule={rule}
          ruleWords={rule === null ? "" : `${rule} s, the leg`}
        />
      )}
    </div>
  );
}

function Rows(props: {
  title: string;
  rows: readonly AskedFlownRow[];
  most: number;
  step: number;
  text: (value: number) => string;
  digits: number;
  rule: number | null;
  ruleWords: string;
}) {
  const { title, rows, most, step, text, digits, rule, ruleWords } = props;
  const x = (value: number) => LEFT_PX + (Math.max(0, Math.min(value, most * 1.03)) / most) * PLOT_PX;
  const foot = HEAD_PX + rows.length * ROW_PX;
  const said = rows.map(({ flown, asked }, i) => {
    const value = (v: number | null) => (v === null ? "not known" : v.toFixed(digits));
    return `lap ${i + 1} flown ${value(flown)}, asked ${value(asked)}`;
  });
  return (
    <Drawing
      kind="asked"
      name={`${title}: ${said.join("; ")}`}
      width={WIDTH_PX}
      height={Math.ceil(foot + (rule === null ? 6 : FOOT_PX))}
    >
      <text class="lab b" x={0} y={13}>
        {title}
      </text>
      <path class="axis" d={line(x(0), HEAD_PX - 10, x(most), HEAD_PX - 10)} />
      {ticksWithin(0, most, step).map((value) => (
        <g key={value}>
          <path class="axis" d={line(x(value), HEAD_PX - 14, x(value), HEAD_PX - 10)} />
          <text class="lab" x={x(value)} y={HEAD_PX - 18} text-anchor="middle">
            {text(value)}
          </text>
        </g>
      ))}
      {rule !== null && rule <= most && (
        <>
          <path class="iso" d={line(x(rule), HEAD_PX - 10, x(rule), foot)} />
          <text class="lab-i" x={x(rule)} y={foot + 15} text-anchor="middle">
            {ruleWords}
          </text>
        </>
      )}
      {rows.map((row, i) => (
        <Row
          key={i}
          row={row}
          number={i + 1}
          y={HEAD_PX + (i + 0.5) * ROW_PX}
          x={x}
          most={most}
          digits={digits}
        />
      ))}
    </Drawing>
  );
}

function Row(props: {
  row: AskedFlownRow;
  number: number;
  y: number;
  x: (value: number) => number;
  most: number;
  digits: number;
}) {
  const { row, number, y, x, most, digits } = props;
  const { flown, flown95, asked, asked95 } = row;
  const beyond = Math.max(flown ?? 0, asked ?? 0) > most;
  return (
    <>
      <text class="lab" x={0} y={y + 4}>
        Lap {number}
      </text>
      {flown !== null && asked !== null && <path class="missing" d={line(x(flown), y, x(asked), y)} />}
      {asked !== null && (
        <>
          {asked95 !== null && (
            <path class="solvedwhisk" d={line(x(asked - asked95), y, x(asked + asked95), y)} />
          )}
          <path
            class="diamond"
            d={`${pathThrough([
              [x(asked), y - 5.4],
              [x(asked) + 4.4, y],
              [x(asked), y + 5.4],
              [x(asked) - 4.4, y],
            ])}Z`}
          />
        </>
      )}
      {flown !== null && flown95 !== null && (
        <path class="whisk" d={line(x(flown - flown95), y, x(flown + flown95), y)} />
      )}
      {flown !== null && <circle class="dot" cx={x(flown)} cy={y} r={3.6} />}
      {beyond && (
        <text class="lab" x={x(most) + 14} y={y + 4}>
          {Math.max(flown ?? 0, asked ?? 0).toFixed(digits)}
        </text>
      )}
    </>
  );
}
