/** Reading was stopped because the caller asked for it: no fault of the file. */
export class Cancelled extends Error {
  constructor(file: string) {
    super(`reading of ${file} was cancelled`);
    this.name = "Cancelled";
  }
}
