/** The drawings of the sheet: charts and plans as components, the pointed-at moment as one signal. */
export { CourseFigure, type CourseFigureProps } from "./CourseFigure.tsx";
export { type Cursor, createCursor } from "./cursor.ts";
export { WindArrow } from "./WindArrow.tsx";
