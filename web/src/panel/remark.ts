// What does the server remark on a text, line by line?
import type { TryAnswer } from "../wire/view";

export interface Remark { line: number; column: number; level: "refuse" | "warn" | "note"; says: string }

/** What cannot be read first, then what is found. */
export function remarks(got: TryAnswer | null): Remark[] {
  if (got === null) return [];
  const wrong = (got.wrong?.messages ?? []).map((one): Remark => ({ line: one.line, column: one.column, level: "refuse", says: one.says + (one.expected ? `; expected: ${one.expected}` : "") }));
  const found = got.findings.filter((one) => one.state !== "waived").map((one): Remark => ({ line: one.line, column: one.column, level: one.level, says: one.says }));
  return [...wrong, ...found];
}
