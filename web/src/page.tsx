// Where does the page begin?
import { render } from "preact";
import { signal } from "@preact/signals";

interface Finding { rule: string; level: string; state: string; line: number; says: string; fingerprint: string }
interface Answer { title: string; says: string; findings: Finding[] }

const answer = signal<Answer | null>(null);
const serial = signal(0);

async function load(): Promise<void> {
  const got = await fetch("/api/answer");
  answer.value = got.ok ? ((await got.json()) as Answer) : null;
}

function Page() {
  const now = answer.value;
  if (now === null) return <p>reading the drive ...</p>;
  return (
    <main>
      <h1>{now.title}</h1>
      <p>{now.says}</p>
      <img src={`/api/picture?figure=behind`} alt="the face of the boxes, seen from behind" />
      <ul>{now.findings.map((one) => <li key={one.fingerprint}>{one.level} {one.rule} line {one.line}: {one.says}</li>)}</ul>
    </main>
  );
}

new EventSource("/api/events").onmessage = (event) => {
  serial.value = (JSON.parse(event.data as string) as { serial: number }).serial;
  void load();
};
void load();
const place = document.getElementById("page");
if (place !== null) render(<Page />, place);
