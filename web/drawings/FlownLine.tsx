/** A flown line on a plan: whole where the log has points, dashes and dots straight across its silences. */
import { pathThrough } from "./path.ts";
import { cutAtSilences } from "./silences.ts";
import type { Point } from "./windGeometry.ts";

/** `silent`: indices of the points at which a silence ends. */
export function FlownLine(props: { points: readonly Point[]; silent: ReadonlySet<number>; kind?: string }) {
  const { points, silent, kind = "" } = props;
  const parts = cutAtSilences({ from: 0, to: points.length }, silent);
  const through = (unseen: boolean) =>
    parts
      .filter((part) => part.unseen === unseen)
      .map(({ from, to }) => pathThrough(points.slice(from, to)))
      .join("");
  const across = through(true);
  return (
    <>
      <path class={`flown ${kind}`.trim()} d={through(false)} />
      {across && <path class="flown unseen" d={across} />}
    </>
  );
}
