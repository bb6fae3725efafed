/** The door of the import wing: bytes in; track, places, routes and issues out. */
export { Cancelled } from "./cancelled.ts";
export { readAngle } from "./csv-angle.ts";
export { beginningOfTable, type TableBeginning } from "./csv-beginning.ts";
export type { ByteSource, CsvColumn, ImportedLog, ReadOptions, Route, Waypoint } from "./imported.ts";
export { CSV_COLUMNS } from "./imported.ts";
export { joinLogs } from "./join.ts";
export { type FlightLabel, isLabelTable, type LabelTable, readLabelTable } from "./label-table.ts";
export { type LabelledFiles, labelledFiles } from "./labelled-files.ts";
export { readRunwayCourse } from "./point-columns.ts";
export { pointOf, type ReadPoints, readPoints } from "./points.ts";
export { readLog, readPlaces } from "./read.ts";
export { droppedByCode } from "./tally.ts";
