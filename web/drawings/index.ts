/** The drawings of the sheet: charts and plans as components, the pointed-at moment as one signal. */
export { CourseFigure, type CourseFigureProps } from "./CourseFigure.tsx";
export { CoursePlan } from "./CoursePlan.tsx";
export { type Cursor, createCursor } from "./cursor.ts";
export { FlightPlan } from "./FlightPlan.tsx";
export { InTurn, isGrowing } from "./InTurn.tsx";
export { LineUpHead, LineUpRow, needleRms } from "./LineUpRow.tsx";
export { Replay } from "./Replay.tsx";
export { thinned } from "./thinned.ts";
export { VelocityCircle } from "./VelocityCircle.tsx";
export { VerdictMark } from "./VerdictMark.tsx";
export { VerdictHead, VerdictRow } from "./VerdictRow.tsx";
export { WindArrow, WindSign } from "./WindArrow.tsx";
export { WindChart } from "./WindChart.tsx";
export { shownByHeight, WindHeight } from "./WindHeight.tsx";
export { WindLegArrow, WindLegs } from "./WindLegs.tsx";
