// What has changed since the file was opened, in the order of consequence?
import { useEffect, useState } from "preact/hooks";
import { state } from "../state/store";
import { percent } from "../show/format";
import { get } from "../wire/ask";
import type { Comparison } from "../wire/view";

export function Compare() {
  const computed = state.value?.computed;
  const [got, setGot] = useState<Comparison | null>(null);
  const [says, setSays] = useState<string | null>(null);
  useEffect(() => {
    let live = true;
    void get<Comparison>("/api/compare").then((answer) => {
      if (!live) return;
      setGot(answer.status === 200 ? answer.body : null);
      setSays(answer.status === 200 ? null : answer.says);
    });
    return () => { live = false; };
  }, [computed]);
  return (
    <div class="wide scroll" tabIndex={0} role="region" aria-label="compare">
      <h2>What has changed since the file was opened?</h2>
      {says !== null && <p class="bad">{says}</p>}
      {got !== null && (got.changes.length === 0 ? <p>Nothing.</p> : <>
        <p>Before: {got.before.verdict}. Now: {got.after.verdict}.</p>
        <table class="plain">
          <caption class="away">Changes, the weightiest first</caption>
          <thead><tr><th scope="col">Kind</th><th scope="col">Of what</th><th scope="col">Condition</th><th scope="col">Before</th><th scope="col">Now</th><th scope="col">By</th></tr></thead>
          <tbody>
            {got.changes.map((one, index) => (
              <tr key={index}><td>{one.kind}</td><th scope="row">{one.subject}</th><td>{one.condition ?? "\u00b7"}</td><td>{one.before ?? "\u00b7"}</td><td>{one.after ?? "\u00b7"}</td><td>{one.relative === null ? "\u00b7" : `${percent(one.relative)} %`}</td></tr>
            ))}
          </tbody>
        </table>
      </>)}
    </div>
  );
}
