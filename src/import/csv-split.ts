/** One line of delimited text to fields. */

/** The comma last: where another parts the fields, it may be that of decimals. */
export const DELIMITERS = [";", "\t", "|", ","] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** Fields without their spaces; quotes may hold a delimiter, doubled quotes one quote (RFC 4180, section 2). */
export function splitLine(line: string, delimiter: Delimiter): string[] {
  if (!line.includes('"')) return line.split(delimiter).map((field) => field.trim());
  const fields: string[] = [];
  let field = "";
  let quoted = false;
  for (let i = 0; i < line.length; i++) {
    const c = line[i]!;
    if (quoted) {
      if (c !== '"') field += c;
      else if (line[i + 1] === '"') {
        field += c;
        i++;
      } else quoted = false;
    } else if (c === '"' && field.trim() === "") {
      quoted = true;
      field = "";
    } else if (c === delimiter) {
      fields.push(field.trim());
      field = "";
    } else field += c;
  }
  fields.push(field.trim());
  return fields;
}
