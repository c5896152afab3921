// What is shown of a file that could not be computed yet?  What is wrong, and the way to each line of it.
import { useEffect, useState } from "preact/hooks";
import { leaf, line, state } from "../state/store";
import { post } from "../wire/ask";
import type { TryAnswer } from "../wire/view";
import { remarks, type Remark } from "./remark";

export function Unread() {
  const text = state.value?.text ?? "";
  const [wrong, setWrong] = useState<Remark[]>([]);
  useEffect(() => {
    let live = true;
    // Beside what is wrong stands the place where it can be mended.
    leaf.value = "file";
    void post<TryAnswer>("/api/try", { text }).then((got) => { if (live) setWrong(remarks(got.body).filter((one) => one.level === "refuse")); });
    return () => { live = false; };
  }, [text]);
  const show = (at: number): void => {
    leaf.value = "file";
    line.value = at;
  };
  return (
    <div class="wide scroll unread" tabIndex={0} role="region" aria-label="what is wrong with the file">
      <h2>The file cannot be computed yet</h2>
      <p>Mend its text, at the right or in your own editor: as soon as it can be computed, the drive stands here.</p>
      <ol>{wrong.map((one, index) => <li key={index}><button type="button" class="link" onClick={() => show(one.line)}>line {one.line}, column {one.column}</button> {one.says}</li>)}</ol>
    </div>
  );
}
