/** An arc on the sheet: its charts, its plan, the replay, verdicts and facts. */
import type { ArcRecord, ArcSeries, DebriefDocument } from "../../src/index.ts";
import { arcFactRows } from "../arc-fact-rows.ts";
import { ArcFigure, ArcPlan, ArcReplay, type Cursor, InTurn } from "../drawings/index.ts";
import { ArcTable } from "./arc-table.tsx";
import { Facts } from "./facts.tsx";
import { Verdicts } from "./verdicts.tsx";

interface Props {
  readonly exercise: ArcRecord;
  readonly series: ArcSeries;
  readonly standard: DebriefDocument["standard"];
  readonly cursor: Cursor;
}

export function ArcBody({ exercise, series, standard, cursor }: Props) {
  const { facts, title } = exercise;
  if (!facts) return null;
  return (
    <>
      <figure>
        <ArcFigure exercise={exercise} series={series} cursor={cursor} />
      </figure>
      <InTurn>
        <figure>
          <ArcPlan exercise={exercise} series={series} cursor={cursor} />
        </figure>
        <ArcReplay exercise={exercise} series={series} cursor={cursor} />
        <ArcTable title={title} facts={facts} series={series} />
        <Verdicts exercise={exercise} standard={standard} />
        <Facts title={title} rows={arcFactRows(facts)} />
      </InTurn>
    </>
  );
}
