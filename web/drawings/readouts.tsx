/** The two readouts of the replay: a rule with a bar for the needle, and the track against the course. */

import { type CourseRecord, flownDirection, needleSize } from "./contract.ts";
import { Drawing } from "./Drawing.tsx";
import { line } from "./path.ts";
import { hachures } from "./plugins/coast.ts";
import { columnCourse, sideWord } from "./words.ts";

/** Full scale is 100 px on this rule; the needle goes left when the aircraft is right of course. */
export function NeedleRule({ needle }: { needle: number }) {
  const x = 125 - Math.max(-1, Math.min(1, needle)) * 100;
  const name = `needle ${needleSize(needle)} ${sideWord(-needle)}`;
  return (
    <Drawing kind="" name={name} width={250} height={58}>
      <text class="lab-i" x="125" y="10" text-anchor="middle">
        needle
      </text>
      <rect class="quiet" x="100" y="31" width="50" height="12" />
      {[25, 50, 75, 100, 125, 150, 175, 200, 225].map((at) => (
        <path key={at} class="axis" d={line(at, 24, at, 30)} />
      ))}
      <path class="axis" d={line(17, 30, 233, 30)} />
      {([1, -1] as const).map((far) => (
        <g key={far} transform={`translate(${125 - far * 75} 24) rotate(90)`}>
          <path class="limit" d={line(0, 0, 20, 0)} />
          <path
            class="hach"
            d={hachures(0, 20, 0, far)
              .map((h) => line(...h))
              .join("")}
          />
        </g>
      ))}
      <path class="course" d={line(125, 22, 125, 44)} />
      {Number.isFinite(x) && <path class="needle-bar" d={line(x, 17, x, 46)} />}
      <text class="lab" x="17" y="57">
        full left
      </text>
      <text class="lab" x="233" y="57" text-anchor="end">
        full right
      </text>
    </Drawing>
  );
}

export function TrackAgainstCourse({ exercise, error }: { exercise: CourseRecord; error: number }) {
  const facts = exercise.facts;
  if (facts === null) return null;
  const { courseTrueDeg, courseMagneticDeg } = facts;
  const course = flownDirection(courseTrueDeg, courseMagneticDeg);
  const known = Number.isFinite(error);
  const track = columnCourse(courseTrueDeg + error, facts);
  const name = `course ${course}, track ${track}`;
  return (
    <Drawing kind="r2" name={name} width={210} height={58}>
      <path class="course" d={line(95, 54, 95, 6)} />
      {known && (
        <g transform={`rotate(${error.toFixed(1)} 95 54)`}>
          <path class="flown" d={line(95, 54, 95, 8)} />
        </g>
      )}
      <circle class="fixdot" cx="95" cy="54" r="2.4" />
      <text class="lab" x="0" y="30">
        course {course}
      </text>
      <text class="lab b halo" x="118" y="48">
        track {track}
      </text>
    </Drawing>
  );
}
