// How does a picture of the server stand in the page?  Twice: in the colours of the screen, and for paper.
import { ground, state } from "../state/store";

/** `query` without the ground.  What is printed is loaded before anybody prints. */
export function Drawn(props: { path: string; query: Record<string, string>; name: string; alt: string }) {
  const serial = state.value?.computed ?? 0;
  const source = (on: string): string => `${props.path}?${new URLSearchParams({ ...props.query, ground: on }).toString().replace(/\+/g, "%20")}`;
  return (
    <>
      <img key={`${serial} ${source(ground.value)}`} class={`${props.name} on-screen`} src={source(ground.value)} alt={props.alt} />
      <img key={`${serial} ${source("print")}`} class={`${props.name} on-paper`} src={source("print")} alt="" aria-hidden="true" />
    </>
  );
}
