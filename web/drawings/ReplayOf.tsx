/** An exercise replayed with a readout of its own: nothing where it has no facts, or its log no times. */
import type { ComponentType } from "preact";
import type { Cursor } from "./cursor.ts";
import { ReplayBar } from "./ReplayBar.tsx";

export interface ReadoutProps<Facts, Series> {
  readonly facts: Facts;
  readonly series: Series;
  readonly row: number;
}

export function ReplayOf<Facts, Series extends { readonly timeMs: Float64Array }>(props: {
  exercise: { readonly title: string; readonly facts: Facts | null };
  series: Series;
  cursor: Cursor;
  Readout: ComponentType<ReadoutProps<Facts, Series>>;
}) {
  const { exercise, series, cursor, Readout } = props;
  const { title, facts } = exercise;
  if (!facts || !Number.isFinite(series.timeMs[0])) return null;
  return (
    <ReplayBar title={title} timeMs={series.timeMs} cursor={cursor}>
      {(row) => <Readout facts={facts} series={series} row={row} />}
    </ReplayBar>
  );
}
