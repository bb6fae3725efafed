/** Reading was stopped because the caller asked for it: no fault of the file. */
export class Cancelled extends Error {
  constructor(file: string) {
    super(`${file}: cancelled while it was read; nothing was written for it`);
    this.name = "Cancelled";
  }
}
