/** The door of the import wing: bytes in; track, places, routes and issues out. */
export { Cancelled } from "./cancelled.ts";
export type { ByteSource, CsvColumn, ImportedLog, ReadOptions, Route, Waypoint } from "./imported.ts";
export { joinLogs } from "./join.ts";
export { readLog, readPlaces } from "./read.ts";
export { droppedByCode } from "./tally.ts";
