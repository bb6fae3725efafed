/** A descent on the sheet: its profile with the rate needed, the replay, verdicts and facts. */
import type { DebriefDocument, DescentRecord, DescentSeries } from "../../src/index.ts";
import { descentFactRows } from "../descent-fact-rows.ts";
import { type Cursor, DescentProfile, DescentReplay, InTurn } from "../drawings/index.ts";
import { DescentTable } from "./descent-table.tsx";
import { Facts } from "./facts.tsx";
import { Verdicts } from "./verdicts.tsx";

interface Props {
  readonly exercise: DescentRecord;
  readonly series: DescentSeries;
  readonly standard: DebriefDocument["standard"];
  readonly cursor: Cursor;
}

export function DescentBody({ exercise, series, standard, cursor }: Props) {
  const { facts, title } = exercise;
  if (!facts) return null;
  return (
    <>
      <figure>
        <DescentProfile exercise={exercise} series={series} cursor={cursor} />
      </figure>
      <InTurn>
        <DescentReplay exercise={exercise} series={series} cursor={cursor} />
        <DescentTable title={title} facts={facts} series={series} />
        <Verdicts exercise={exercise} standard={standard} />
        <Facts title={title} rows={descentFactRows(facts)} />
      </InTurn>
    </>
  );
}
