// When is the page on paper?  Canvases are drawn anew in the colours of paper, for no style reaches into them.
const painters = new Set<() => void>();

/** Until `forget` is called, `paint` is called when the colours change to those of paper and back. */
export function onPaper(paint: () => void): () => void {
  painters.add(paint);
  return () => { painters.delete(paint); };
}

/** `shown`: the ground of the screen, as long as it is not on paper. */
export function listenToPrinting(shown: () => string): void {
  const turn = (ground: string): void => {
    document.documentElement.dataset["ground"] = ground;
    for (const paint of painters) paint();
  };
  window.addEventListener("beforeprint", () => turn("print"));
  window.addEventListener("afterprint", () => turn(shown()));
}
