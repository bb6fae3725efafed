/** The door of the course wing: facts of a course as flown, and courses fitted where there is no brief. */
export { descentPointRow } from "./descent-rows.ts";
export { type FittedExercise, fitCourses } from "./fit.ts";
export { type CourseMeasured, type CourseToMeasure, measureCourse } from "./measure.ts";
export { type ArcMeasured, type ArcToMeasure, measureArc } from "./measure-arc.ts";
export { type DescentMeasured, type DescentToMeasure, measureDescent } from "./measure-descent.ts";
export type { CoursePath } from "./path.ts";
