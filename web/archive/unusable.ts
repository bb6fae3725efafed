/** A file that is no logbook, or a damaged one, in words. */
export class UnusableArchive extends Error {
  constructor(file: string, why: string) {
    super(`${file}: ${why}`);
    this.name = "UnusableArchive";
  }
}
