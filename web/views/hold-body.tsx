/** A hold on the sheet: its plan with what was asked beside it, the replay, the laps and the facts. */
import { useRef } from "preact/hooks";
import type { DebriefDocument, HoldFacts, HoldRecord, HoldSeries } from "../../src/index.ts";
import { AskedFlown, type Cursor, HoldKey, HoldPlan, HoldReplay, useWidth } from "../drawings/index.ts";
import { holdFactRows } from "../hold-fact-rows.ts";
import { Facts } from "./facts.tsx";
import { HoldTable } from "./hold-table.tsx";
import { Laps } from "./laps.tsx";
import { Verdicts } from "./verdicts.tsx";

export type NextHoldOf = (facts: HoldFacts) => void;

interface Props {
  readonly exercise: HoldRecord;
  readonly series: HoldSeries;
  readonly standard: DebriefDocument["standard"];
  /** Takes the hold to the panel for the next one; left out where there is none. */
  readonly nextHold: NextHoldOf | undefined;
  readonly cursor: Cursor;
}

export function HoldBody({ exercise, series, standard, cursor, nextHold }: Props) {
  const { facts, title } = exercise;
  const box = useRef<HTMLElement>(null);
  const width = useWidth(box);
  if (!facts) return null;
  const solved = facts.solved !== null && !("none" in facts.solved);
  return (
    <>
      <figure class="hold" ref={box}>
        {width > 0 && <HoldPlan exercise={exercise} series={series} cursor={cursor} columnPx={width} />}
        <div>
          <HoldKey
            laps={facts.laps.length}
            solved={solved}
            stillAir={facts.stillAir !== null}
            asked={solved}
          />
          <AskedFlown facts={facts} />
        </div>
      </figure>
      {nextHold && (
        <p class="fine save screen">
          <button type="button" onClick={() => nextHold(facts)}>
            Solve this hold for the next flight
          </button>
        </p>
      )}
      <HoldReplay exercise={exercise} series={series} cursor={cursor} />
      <HoldTable title={title} facts={facts} series={series} />
      <Laps title={title} facts={facts} />
      <Verdicts exercise={exercise} standard={standard} />
      <Facts title={title} rows={holdFactRows(facts)} />
    </>
  );
}
