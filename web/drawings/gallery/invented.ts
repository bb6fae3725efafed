/** Invented courses with true geometry for looking at the drawings: a position integrated second by second in a steady wind. */
import type {
  CourseFacts,
  CourseSeries,
  DebriefDocument,
  DocumentExercise,
  DocumentLeg,
  FlightSeries,
  WindRecord,
} from "../contract.ts";

const RAD = Math.PI / 180;
const START = Date.UTC(2026, 9, 17, 9, 44, 10);

export interface Invention {
  readonly title: string;
  readonly form: "to" | "from" | "leg";
  readonly courseTrueDeg: number;
  readonly scale: CourseFacts["scale"];
  /** Miles to fly, and where it starts off course, right positive. */
  readonly miles: number;
  readonly offNm: number;
  readonly windFrom: number;
  readonly windKt: number;
  readonly timed: boolean;
  /** Heading less course after so many seconds and at such a place. */
  readonly steer: (seconds: number, crossTrackNm: number) => number;
  readonly startMs?: number;
}

const TAS = 100;

export const windOf = (from: number, kt: number, track: number): WindRecord => ({
  knowledge: "full",
  fromTrueDeg: from,
  speedKt: kt,
  alongKt: -kt * Math.cos((from - track) * RAD),
  acrossKt: -kt * Math.sin((from - track) * RAD),
  along95Kt: 2.6,
  across95Kt: 2,
  ellipse95Kt: { majorKt: 2.6, minorKt: 2, majorTrueDeg: 140 },
  tasKt: TAS,
  tas95Kt: 1.5,
  restsOn: "turns",
});

export const alongOnly = (kt: number): WindRecord => ({
  ...windOf(0, kt, 0),
  knowledge: "along",
  fromTrueDeg: null,
  speedKt: null,
  alongKt: kt,
  acrossKt: null,
  across95Kt: null,
  ellipse95Kt: null,
  restsOn: "courses",
});

export const unknownWind: WindRecord = {
  ...alongOnly(0),
  knowledge: "none",
  alongKt: null,
  along95Kt: null,
  tasKt: null,
  restsOn: "nothing",
};

export function invent(course: Invention): {
  exercise: DocumentExercise;
  series: CourseSeries;
  legs: DocumentLeg[];
} {
  const rows: number[][] = [];
  const start = course.startMs ?? START;
  let along = course.form === "to" ? -course.miles : 0;
  let across = course.offNm;
  let error = 0;
  const air = course.windFrom - course.courseTrueDeg;
  for (let t = 0; ; t++) {
    const wobble = 0.8 * Math.sin(t / 7) + 0.6 * Math.sin(t / 3.1);
    const nose = course.steer(t, across) + wobble;
    const vAlong = TAS * Math.cos(nose * RAD) - course.windKt * Math.cos(air * RAD);
    const vAcross = TAS * Math.sin(nose * RAD) - course.windKt * Math.sin(air * RAD);
    error += (Math.atan2(vAcross, vAlong) / RAD - error) * (t === 0 ? 1 : 0.35);
    const gone = course.form === "to" ? along + course.miles : along;
    const distance = course.form === "from" ? along : course.form === "to" ? -along : course.miles - along;
    if (gone > course.miles - 0.05 || t > 7200) break;
    const needle =
      course.scale.kind === "angular"
        ? Math.atan2(across, Math.max(distance, 0.01)) / RAD / course.scale.fullScaleDeg
        : across / course.scale.fullScaleNm;
    rows.push([
      start + t * 1000,
      along,
      Math.max(distance, 0),
      across,
      needle,
      error,
      course.courseTrueDeg + error,
      course.courseTrueDeg + nose,
      Math.hypot(vAlong, vAcross),
    ]);
    along += (Math.hypot(vAlong, vAcross) * Math.cos(error * RAD)) / 3600;
    across += (Math.hypot(vAlong, vAcross) * Math.sin(error * RAD)) / 3600;
  }
  const column = (k: number): Float64Array => Float64Array.from(rows, (row) => row[k]);
  const none = new Float64Array(rows.length).fill(Number.NaN);
  const series: CourseSeries = {
    pathStart: 0,
    timeMs: course.timed ? column(0) : none,
    alongNm: column(1),
    distanceToFixNm: column(2),
    crossTrackNm: column(3),
    needle: column(4),
    trackAngleErrorDeg: course.timed ? column(5) : none,
    trackTrueDeg: column(6),
    headingTrueDeg: course.timed ? column(7) : none,
    groundSpeedKt: course.timed ? column(8) : none,
    altitudeFt: new Float64Array(rows.length).fill(3000),
    judged: Uint8Array.from(rows, (row) => (course.scale.kind === "angular" && row[2] < 1 ? 0 : 1)),
  };
  return { exercise: exerciseOf(course, series), series, legs: legsOf(course, series) };
}

const utc = (ms: number): string => new Date(ms).toISOString();

function exerciseOf(course: Invention, series: CourseSeries): DocumentExercise {
  const n = series.needle.length;
  let worst = 0;
  for (let i = 0; i < n; i++) {
    if (series.judged[i] === 1 && Math.abs(series.needle[i]) > Math.abs(series.needle[worst])) worst = i;
  }
  const time = (i: number) => utc(series.timeMs[i]);
  const find = (from: number, test: (i: number) => boolean) => {
    for (let i = from; i < n; i++) if (test(i)) return i;
    return null;
  };
  const a = find(20, (i) => Math.abs(series.trackAngleErrorDeg[i]) > 5);
  const b = a === null ? null : find(a, (i) => Math.abs(series.needle[i]) > 0.25 && series.judged[i] === 1);
  const c = b === null ? null : find(b, (i) => series.trackAngleErrorDeg[i] * series.needle[i] < 0);
  let rms = 0;
  for (const value of series.crossTrackNm) rms += value * value;
  const seconds = (from: number, to: number | null) =>
    to === null ? null : (series.timeMs[to] - series.timeMs[from]) / 1000;
  const facts: CourseFacts = {
    form: course.form,
    fix: course.form === "leg" ? "BELVO" : "TARNO",
    fromFix: course.form === "leg" ? "TARNO" : null,
    courseTrueDeg: course.courseTrueDeg,
    courseMagneticDeg: course.courseTrueDeg - 2.5,
    variation: { degrees: 2.5, from: "model", model: "WMM2025" },
    scale: course.scale,
    line: { start: [35.6, 172.3], end: [35.5, 172.2] },
    flownNm: course.miles,
    judged: {
      fromUtc: course.timed ? time(0) : null,
      toUtc: course.timed ? time(n - 1) : null,
      seconds: course.timed ? n - 1 : null,
      distanceNm: course.miles - 1,
      shareOf: course.timed ? "time" : "distance",
      begins: course.form === "from" ? "near-station" : "start-of-match",
      ends: course.form === "from" ? "end-of-match" : "near-station",
    },
    crossTrack: {
      maxNm: series.crossTrackNm[worst],
      maxUtc: null,
      meanNm: 0.1,
      rmsNm: Math.sqrt(rms / n),
      doubt95Nm: 0.02,
    },
    needle: {
      max: Math.abs(series.needle[worst]),
      maxUtc: null,
      doubt95: 0.04,
      beyondQuarter: 0.4,
      beyondHalf: 0.2,
      beyondThreeQuarter: 0.07,
      beyondFull: 0,
    },
    trackAngleError: null,
    groundSpeedKt: course.timed ? 82 : null,
    wind: windOf(course.windFrom, course.windKt, course.courseTrueDeg),
    drift: null,
    windCorrection: null,
    intercept: null,
    excursions:
      !course.timed || a === null
        ? []
        : [
            {
              side: series.needle[b ?? a] > 0 ? "right" : "left",
              trackOffUtc: time(a),
              trackErrorDeg: 7,
              trackTrueDeg: course.courseTrueDeg + 7,
              quarterUtc: b === null ? null : time(b),
              correctedUtc: c === null ? null : time(c),
              silentS: seconds(a, b),
              leadS: seconds(a, c),
              worstCrossTrackNm: series.crossTrackNm[worst],
              worstNeedle: series.needle[worst],
              worstUtc: time(worst),
            },
          ],
    reversals: null,
    altitude: null,
    cannotTell: [],
  };
  return {
    kind: "course",
    title: course.title,
    source: "brief",
    startUtc: course.timed ? time(0) : null,
    endUtc: course.timed ? time(n - 1) : null,
    match: { by: "geometry", confidence: 0.9 },
    facts,
    findings: [],
    verdicts: [],
    whatWouldHaveWorked: null,
  };
}

function legsOf(course: Invention, series: CourseSeries): DocumentLeg[] {
  if (!course.timed) return [];
  const [from, to] = [series.timeMs[0], series.timeMs[series.timeMs.length - 1]];
  const cuts = [from, from + 0.2 * (to - from), from + 0.6 * (to - from), to];
  const winds = [
    alongOnly(-17),
    windOf(course.windFrom - 1, course.windKt, course.courseTrueDeg),
    windOf(course.windFrom, course.windKt, course.courseTrueDeg),
  ];
  return winds.map((wind, k) => ({
    kind: "straight",
    startUtc: utc(cuts[k]),
    endUtc: utc(cuts[k + 1]),
    trackTrueDeg: course.courseTrueDeg + (k === 1 ? 7 : 0),
    turnDeg: 0,
    groundSpeedKt: 82,
    altitudeFt: 3000,
    verticalFpm: 0,
    wind,
    headingTrueDeg: null,
    driftDeg: null,
  }));
}

const vor = { id: "vor", kind: "angular", fullScaleDeg: 10, label: "VOR, ±10°" } as const;
const rnav1 = { id: "rnav-1", kind: "linear", fullScaleNm: 1, label: "RNAV terminal, ±1 NM" } as const;

export const INVENTIONS: readonly Invention[] = [
  {
    title: "Course 218°M to TARNO",
    form: "to",
    courseTrueDeg: 220.5,
    scale: vor,
    miles: 10.4,
    offNm: -0.03,
    windFrom: 192,
    windKt: 20,
    timed: true,
    steer: (t, x) => (t < 85 ? -5.5 : t < 285 ? (t < 215 ? 2 : 0) : x > 0.12 ? -30 : -7 - 8 * x),
  },
  {
    title: "Course 300°M from TARNO",
    form: "from",
    courseTrueDeg: 302.5,
    scale: vor,
    miles: 21,
    offNm: 0.02,
    windFrom: 192,
    windKt: 20,
    timed: true,
    steer: (t, x) => (t < 400 ? -11 - 10 * x : -4),
  },
  {
    title: "Leg TARNO to BELVO, terminal scale",
    form: "leg",
    courseTrueDeg: 40,
    scale: rnav1,
    miles: 8,
    offNm: 1.6,
    windFrom: 320,
    windKt: 15,
    timed: true,
    steer: (_, x) => Math.max(-45, Math.min(45, -40 * x)) - 8,
  },
  {
    title: "Course 218°M to TARNO, no times",
    form: "to",
    courseTrueDeg: 220.5,
    scale: vor,
    miles: 9,
    offNm: -0.5,
    windFrom: 192,
    windKt: 20,
    timed: false,
    steer: (_, x) => -6 - 30 * x,
  },
  {
    title: "Course 300°M from TARNO, fitted",
    form: "from",
    courseTrueDeg: 302.5,
    scale: vor,
    miles: 30,
    offNm: 0,
    windFrom: 192,
    windKt: 20,
    timed: true,
    steer: (t, x) => -11 - 20 * x + 9 * Math.sin(t / 40),
  },
];

/** A flight of two straights and two full turns, enough for an overview and a velocity circle. */
export function inventFlight(): { document: DebriefDocument; series: FlightSeries } {
  const rows: number[][] = [];
  let [latitude, longitude, heading] = [35.45, 172.1, 20];
  const [windEast, windNorth] = [-20 * Math.sin(192 * RAD), -20 * Math.cos(192 * RAD)];
  for (let t = 0; t < 1800; t++) {
    const turning = (t > 600 && t < 750) || (t > 1300 && t < 1420);
    if (turning) heading += 3;
    const [e, n] = [TAS * Math.sin(heading * RAD) + windEast, TAS * Math.cos(heading * RAD) + windNorth];
    rows.push([
      START + t * 1000,
      latitude,
      longitude,
      turning ? 1 : 0,
      e + 0.6 * Math.sin(t),
      n + 0.6 * Math.cos(1.7 * t),
    ]);
    latitude += n / 3600 / 60;
    longitude += e / 3600 / 60 / Math.cos(latitude * RAD);
  }
  const column = (k: number) => Float64Array.from(rows, (row) => row[k]);
  const first = invent(INVENTIONS[0]);
  const path = {
    timeMs: column(0),
    latitude: column(1),
    longitude: column(2),
    altitudeFt: column(0),
    groundSpeedKt: column(0),
    trackTrueDeg: column(0),
    headingTrueDeg: column(0),
    velocityEastKt: column(4),
    velocityNorthKt: column(5),
    turning: Uint8Array.from(rows, (row) => row[3]),
  };
  const facts = first.exercise.facts;
  const at = (row: number): [number, number] => [rows[row][1], rows[row][2]];
  const exercise = { ...first.exercise, facts: facts && { ...facts, line: { start: at(60), end: at(590) } } };
  const document: DebriefDocument = {
    format: "hindtrack-debrief",
    version: 1,
    caution:
      "Training aid, after the flight only. Not for navigation, not an official grade, no substitute for the instructor, the published procedure, the aircraft’s instruments or local rules. GPS height is not an altimeter.",
    log: {
      name: "invented",
      file: "invented.gpx",
      kind: "gpx",
      timed: true,
      startUtc: null,
      endUtc: null,
      points: 1800,
      used: 1800,
      dropped: {},
      medianIntervalS: 1,
      longestGapS: 1,
      distanceNm: 50,
      flights: [],
      flight: 0,
      issues: [],
    },
    brief: {
      title: "Invented",
      file: "invented.yaml",
      source: "yaml",
      standard: null,
      aircraft: null,
      fixes: [
        { ident: "TARNO", latitude: 35.6, longitude: 172.3, kind: "vor" },
        { ident: "BELVO", latitude: 35.72, longitude: 172.1, kind: "waypoint" },
      ],
      issues: [],
    },
    variation: { degrees: 2.5, model: "WMM2025" },
    wind: { ...windOf(192, 20, 0), altitudeFt: 3000, priorsUsed: [] },
    legs: first.legs,
    exercises: [exercise, { ...exercise, title: "second" }],
    remarks: [],
  };
  const part = (from: number, rowsLong: number) => ({
    ...first.series,
    pathStart: from,
    alongNm: first.series.alongNm.slice(0, rowsLong),
  });
  return { document, series: { path, exercises: [part(60, 400), part(800, 400)] } };
}
