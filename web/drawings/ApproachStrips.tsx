/** Beneath a profile: the lateral needle, that of the glide path with its doubt, and the rate flown against the one needed. */
import type { ProfileLayout } from "./approachLayout.ts";
import type { Stretch } from "./approachStretches.ts";
import type { ApproachRecord, ApproachSeries } from "./contract.ts";
import { JudgedLine } from "./JudgedLine.tsx";
import { needleLimit } from "./needleLimit.ts";
import { pathThrough } from "./path.ts";
import { DoubtBand, Strip, type StripFrame, stripY } from "./Strip.tsx";
import type { Point } from "./windGeometry.ts";
import { fractionText } from "./words.ts";

/** Under a quarter of full scale a needle is read as centred. Common practice, no source. */
const QUIET_SHARE = 0.25;

interface Props {
  readonly exercise: ApproachRecord;
  readonly series: ApproachSeries;
  readonly stretches: readonly Stretch[];
  readonly l: ProfileLayout;
  readonly clip: string;
  readonly narrow: boolean;
  readonly points: (from: number, to: number, y: (row: number) => number) => Point[];
}

export function ApproachStrips(props: Props) {
  const { exercise, series, l, narrow } = props;
  const { facts } = exercise;
  if (!facts) return null;
  const limits = {
    lateral: needleLimit(exercise.verdicts, "approach-needle"),
    glide: needleLimit(exercise.verdicts, "approach-glide-path"),
  };
  const words = (limit: number) => (narrow ? "" : `${fractionText(limit)} scale`);
  const { glidePathNeedle, glidePathFullScaleFt, height95Ft } = series;
  const doubt = (row: number) => height95Ft[row] / glidePathFullScaleFt[row];
  return (
    <g>
      <Strip
        frame={l.lateral}
        title={`Lateral needle, share of full scale${narrow ? "" : ` (${facts.guidance.label})`}`}
        ticks={[
          [-1, "1 L"],
          [0, "0"],
          [1, "1 R"],
        ]}
        quiet={QUIET_SHARE}
        limit={limits.lateral}
        limitWords={words(limits.lateral)}
      >
        <Line {...props} frame={l.lateral} column={series.needle} limit={limits.lateral} />
      </Strip>
      {l.glide && facts.glidePath && (
        <Strip
          frame={l.glide}
          title={`Glide path needle, share of full scale${narrow ? "" : ` (${facts.glidePath.label})`}`}
          ticks={[
            [1, "1 high"],
            [0, "0"],
            [-1, "1 low"],
          ]}
          quiet={QUIET_SHARE}
          limit={limits.glide}
          limitWords={words(limits.glide)}
        >
          <Line {...props} frame={l.glide} column={glidePathNeedle} limit={limits.glide} doubt={doubt} />
        </Strip>
      )}
      {l.rate && (
        <Strip
          frame={l.rate}
          title={
            narrow
              ? "Down, ft/min; dashed: needed"
              : "Rate of descent, ft/min; dashed: needed to the threshold"
          }
          ticks={[
            [500, "500 up"],
            [0, "0"],
            [-500, "500"],
            [-1000, "1,000"],
            [-1500, "1,500"],
          ]}
        >
          <Needed {...props} frame={l.rate} />
          <Line {...props} frame={l.rate} column={series.verticalFpm} limit={null} />
        </Strip>
      )}
    </g>
  );
}

const seen = ({ unseen }: Stretch): boolean => !unseen;

/** A column, thick where it is judged and heavy beyond the limit there. */
function Line(
  props: Props & {
    frame: StripFrame;
    column: Float64Array;
    limit: number | null;
    doubt?: (row: number) => number;
  },
) {
  const { series, l, stretches, points, frame, column, limit, doubt, clip } = props;
  const zero = stripY(frame, 0);
  const limits = (limit === null ? [] : [limit, -limit]).map((value) => {
    const y = stripY(frame, value);
    return [y, y > zero ? 1 : -1] as const;
  });
  return (
    <g clip-path={`url(#${clip})`}>
      {doubt &&
        stretches
          .filter(seen)
          .map(({ from, to }) => (
            <DoubtBand
              key={from}
              upper={points(from, to, (row) => stripY(frame, column[row] + doubt(row)))}
              lower={points(from, to, (row) => stripY(frame, column[row] - doubt(row)))}
            />
          ))}
      <JudgedLine
        stretches={stretches}
        point={(row) => [l.x(series.distanceToThresholdNm[row]), stripY(frame, column[row])]}
        limits={limits}
      />
    </g>
  );
}

/** Near the threshold the way to go shrinks to nothing and the rate needed means nothing, NM. Own choice. */
const NEEDED_UNTIL_NM = 0.3;

function Needed({ series, stretches, frame, points, clip }: Props & { frame: StripFrame }) {
  const y = (row: number) =>
    series.distanceToThresholdNm[row] > NEEDED_UNTIL_NM ? stripY(frame, series.neededFpm[row]) : Number.NaN;
  return (
    <g clip-path={`url(#${clip})`}>
      {stretches.filter(seen).map(({ from, to }) => (
        <path key={from} class="solved" d={pathThrough(points(from, to, y))} />
      ))}
    </g>
  );
}
