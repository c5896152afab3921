// Which colour does a name of the page's table have now?  Canvases want it in numbers, whatever it is made of.

const kept = new Map<string, string>();
const forced = window.matchMedia("(forced-colors: active)");
forced.addEventListener("change", () => kept.clear());

/** "rgb(12, 34, 56)", also where the name stands for a colour of the reader's desktop. */
export function colourOf(name: string): string {
  const key = `${document.documentElement.dataset["ground"]} ${name}`;
  const old = kept.get(key);
  if (old !== undefined) return old;
  const probe = document.createElement("span");
  probe.style.setProperty("forced-color-adjust", "none");
  probe.style.setProperty("color", `var(--${name})`);
  document.body.append(probe);
  const found = getComputedStyle(probe).color;
  probe.remove();
  kept.set(key, found);
  return found;
}
