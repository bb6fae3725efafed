/** A hold as flown, course-up: a line a lap, told apart by weight, tint and number, over what the wind asked for. */
import { CursorRing } from "./CursorRing.tsx";
import {
  flownDirection,
  type HoldFacts,
  type HoldRecord,
  type HoldSeries,
  isFull,
  sided,
  windLabel,
} from "./contract.ts";
import type { Cursor } from "./cursor.ts";
import { FlownLine } from "./FlownLine.tsx";
import { HoldGround, type Place } from "./HoldGround.tsx";
import { apart, farEnd, flownLines, type HoldLine, outboundMiddle, pointsOf } from "./holdGeometry.ts";
import { lapClass, worstRollOut } from "./holdLaps.ts";
import { line, pathThrough } from "./path.ts";
import { silenceWords } from "./silences.ts";
import type { Point } from "./windGeometry.ts";

export function HoldPlan(props: {
  exercise: HoldRecord;
  series: HoldSeries;
  cursor: Cursor;
  columnPx: number;
}) {
  const { exercise, series, cursor, columnPx } = props;
  const { facts } = exercise;
  if (!facts) return null;
  const { laps, others } = flownLines(series);
  const wind = facts.wind;
  return (
    <HoldGround
      name={`${exercise.title} from above, course-up, ${laps.length} ${laps.length === 1 ? "lap" : "laps"}`}
      ident={facts.fix.ident ?? "fix, as found"}
      turns={facts.turns}
      upDeg={facts.inboundTrueDeg}
      inbound={flownDirection(facts.inboundTrueDeg, facts.inboundMagneticDeg)}
      solved={series.solved}
      stillAir={series.stillAir}
      wind={wind}
      windWords={
        wind ? (isFull(wind) ? `from ${windLabel(wind)}`.split(/ (?=\d+ kt)/) : [windLabel(wind)]) : []
      }
      clearOfNm={worstMiss(facts)?.alongNm ?? null}
      columnPx={columnPx}
      flown={[series]}
      words={silenceWords(series.timeMs)}
      lines={(place) => (
        <>
          {others.map((other, i) => (
            <FlownLine key={i} points={pointsOf(other, place)} silent={other.silent} kind="entry" />
          ))}
          {laps.map((lap, i) => (
            <FlownLine key={i} points={pointsOf(lap, place)} silent={lap.silent} kind={lapClass(i)} />
          ))}
        </>
      )}
      marks={(place, width) => (
        <>
          {laps.map((lap, i) => (
            <Chevron key={i} lap={lap} place={place} />
          ))}
          <Numbers laps={laps} place={place} />
          <RollOuts facts={facts} place={place} width={width} />
          <CursorRing cursor={cursor} timeMs={series.timeMs} points={pointsOf(series, place)} />
        </>
      )}
    />
  );
}

/** Shows which way a lap was flown, in the middle of its outbound leg. */
function Chevron({ lap, place }: { lap: HoldLine; place: Place }) {
  const middle = outboundMiddle(lap);
  if (!middle) return null;
  const [x, y] = place(...middle.at);
  const [fromX, fromY] = place(...middle.before);
  const turn = (Math.atan2(y - fromY, x - fromX) * 180) / Math.PI;
  return (
    <path
      class="chevron"
      transform={`translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(${turn.toFixed(1)})`}
      d={pathThrough([
        [-6, -4],
        [0, 0],
        [-6, 4],
      ])}
    />
  );
}

/** A number a lap, under its far end; where ends lie close together the numbers stand beside each other. */
function Numbers({ laps, place }: { laps: readonly HoldLine[]; place: Place }) {
  const ends = laps.map((lap) => place(...farEnd(lap)));
  const xs = apart(
    ends.map(([x]) => x),
    13,
  );
  return (
    <>
      {ends.map(([, y], i) => (
        <text key={i} class="lab b halo" x={xs[i]} y={y + 15} text-anchor="middle">
          {i + 1}
        </text>
      ))}
    </>
  );
}

/** A smaller miss is no wider than the lines. Own choice. */
const LEAST_MISS_NM = 0.05;

/** The farthest roll-out, where it missed the course by more than can be doubted. */
function worstMiss(facts: HoldFacts) {
  const worst = facts.laps[worstRollOut(facts)]?.rollOut;
  return worst && Math.abs(worst.acrossNm) > Math.max(LEAST_MISS_NM, worst.across95Nm) ? worst : null;
}

/** A ring where each lap rolled out, and the farthest miss as a dimension. */
function RollOuts({ facts, place, width }: { facts: HoldFacts; place: Place; width: number }) {
  const { laps } = facts;
  const missed = worstMiss(facts);
  return (
    <>
      {missed && (
        <Miss
          from={place(missed.alongNm, 0)}
          to={place(missed.alongNm, missed.acrossNm)}
          words={sided(missed.acrossNm, 2, " NM")}
          holdingSide={facts.turns === "right" ? 1 : -1}
          width={width}
        />
      )}
      {laps.map(({ rollOut, startUtc }) => {
        if (!rollOut) return null;
        const [x, y] = place(rollOut.alongNm, rollOut.acrossNm);
        return <circle key={startUtc} class="ringed" cx={x} cy={y} r={3.6} />;
      })}
    </>
  );
}

/** As wide as "0.19 NM L" is written. */
const MISS_PX = 60;

/** The number stands on the side where nobody should fly, clear of the laps: beyond the ring where that lies there and leaves room. */
function Miss(props: { from: Point; to: Point; words: string; holdingSide: 1 | -1; width: number }) {
  const { from, to, words, holdingSide, width } = props;
  const ringSide = to[0] < from[0] ? -1 : 1;
  const beyond = to[0] + ringSide * 9;
  const end = beyond + ringSide * MISS_PX;
  const outside = ringSide !== holdingSide && end >= 0 && end <= width;
  const [x, way] = outside ? [beyond, ringSide] : [from[0] - ringSide * 12, -ringSide];
  const head = ringSide * 6;
  return (
    <>
      {Math.abs(to[0] - from[0]) > 8 && (
        <>
          <path class="dim" d={line(from[0], from[1], to[0], to[1])} />
          <path
            class="dim"
            d={pathThrough([[from[0] + head, from[1] - 2.6], from, [from[0] + head, from[1] + 2.6]])}
          />
        </>
      )}
      <text class="lab out halo" x={x} y={from[1] + 4} text-anchor={way === 1 ? "start" : "end"}>
        {words}
      </text>
    </>
  );
}
