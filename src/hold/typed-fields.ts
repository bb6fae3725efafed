/** Fields of text read one by one, with what is wrong in them as issues. */
import type { Issue } from "../quantity/issue.ts";
import type { HoldField, TypedHold } from "./typed-hold.ts";

export interface Range {
  readonly least: number;
  readonly most: number;
  readonly unit: string;
}

/** Readers that answer null where a field is absent or wrong; what is wrong is in `issues`. */
export function typedFields(typed: TypedHold) {
  const issues: Issue[] = [];
  const refuse = (field: HoldField, code: string, facts: Issue["facts"] = {}): null => {
    issues.push({ code, severity: "error", where: { path: field }, facts: { field, ...facts } });
    return null;
  };
  const written = (field: HoldField): string | null => typed[field]?.trim() || null;
  const unreadable = (field: HoldField): null =>
    refuse(field, "hold-field-unreadable", { text: written(field) });
  const within = (field: HoldField, value: number, { least, most, unit }: Range): number | null =>
    value >= least && value <= most
      ? value
      : refuse(field, "hold-field-out-of-range", { value, least, most, unit });
  return {
    issues,
    refuse,
    written,
    unreadable,
    within,
    must: (field: HoldField): string | null => written(field) ?? refuse(field, "hold-field-missing"),
    /** A number, perhaps with its unit behind it and with commas between thousands. */
    amount(field: HoldField, range: Range, unit: RegExp): number | null {
      const text = written(field);
      if (text === null) return null;
      const plain = text
        .replace(/(\d),(?=\d{3}\b)/g, "$1")
        .replace(unit, "")
        .trim();
      return /^-?\d+(\.\d+)?$/.test(plain) ? within(field, Number(plain), range) : unreadable(field);
    },
    /** The first of the words where nothing is written. */
    choice<T extends string>(field: HoldField, [usual, ...others]: readonly [T, ...T[]]): T {
      const text = written(field)?.toLowerCase() ?? usual;
      return [usual, ...others].find((word) => word === text) ?? unreadable(field) ?? usual;
    },
  };
}
export type TypedFields = ReturnType<typeof typedFields>;
