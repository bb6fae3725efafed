/** The signs of a plan of a hold with what they mean; only those that are drawn. */
import { lapClass } from "./holdLaps.ts";
import { line } from "./path.ts";
import { hachures } from "./plugins/coast.ts";

export function HoldKey(props: { laps: number; solved: boolean; stillAir: boolean; asked: boolean }) {
  const { laps, solved, stillAir, asked } = props;
  const signs = [
    { words: laps === 1 ? "flown, lap 1" : `flown, laps 1 to ${laps}`, sign: <Laps laps={laps} /> },
    ...(solved
      ? [{ words: "what this wind asked for", sign: <path class="solved" d={line(0, 8, 30, 8)} /> }]
      : []),
    ...(stillAir
      ? [{ words: "the same hold in still air", sign: <path class="still" d={line(0, 8, 30, 8)} /> }]
      : []),
    { words: "rolled out onto the inbound leg", sign: <circle class="ringed" cx={15} cy={8} r={3.6} /> },
    { words: "side not to be on", sign: <CoastSign /> },
    ...(asked
      ? [
          { words: "flown, in the rows by lap", sign: <circle class="dot" cx={15} cy={8} r={3.6} /> },
          {
            words: "asked for, with its doubt",
            sign: (
              <>
                <path class="solvedwhisk" d={line(6, 8, 24, 8)} />
                <path class="diamond" d="M15 2.6L19.4 8L15 13.4L10.6 8Z" />
              </>
            ),
          },
        ]
      : []),
  ];
  return (
    <ul class="key">
      {signs.map(({ words, sign }) => (
        <li key={words}>
          <svg class="drawing" width="30" height="16" viewBox="0 0 30 16" aria-hidden="true">
            {sign}
          </svg>
          {words}
        </li>
      ))}
    </ul>
  );
}

function Laps({ laps }: { laps: number }) {
  const shown = Math.min(laps, 3);
  return (
    <>
      {Array.from({ length: shown }, (_, i) => {
        const y = 8 + (i - (shown - 1) / 2) * 5;
        return <path key={i} class={`flown ${lapClass(i)}`} d={line(0, y, 30, y)} />;
      })}
    </>
  );
}

const CoastSign = () => (
  <>
    <path class="limit" d={line(0, 6, 30, 6)} />
    <path
      class="hach"
      d={hachures(0, 30, 6, 1)
        .map((h) => line(...h))
        .join("")}
    />
  </>
);
