// What do two hands make of one text?  Line by line: what either changed alone, and where both did.

/** Lines [from, to) of the old text gave way to `lines`. */
interface Hunk { from: number; to: number; lines: string[] }

/** Where neither changed anything: `kind` same.  Else what each of the three has there. */
export interface Piece { kind: "same" | "mine" | "theirs" | "alike" | "both"; line: number; base: string[]; mine: string[]; theirs: string[] }

const WORK_MOST = 4_000_000;

/** The lines that both have, by the longest common subsequence of what lies between equal ends. */
function pairs(a: string[], b: string[]): [number, number][] {
  const out: [number, number][] = [];
  let head = 0, tail = 0;
  while (head < a.length && head < b.length && a[head] === b[head]) out.push([head, head++]);
  while (tail < a.length - head && tail < b.length - head && a[a.length - 1 - tail] === b[b.length - 1 - tail]) tail++;
  const n = a.length - head - tail, m = b.length - head - tail;
  if (n * m <= WORK_MOST) {
    const wide = m + 1;
    const best = new Uint32Array((n + 1) * wide);
    for (let i = n - 1; i >= 0; i--)
      for (let j = m - 1; j >= 0; j--)
        best[i * wide + j] = a[head + i] === b[head + j] ? (best[(i + 1) * wide + j + 1] ?? 0) + 1 : Math.max(best[(i + 1) * wide + j] ?? 0, best[i * wide + j + 1] ?? 0);
    for (let i = 0, j = 0; i < n && j < m;) {
      if (a[head + i] === b[head + j]) out.push([head + i++, head + j++]);
      else if ((best[(i + 1) * wide + j] ?? 0) >= (best[i * wide + j + 1] ?? 0)) i++;
      else j++;
    }
  }
  for (let k = tail; k > 0; k--) out.push([a.length - k, b.length - k]);
  return out;
}

export function difference(a: string[], b: string[]): Hunk[] {
  const out: Hunk[] = [];
  let i = 0, j = 0;
  for (const [x, y] of [...pairs(a, b), [a.length, b.length]] as [number, number][]) {
    if (x > i || y > j) out.push({ from: i, to: x, lines: b.slice(j, y) });
    [i, j] = [x + 1, y + 1];
  }
  return out;
}

/** Lines [from, to) of the old text as the hunks leave them. */
function after(base: string[], hunks: Hunk[], from: number, to: number): string[] {
  const out: string[] = [];
  let at = from;
  for (const one of hunks) {
    out.push(...base.slice(at, one.from), ...one.lines);
    at = one.to;
  }
  return [...out, ...base.slice(at, to)];
}

function kindOf(mine: Hunk[], theirs: Hunk[], a: string[], b: string[]): Piece["kind"] {
  if (theirs.length === 0) return "mine";
  if (mine.length === 0) return "theirs";
  return a.join("\n") === b.join("\n") ? "alike" : "both";
}

export function threeWays(baseText: string, mineText: string, theirText: string): Piece[] {
  const base = baseText.split("\n");
  const left = difference(base, mineText.split("\n")), right = difference(base, theirText.split("\n"));
  const out: Piece[] = [];
  let at = 0, l = 0, r = 0;
  while (l < left.length || r < right.length) {
    const from = Math.min(left[l]?.from ?? Infinity, right[r]?.from ?? Infinity);
    let to = from;
    const mine: Hunk[] = [], theirs: Hunk[] = [];
    for (let grown = true; grown;) {
      grown = false;
      for (let one = left[l]; one !== undefined && one.from <= to; one = left[++l]) { mine.push(one); to = Math.max(to, one.to); grown = true; }
      for (let one = right[r]; one !== undefined && one.from <= to; one = right[++r]) { theirs.push(one); to = Math.max(to, one.to); grown = true; }
    }
    if (from > at) out.push({ kind: "same", line: at + 1, base: base.slice(at, from), mine: [], theirs: [] });
    const a = after(base, mine, from, to), b = after(base, theirs, from, to);
    out.push({ kind: kindOf(mine, theirs, a, b), line: from + 1, base: base.slice(from, to), mine: a, theirs: b });
    at = to;
  }
  if (at < base.length) out.push({ kind: "same", line: at + 1, base: base.slice(at), mine: [], theirs: [] });
  return out;
}

/** `choice`: for the n-th piece where both changed something, whose; null while one is open. */
export function together(pieces: Piece[], choice: ("mine" | "theirs" | "both" | undefined)[]): string | null {
  const out: string[] = [];
  let n = 0;
  for (const one of pieces) {
    if (one.kind === "same") out.push(...one.base);
    else if (one.kind === "theirs") out.push(...one.theirs);
    else if (one.kind !== "both") out.push(...one.mine);
    else {
      const whose = choice[n++];
      if (whose === undefined) return null;
      out.push(...(whose === "theirs" ? [] : one.mine), ...(whose === "mine" ? [] : one.theirs));
    }
  }
  return out.join("\n");
}
