/** One flight of the list. */
import { clock, day, plain, shownName, windLabel } from "../../../src/index.ts";
import { decided } from "../../decided.ts";
import { titleOf, verdictsOf } from "../../listing.ts";
import { ticked } from "../../logbook.ts";
import { flightAddress } from "../../place.ts";
import type { FlightRow } from "../../store/schema.ts";

const several = (n: number, word: string): string =>
  `${n} ${word}${n === 1 ? "" : word.endsWith("ch") ? "es" : "s"}`;

function exerciseWords(row: FlightRow): string {
  const kinds = Object.entries(row.summary?.exercises ?? {});
  return kinds.map(([kind, n]) => several(n, plain(kind))).join(", ");
}

/** As everywhere: not met bold, met plain, cannot tell italic, not flown grey. */
function Verdicts({ row }: { row: FlightRow }) {
  const [notMet, met, cannotTell, notFlown] = ["not met", "met", "cannot tell", "not flown"].map((verdict) =>
    verdictsOf(row, verdict),
  );
  const parts = [
    notMet ? <b>{notMet} not met</b> : null,
    met ? <span>{met} met</span> : null,
    cannotTell ? <i>{cannotTell} cannot tell</i> : null,
    notFlown ? <span class="grey">{notFlown} not flown</span> : null,
  ].filter((part) => part !== null);
  if (parts.length === 0) return <span class="grey">{row.summary ? "not judged" : ""}</span>;
  const { overruled } = decided(row);
  return (
    <>
      {parts.flatMap((part, i) => (i === 0 ? [part] : [", ", part]))}
      {overruled > 0 && <span class="fine">{overruled} as the instructor decided</span>}
    </>
  );
}

function State({ row }: { row: FlightRow }) {
  if (row.trouble) return <span class="wrong">{row.trouble}</span>;
  if (!row.summary) return <>waits to be worked out</>;
  // Of many flights of one lesson the file alone tells whose is which.
  const file = row.fileNames[0] === titleOf(row) ? "" : shownName(row.fileNames[0] ?? "");
  const parts = [exerciseWords(row), ...row.tags.map((tag) => `“${tag}”`), file].filter(Boolean);
  return <>{parts.join(" · ")}</>;
}

function tick(id: string, on: boolean): void {
  const ids = new Set(ticked.value);
  if (on) ids.add(id);
  else ids.delete(id);
  ticked.value = ids;
}

interface Props {
  readonly row: FlightRow;
  readonly isTicked: boolean;
}

export function Row({ row, isTicked }: Props) {
  const { summary } = row;
  const title = shownName(titleOf(row));
  const start = summary?.startUtc;
  return (
    <tr>
      <td class="k">
        <input
          type="checkbox"
          checked={isTicked}
          onChange={(event) => tick(row.id, event.currentTarget.checked)}
          aria-label={`Tick ${title}${start ? `, ${day(start)}` : ""}`}
        />
      </td>
      <td class="d">
        {start ? day(start) : summary && "no times"}
        {start && <span class="fine">{clock(start)} UTC</span>}
      </td>
      <th scope="row" class="t">
        <a href={flightAddress(row.id)}>{title}</a>
        <span class="fine">
          <State row={row} />
        </span>
      </th>
      <td class="p">{row.pilot}</td>
      <td class="a">{row.aircraft}</td>
      <td class="w">{summary?.wind ? windLabel(summary.wind) : ""}</td>
      <td class="v">
        <Verdicts row={row} />
      </td>
    </tr>
  );
}
