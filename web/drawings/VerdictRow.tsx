/** A row of the line-up: every verdict of one exercise as a dot on the way from 0 to twice its own limit, always 52 mm. */
import { decidingVerdict, says, type Verdict } from "./contract.ts";
import { line } from "./path.ts";
import { fixedScales, PX_PER_MM } from "./scale.ts";
import { MOST_LIMITS, verdictPlace } from "./verdictGeometry.ts";

const LEFT_PX = 4;
const LINE_PX = fixedScales(false).mmPerFullScaleOfLineUp * PX_PER_MM;
const WIDTH_PX = Math.ceil(LEFT_PX + LINE_PX + 40);
const HEIGHT_PX = 34;
const MIDDLE = HEIGHT_PX / 2;
const TICKS = [
  [0, "0"],
  [0.5, "half"],
  [1, "limit"],
  [2, "twice"],
] as const;

const x = (limits: number): number => LEFT_PX + (limits / MOST_LIMITS) * LINE_PX;

/** Hachures on the far side of the limit, as every limit has them. */
const HACHURES = Array.from({ length: 6 }, (_, i) => line(x(1), 1 + 6 * i, x(1) + 5, 2.5 + 6 * i)).join("");

export function VerdictRow({ verdicts }: { verdicts: readonly Verdict[] }) {
  const decides = decidingVerdict(verdicts);
  const others = verdicts.filter((v) => v !== decides && says(v));
  const place = decides && verdictPlace(decides);
  const name = decides ? `${decides.verdict}: ${decides.title}` : "no verdict";
  return (
    <svg
      class="drawing line-up"
      role="img"
      width={WIDTH_PX}
      height={HEIGHT_PX}
      viewBox={`0 0 ${WIDTH_PX} ${HEIGHT_PX}`}
      aria-label={name}
    >
      <title>{name}</title>
      {TICKS.filter(([at]) => at !== 1).map(([at]) => (
        <path key={at} class="hair" d={line(x(at), 0, x(at), HEIGHT_PX)} />
      ))}
      <path class="limit" d={line(x(1), 0, x(1), HEIGHT_PX)} stroke-dasharray={place ? undefined : "2 3"} />
      {place && <path class="hach" d={HACHURES} />}
      {place && <path class="axis" d={line(x(0), MIDDLE, x(Math.max(place.at, 1)), MIDDLE)} />}
      {others.map((verdict) => {
        const at = verdictPlace(verdict)?.at;
        return at === undefined ? null : (
          <circle key={verdict.criterion} class="dot-o" cx={x(at)} cy={MIDDLE} r={3.4} />
        );
      })}
      {place && (
        <>
          <path class="whisk" d={line(x(place.whisker[0]), MIDDLE, x(place.whisker[1]), MIDDLE)} />
          <circle class="dot" cx={x(place.at)} cy={MIDDLE} r={3.8} />
        </>
      )}
      {place?.past && (
        <text class="lab" x={x(MOST_LIMITS) + 8} y={MIDDLE + 4}>
          ×{place.past.toFixed(1)}
        </text>
      )}
    </svg>
  );
}

/** The ticks over a column of rows. */
export function VerdictHead() {
  return (
    <svg
      class="drawing line-up"
      aria-hidden="true"
      width={WIDTH_PX}
      height={16}
      viewBox={`0 0 ${WIDTH_PX} 16`}
    >
      {TICKS.map(([at, text]) => (
        <text key={at} class={at === 1 ? "lab b" : "lab"} x={x(at)} y={12} text-anchor="middle">
          {text}
        </text>
      ))}
    </svg>
  );
}
