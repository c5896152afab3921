// How is a number with its unit written by hand?  A decimal comma is taken, and said back.
import { useEffect, useState } from "preact/hooks";
import { told } from "../state/store";

/** The text with a decimal point; `says`: how it was read, or why it was not. */
export function readAmount(text: string, unit: string): { text: string | null; says: string | null } {
  const trimmed = text.trim().replace(/\u2212/g, "-").replace(/[\u2009\u00a0\u202f]/g, " ");
  const found = /^([+-]?[\d.,' ]*\d)\s*(.*)$/.exec(trimmed);
  if (found === null || trimmed === "") return { text: trimmed, says: null };
  const digits = found[1] ?? "", rest = found[2] === "" ? unit : found[2] ?? unit;
  const commas = digits.split(",").length - 1;
  if (commas === 0) return { text: `${digits.replace(/[' ]/g, "")}${rest === "" ? "" : ` ${rest}`}`, says: null };
  const [whole = "", part = ""] = digits.split(",");
  if (commas > 1 || digits.includes(".") || (/^\d{3}$/.test(part) && !/^[+-]?0*$/.test(whole)))
    return { text: null, says: `${digits} can be read in two ways; write it with a decimal point and nothing between thousands` };
  const plain = `${whole.replace(/[' ]/g, "")}.${part}${rest === "" ? "" : ` ${rest}`}`;
  return { text: plain, says: `read as ${plain}` };
}

/** Taken at Enter or when it is left; empty: what stands without it. */
export function Field(props: { label: string; value: string; empty: string; unit: string; take: (text: string) => void }) {
  const [text, setText] = useState(props.value);
  const [says, setSays] = useState<string | null>(null);
  useEffect(() => setText(props.value), [props.value]);
  const take = (): void => {
    const got = readAmount(text, props.unit);
    setSays(got.says);
    if (got.says !== null) told.value = { says: `${props.label}: ${got.says}.`, bad: got.text === null };
    if (got.text === null || got.text === props.value) return;
    setText(got.text);
    props.take(got.text);
  };
  return (
    <label class="field">{props.label}{" "}
      <input type="text" size={12} value={text} placeholder={props.empty} aria-invalid={says !== null && says.includes("two ways")}
        onInput={(event) => setText(event.currentTarget.value)} onBlur={take} onKeyDown={(event) => { if (event.key === "Enter") { event.preventDefault(); take(); } }} />
      {says !== null && <small>{says}</small>}
    </label>
  );
}
