// What was asked last of the newest drive?  An answer is kept until the drive changes.
import { useEffect, useState } from "preact/hooks";
import { state } from "../state/store";
import { get, type Answer } from "./ask";

const kept = new Map<string, { computed: number; answer: Promise<Answer<unknown>> }>();

function ask<T>(path: string, query: Record<string, string>, computed: number): Promise<Answer<T>> {
  const key = `${path} ${JSON.stringify(query)}`;
  const old = kept.get(key);
  if (old !== undefined && old.computed === computed) return old.answer as Promise<Answer<T>>;
  const answer = get<T>(path, query);
  kept.set(key, { computed, answer });
  return answer;
}

/** What the server says of the drive as it is now; the last answer stays until the next has come. */
export function useOfDrive<T>(path: string, query: Record<string, string> = {}): { got: T | null; says: string | null } {
  const search = state.value?.search;
  // An answer of a search belongs to that search.
  const computed = (state.value?.computed ?? 0) + (path.startsWith("/api/arrange") && search?.state === "ended" ? (search.progress?.ms ?? 0) / 1e7 : 0);
  const [now, setNow] = useState<{ got: T | null; says: string | null }>({ got: null, says: null });
  const words = JSON.stringify(query);
  useEffect(() => {
    let live = true;
    void ask<T>(path, query, computed).then((answer) => {
      if (live) setNow(answer.status === 200 ? { got: answer.body, says: null } : { got: null, says: answer.says });
    });
    return () => { live = false; };
  }, [path, words, computed]);
  return now;
}
