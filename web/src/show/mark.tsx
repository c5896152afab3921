// How does a state look?  A shape and a word; the colour comes third.

export type MarkName = "refuse" | "warn" | "note" | "waived" | "notcomp" | "pass";

const WORDS: Record<MarkName, string> = {
  refuse: "refuse", warn: "warn", note: "note", waived: "waived", notcomp: "not computable", pass: "pass",
};

export function markOf(one: { level: string; state: string }): MarkName {
  if (one.state === "waived") return "waived";
  if (one.state === "not computable") return "notcomp";
  return one.level === "refuse" ? "refuse" : one.level === "warn" ? "warn" : "note";
}

export function word(name: MarkName): string {
  return WORDS[name];
}

function shape(name: MarkName) {
  switch (name) {
    case "refuse":
      return (<><polygon points="5,1 11,1 15,5 15,11 11,15 5,15 1,11 1,5" class="solid" /><rect x="4" y="6.8" width="8" height="2.4" class="cut" /></>);
    case "warn":
      return (<><polygon points="8,1 15.5,15 0.5,15" class="solid" /><rect x="7" y="5.5" width="2" height="5" class="cut" /><rect x="7" y="11.5" width="2" height="2" class="cut" /></>);
    case "note":
      return (<><circle cx="8" cy="8" r="6.4" class="open" /><circle cx="8" cy="8" r="2.2" class="solid" /></>);
    case "waived":
      return (<><polygon points="5,1.5 11,1.5 14.5,5 14.5,11 11,14.5 5,14.5 1.5,11 1.5,5" class="open" /><line x1="2" y1="14" x2="14" y2="2" class="open" /></>);
    case "notcomp":
      return (<><rect x="1.5" y="1.5" width="13" height="13" class="open dashed" /><text x="8" y="12" text-anchor="middle" class="query">?</text></>);
    default:
      return <polyline points="2,9 6,13 14,3" class="open" />;
  }
}

/** With `size` px; inside of a picture at x, y. */
export function Mark(props: { name: MarkName; size?: number; x?: number; y?: number }) {
  const size = props.size ?? 14;
  const place = props.x === undefined ? {} : { x: props.x - size / 2, y: (props.y ?? 0) - size / 2 };
  return (
    <svg class={`mark st-${props.name}`} width={size} height={size} viewBox="0 0 16 16" aria-hidden="true" {...place}>
      {shape(props.name)}
    </svg>
  );
}
