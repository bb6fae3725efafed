/** A page for looking at the drawings while they are made; it is no part of the build. */
import { render } from "preact";
import type { DebriefDocument, FlightSeries } from "./contract.ts";
import { alongOnly, INVENTIONS, invent, inventFlight, unknownWind, windOf } from "./gallery/invented.ts";
import {
  CourseFigure,
  CoursePlan,
  createCursor,
  FlightPlan,
  LineUpHead,
  LineUpRow,
  needleRms,
  Replay,
  VelocityCircle,
  WindArrow,
  WindLegs,
} from "./index.ts";

const cursor = createCursor();
const wind = windOf(192, 20, 220.5);
const flight: { document: DebriefDocument; series: FlightSeries } = inventFlight();

function Gallery() {
  const courses = INVENTIONS.map(invent);
  return (
    <>
      <section>
        <LineUpHead />
        {courses.map(({ exercise, series }) => (
          <LineUpRow key={exercise.title} exercise={exercise} rms={needleRms(series.needle, series.judged)} />
        ))}
      </section>
      {courses.map(({ exercise, series, legs }, k) => (
        <section key={exercise.title}>
          <h2>{exercise.title}</h2>
          <CourseFigure exercise={exercise} series={series} legs={legs} cursor={cursor} fit={k === 4} />
          <CoursePlan
            exercise={exercise}
            series={series}
            wind={exercise.facts?.wind ?? null}
            cursor={cursor}
            fit={k === 4}
          />
          {k === 0 && <Replay exercise={exercise} series={series} cursor={cursor} />}
        </section>
      ))}
      <section>
        <FlightPlan document={flight.document} series={flight.series} cursor={cursor} />
        <VelocityCircle document={flight.document} series={flight.series} />
        <WindArrow wind={wind} />
        <WindArrow wind={alongOnly(13)} trackTrueDeg={10} />
        <WindArrow wind={unknownWind} />
        <WindLegs legs={courses[0].legs} />
      </section>
    </>
  );
}

const target = document.getElementById("gallery");
if (target) render(<Gallery />, target);
