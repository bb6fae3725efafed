/** An approach on the sheet: from the side with its needles, from above beside its gates, the replay, verdicts and facts. */
import { useRef } from "preact/hooks";
import type { ApproachFacts, ApproachRecord, ApproachSeries, DebriefDocument } from "../../src/index.ts";
import { approachFactRows } from "../approach-fact-rows.ts";
import {
  ApproachPlan,
  ApproachProfile,
  ApproachReplay,
  type Cursor,
  InTurn,
  useWidth,
} from "../drawings/index.ts";
import { ApproachTable } from "./approach-table.tsx";
import { Facts } from "./facts.tsx";
import { Gates } from "./gates.tsx";
import { Verdicts } from "./verdicts.tsx";

interface Props {
  readonly exercise: ApproachRecord;
  readonly series: ApproachSeries;
  readonly standard: DebriefDocument["standard"];
  readonly cursor: Cursor;
}

export function ApproachBody({ exercise, series, standard, cursor }: Props) {
  const { facts, title } = exercise;
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  if (!facts) return null;
  return (
    <div class="approach-sheet" ref={box}>
      <figure>
        <ApproachProfile exercise={exercise} series={series} cursor={cursor} />
      </figure>
      <InTurn>
        <FromAbove {...{ exercise, facts, series, cursor, width }} />
        <ApproachReplay exercise={exercise} series={series} cursor={cursor} />
        <ApproachTable title={title} facts={facts} series={series} />
        <Verdicts exercise={exercise} standard={standard} />
      </InTurn>
    </div>
  );
}

/** The plan with gates and figures beside it. */
function FromAbove(props: Omit<Props, "standard"> & { facts: ApproachFacts; width: number }) {
  const { exercise, facts, series, cursor, width } = props;
  const { title } = exercise;
  return (
    <div class="approach">
      <figure>
        {width > 0 && <ApproachPlan exercise={exercise} series={series} cursor={cursor} columnPx={width} />}
      </figure>
      <div class="at-gates">
        <Gates title={title} facts={facts} />
      </div>
      <div class="in-figures">
        <Facts title={title} rows={approachFactRows(facts)} />
      </div>
    </div>
  );
}
