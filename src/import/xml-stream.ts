/** Streams XML text into one format's reader, with limits against hostile files and every fault counted. */
import { SaxesParser, type SaxesTagPlain } from "saxes";
import type { Place, Tally } from "./tally.ts";

/** Elements inside each other. GPX and KML need about 10; a parser's work grows with the depth. */
export const MAX_DEPTH = 64;
/** Characters from one tag to the next: of a text, comment, or the tag itself. A KML line of 100,000 points has 4 million. */
const MAX_STRETCH = 1 << 24;

/** What one format makes of the elements. Names come without their prefix. */
export interface XmlReader {
  /** `depth` is 1 for the root. */
  open(name: string, attributes: Readonly<Record<string, string>>, depth: number): void;
  text(text: string): void;
  close(name: string, depth: number): void;
  /** The text ends here, perhaps in the middle of a value: what is not complete is not taken. */
  end(): void;
}

/** The part of a name after its prefix: any prefix will do, declared or not. */
const localName = (name: string): string => {
  const colon = name.indexOf(":");
  return colon < 0 ? name : name.slice(colon + 1);
};

class LimitReached extends Error {}

/** Stands for an `&` that begins no reference, while the parser works: it would swallow the file up to the next `;`. */
const BARE = "\ue0ff";
const BARE_AMPERSAND = /&(?!(?:#\d{1,7}|#x[0-9a-f]{1,6}|[a-z_][\w.-]{0,63});)/gi;
/** The longest reference that is looked for. */
const REFERENCE_LENGTH = 66;

/**
 * Safe by what it does not do: no document type is read, no entity is expanded beyond the five of XML and
 * character references, nothing outside the text is looked up (saxes 6.0). After a fault it reads on, so that
 * one bad byte does not cost the rest of a flight; the first fault's place and their number are an issue,
 * `broken-xml`. At a limit it stops: `xml-too-deep`, `xml-too-long`.
 */
export class XmlStream {
  /** The root element's name without prefix, once seen. */
  root: string | null = null;
  stopped = false;
  private reader: XmlReader | null = null;
  private depth = 0;
  private tagLine = 1;
  private tagColumn = 1;
  private lastTag = 0;
  /** An `&` near the end of a piece waits for the next: what follows tells whether it begins a reference. */
  private carried = "";
  private hasBare = false;
  private readonly parser = new SaxesParser({ xmlns: false });
  private readonly tally: Tally;
  private readonly readerFor: (root: string, at: XmlStream) => XmlReader | null;

  /** `readerFor` gets the root's name and gives its reader, or null where the root is of no known format. */
  constructor(tally: Tally, readerFor: (root: string, at: XmlStream) => XmlReader | null) {
    this.tally = tally;
    this.readerFor = readerFor;
    const { parser } = this;
    parser.on("error", (fault) => this.fault(fault.message));
    parser.on("opentagstart", (tag) => this.tagStart(tag.name));
    parser.on("opentag", (tag) => this.open(tag));
    parser.on("text", (text) => {
      if (this.reader !== null) this.reader.text(this.hasBare ? this.restored(text, true) : text);
    });
    parser.on("cdata", (text) => {
      if (this.reader !== null) this.reader.text(this.hasBare ? this.restored(text, false) : text);
    });
    parser.on("closetag", (tag) => {
      if (this.reader !== null) this.reader.close(localName(tag.name), this.depth);
      this.depth--;
    });
  }

  /** Line of the `<` of the tag being read, from 1. */
  get line(): number {
    return this.tagLine;
  }

  place(point = -1): Place {
    return { line: this.tagLine, column: this.tagColumn, point };
  }

  write(text: string): void {
    if (this.stopped) return;
    const whole = this.carried === "" ? text : this.carried + text;
    const cut = whole.indexOf("&", Math.max(0, whole.length - REFERENCE_LENGTH));
    const end = cut < 0 ? whole.length : cut;
    this.carried = whole.slice(end);
    this.parse(end === whole.length ? whole : whole.slice(0, end));
    if (!this.stopped && this.parser.position - this.lastTag > MAX_STRETCH) {
      this.stop("xml-too-long", { limit: MAX_STRETCH });
    }
  }

  /** No more text comes: elements still open are a fault, and counted. */
  end(): void {
    if (!this.stopped) this.parse(this.carried);
    if (!this.stopped) this.guarded(() => this.parser.close());
    this.reader?.end();
  }

  private parse(text: string): void {
    let plain = text;
    if (text.includes("&")) {
      plain = text.replace(BARE_AMPERSAND, BARE);
      if (plain.includes(BARE)) this.hasBare = true;
    }
    this.guarded(() => this.parser.write(plain));
  }

  /** Puts the ampersands back; outside CDATA each is a fault. */
  private restored(text: string, faulty: boolean): string {
    if (!text.includes(BARE)) return text;
    if (faulty) this.fault("ampersand without a reference");
    return text.replaceAll(BARE, "&");
  }

  private guarded(parse: () => void): void {
    try {
      parse();
    } catch (error) {
      if (!(error instanceof LimitReached)) throw error;
    }
  }

  private stop(code: string, facts: Readonly<Record<string, number>>): void {
    this.stopped = true;
    const { line, column } = this.parser;
    this.tally.add(code, "error", { line, column: column + 1, point: -1 }, { facts });
  }

  private tagStart(name: string): void {
    const { parser } = this;
    this.lastTag = parser.position;
    // The parser stands one character past the name. Behind a line's end that character was the end.
    if (parser.column === 0) {
      this.tagLine = parser.line - 1;
      this.tagColumn = 0;
    } else {
      this.tagLine = parser.line;
      this.tagColumn = Math.max(0, parser.column - name.length - 1);
    }
  }

  private open(tag: SaxesTagPlain): void {
    if (++this.depth > MAX_DEPTH) {
      this.depth--;
      this.stop("xml-too-deep", { limit: MAX_DEPTH });
      throw new LimitReached();
    }
    const name = localName(tag.name);
    if (this.root === null) {
      this.root = name;
      this.reader = this.readerFor(name, this);
    }
    if (this.reader !== null) this.reader.open(name, tag.attributes, this.depth);
  }

  private fault(message: string): void {
    // Nothing is lost by space before the declaration, which some programs write.
    if (this.root === null && /XML declaration must be at the start/.test(message)) return;
    const { line, column } = this.parser;
    const reason = message
      .replace(/^\d+:\d+: /, "")
      .replace(/\.$/, "")
      .replace("undefined", "unknown");
    this.tally.add("broken-xml", "warning", { line, column: column + 1, point: -1 }, { facts: { reason } });
  }
}
