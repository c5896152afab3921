// How large is the place that a picture may fill?
import { useLayoutEffect, useRef, useState } from "preact/hooks";

export function useSize() {
  const ref = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState({ width: 900, height: 480 });
  // Before the first frame is shown: a picture that jumps slips out of the hand.
  useLayoutEffect(() => {
    const place = ref.current;
    if (place === null) return;
    const take = (): void => {
      const width = place.clientWidth, height = place.clientHeight;
      if (width > 50 && height > 50) setSize((old) => (old.width === width && old.height === height ? old : { width, height }));
    };
    take();
    const watch = new ResizeObserver(take);
    watch.observe(place);
    return () => watch.disconnect();
  }, []);
  return { ref, size };
}
