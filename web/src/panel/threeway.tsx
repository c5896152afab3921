// The file changed while it was written here: what does each hand have, and what becomes of both?
import { useMemo, useState } from "preact/hooks";
import { threeWays, together, type Piece } from "./merge";

type Whose = "mine" | "theirs" | "both";

function Lines(props: { lines: string[]; was: string[] }) {
  if (props.lines.length === 0) return <i>nothing</i>;
  return <pre>{props.lines.map((row, index) => (props.was.includes(row) ? <span key={index}>{`${row}\n`}</span> : <b key={index}>{`${row}\n`}</b>))}</pre>;
}

const SAYS: Record<Exclude<Piece["kind"], "same">, string> = {
  mine: "Only you changed it: yours stays.", theirs: "Only the file changed: it stays.",
  alike: "Both changed it alike.", both: "Both changed it:",
};

function Row(props: { one: Piece; n: number; choice: Whose | undefined; choose: (whose: Whose) => void }) {
  const { one } = props;
  if (one.kind === "same") return null;
  return (
    <tr>
      <th scope="row">line {one.line}</th>
      <td><Lines lines={one.base} was={one.base} /></td>
      <td><Lines lines={one.mine} was={one.base} /></td>
      <td><Lines lines={one.theirs} was={one.base} /></td>
      <td>
        {SAYS[one.kind]}
        {one.kind === "both" && <div role="group" aria-label={`line ${one.line}: whose`}>
          {(["mine", "theirs", "both"] as const).map((whose) => (
            <button key={whose} type="button" aria-pressed={props.choice === whose} onClick={() => props.choose(whose)}>{whose === "mine" ? "Mine" : whose === "theirs" ? "The file's" : "Both, mine first"}</button>
          ))}
        </div>}
      </td>
    </tr>
  );
}

export function ThreeWay(props: { base: string; mine: string; theirs: string; take: (text: string) => void; keep: () => void; leave: () => void }) {
  const pieces = useMemo(() => threeWays(props.base, props.mine, props.theirs), [props.base, props.mine, props.theirs]);
  const [choice, setChoice] = useState<(Whose | undefined)[]>([]);
  const text = together(pieces, choice);
  let n = 0;
  return (
    <div class="conflict" role="alert">
      <p>The file has changed since you began to write here. Nothing of either is lost: yours is in the text below, the other stands in the file.</p>
      <div class="scroll" tabIndex={0} role="region" aria-label="what each has">
        <table class="plain three">
          <thead><tr><th scope="col">Where</th><th scope="col">When you began</th><th scope="col">Yours</th><th scope="col">In the file now</th><th scope="col">What becomes of it</th></tr></thead>
          <tbody>
            {pieces.map((one) => {
              const at = one.kind === "both" ? n++ : -1;
              return <Row key={one.line} one={one} n={at} choice={choice[at]} choose={(whose) => setChoice((now) => { const next = [...now]; next[at] = whose; return next; })} />;
            })}
          </tbody>
        </table>
      </div>
      <p>
        <button type="button" class="main" disabled={text === null} onClick={() => { if (text !== null) props.take(text); }}>Put both together in the text</button>{" "}
        <button type="button" onClick={props.keep}>Put mine in its place (undo brings it back)</button>{" "}
        <button type="button" onClick={props.leave}>Leave mine and show the file</button>
      </p>
    </div>
  );
}
