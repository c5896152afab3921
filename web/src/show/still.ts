// What need not be drawn again?  What is the same as before is given back as the same object.
import { useRef } from "preact/hooks";

/** The list that was there before, while its items are the same. */
export function useStill<T>(next: T[]): T[] {
  const had = useRef(next);
  const old = had.current;
  if (old !== next && (old.length !== next.length || next.some((one, at) => !Object.is(one, old[at])))) had.current = next;
  return had.current;
}
