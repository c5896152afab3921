// How are numbers shown?  Rounded for the eye; the exact value stands in the working.

const THIN = "\u2009";
const MINUS = "\u2212";

function grouped(text: string): string {
  const [whole = "", rest] = text.split(".");
  const apart = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, THIN) : whole;
  return rest === undefined ? apart : `${apart}.${rest}`;
}

/** Four figures, no more than the kind deserves. */
export function number(value: number | null | undefined, figures = 4): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return "not known";
  const size = Math.abs(value);
  const decimals = size === 0 ? 0 : Math.max(0, Math.min(6, figures - 1 - Math.floor(Math.log10(size))));
  const text = grouped(size.toFixed(decimals));
  return value < 0 && Number(size.toFixed(decimals)) !== 0 ? MINUS + text : text;
}

export function speed(value: number | null | undefined): string {
  return value === null || value === undefined ? "not known" : (value < 0 ? MINUS : "") + grouped(Math.abs(value).toFixed(0));
}

export function power(value: number | null | undefined): string {
  if (value === null || value === undefined) return "not known";
  const size = Math.abs(value);
  const text = size === 0 ? "0" : size < 10 ? size.toFixed(2) : size.toFixed(1);
  return value < 0 ? MINUS + text : text;
}

/** A reserve in percent with its sign; one more figure near nothing. */
export function percent(margin: number | null | undefined): string {
  if (margin === null || margin === undefined) return "";
  const value = margin * 100;
  const size = Math.abs(value);
  const text = size < 10 ? size.toFixed(1) : size < 1000 ? size.toFixed(0) : "999";
  return (size >= 1000 ? ">" : "") + (value < 0 ? MINUS : "+") + text;
}
