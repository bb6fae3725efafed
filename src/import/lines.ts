/** Text in pieces to lines, whatever ends them. */

/** Characters of one line; what is beyond is not kept. The longest line of any format here has some hundreds. */
const MAX_LINE = 65_536;

/** Gives each line without its end (CR LF, LF or CR) and its number from 1. */
export class Lines {
  private rest = "";
  private number = 0;
  /** How many lines were cut at `MAX_LINE`. */
  cut = 0;
  private readonly take: (text: string, line: number) => void;
  constructor(take: (text: string, line: number) => void) {
    this.take = take;
  }

  write(text: string): void {
    const whole = this.rest === "" ? text : this.rest + text;
    let start = 0;
    for (let i = 0; i < whole.length; i++) {
      const c = whole.charCodeAt(i);
      if (c !== 10 && c !== 13) continue;
      if (c === 13 && i + 1 === whole.length) break; // a LF may follow in the next piece
      this.give(whole.slice(start, i));
      if (c === 13 && whole.charCodeAt(i + 1) === 10) i++;
      start = i + 1;
    }
    this.rest = whole.slice(start);
    // A line without end must not gather a whole hostile file: its middle is let go.
    if (this.rest.length > 2 * MAX_LINE) this.rest = this.rest.slice(0, MAX_LINE) + this.rest.slice(-1);
  }

  end(): void {
    const last = this.rest.endsWith("\r") ? this.rest.slice(0, -1) : this.rest;
    this.rest = "";
    if (last !== "") this.give(last);
  }

  private give(line: string): void {
    this.number++;
    if (line.length > MAX_LINE) this.cut++;
    this.take(line.length > MAX_LINE ? line.slice(0, MAX_LINE) : line, this.number);
  }
}
