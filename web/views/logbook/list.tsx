/** The flights that were looked for, in the order that was asked; a long list grows as it is read. */
import { useEffect, useRef, useState } from "preact/hooks";
import { EVERYTHING, type Order } from "../../listing.ts";
import { found, search, standing, ticked } from "../../logbook.ts";
import { Row } from "./row.tsx";

/** More than a screen, few enough that the list stands at once. Chosen. */
const STEP = 40;

const HEADS: readonly (readonly [order: Order, words: string, cell: string])[] = [
  ["date", "Date", "d"],
  ["title", "Flight", "t"],
  ["pilot", "Pilot", "p"],
  ["aircraft", "Aircraft", "a"],
  ["wind", "Wind of the day", "w"],
  ["not met", "Verdicts", "v"],
];

/** Numbers and days are wanted from the top, names from A. */
const BACKWARDS_FIRST = new Set<Order>(["date", "wind", "not met", "added"]);

function orderBy(order: Order): void {
  const now = search.value;
  const backwards = now.order === order ? !now.backwards : BACKWARDS_FIRST.has(order);
  search.value = { ...now, order, backwards };
}

function Head({ order, words, cell }: { order: Order; words: string; cell: string }) {
  const { order: now, backwards } = search.value;
  const sort = now === order ? (backwards ? "descending" : "ascending") : undefined;
  return (
    <th scope="col" class={cell} aria-sort={sort}>
      <button type="button" onClick={() => orderBy(order)}>
        {words}
        {sort && <span aria-hidden="true">{backwards ? " ↓" : " ↑"}</span>}
      </button>
    </th>
  );
}

function TickAll() {
  const all = found.value;
  const isAll = all.length > 0 && all.every(({ id }) => ticked.value.has(id));
  return (
    <input
      type="checkbox"
      checked={isAll}
      onChange={() => {
        ticked.value = isAll ? new Set() : new Set(all.map(({ id }) => id));
      }}
      aria-label="Tick all that are listed"
    />
  );
}

/** Calls `grow` when the end of the list comes into sight. */
function useGrowing(grow: () => void) {
  const end = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (!end.current) return;
    const watch = new IntersectionObserver((seen) => seen.some((s) => s.isIntersecting) && grow(), {
      rootMargin: "600px",
    });
    watch.observe(end.current);
    return () => watch.disconnect();
  });
  return end;
}

export function List() {
  const [most, setMost] = useState(STEP);
  const asked = search.value;
  // Another search begins from the top.
  useEffect(() => setMost(STEP), [asked]);
  const all = found.value;
  const shown = all.slice(0, most);
  const more = () => setMost(most + STEP);
  const end = useGrowing(more);
  if (all.length === 0)
    return (
      <p class="none">
        None of the {standing.value.length} flights is so.{" "}
        <button
          type="button"
          onClick={() => {
            search.value = EVERYTHING;
          }}
        >
          Show all
        </button>
      </p>
    );
  return (
    <>
      <table class="data flights">
        <thead>
          <tr>
            <td class="k">
              <TickAll />
            </td>
            {HEADS.map(([order, words, cell]) => (
              <Head key={order} order={order} words={words} cell={cell} />
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map((row) => (
            <Row key={row.id} row={row} isTicked={ticked.value.has(row.id)} />
          ))}
        </tbody>
      </table>
      {all.length > most && (
        <p ref={end} class="none">
          <button type="button" onClick={more}>
            Show more: {all.length - most} are left
          </button>
        </p>
      )}
    </>
  );
}
