/** The first entry of the archive, by which a logbook is told from a zipped log. */
export const MANIFEST = "hindtrack-logbook.json";
