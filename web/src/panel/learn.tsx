// How does this drive work, and have I understood it?
import { useState } from "preact/hooks";
import { Drawn } from "../show/drawn";
import { chosen, conditionName, shaftAt, view } from "../state/store";
import type { BriefOf, Question } from "../wire/answer";
import { useOfDrive } from "../wire/keep";

/** The drive turns; it stands still for those who ask for less motion. */
function Moving() {
  return <Drawn path="/api/moving" query={{ condition: conditionName.value }} name="moving" alt={`The drive turns as at ${conditionName.value}, seen from behind; ribbons run the way the power goes.`} />;
}

function Steps(props: { brief: BriefOf; at: number; go: (at: number) => void }) {
  const { brief, at } = props;
  const step = brief.steps[at];
  if (step === undefined) return null;
  return (
    <section class="step" aria-labelledby="step-title">
      <h3 id="step-title" aria-live="polite">{at + 1} of {brief.steps.length}: {step.title}</h3>
      {step.says.map((one) => <p key={one}>{one}</p>)}
      <p>
        <button type="button" disabled={at === 0} onClick={() => props.go(at - 1)}>Step back</button>{" "}
        <button type="button" class="main" disabled={at + 1 === brief.steps.length} onClick={() => props.go(at + 1)}>Next step</button>
      </p>
    </section>
  );
}

function Asked(props: { question: Question; number: number; of: number; go: (by: number) => void; answered: (right: boolean) => void }) {
  const { question } = props;
  const [taken, setTaken] = useState<number | null>(null);
  const choice = taken === null ? undefined : question.choices[taken];
  const take = (index: number): void => {
    if (taken === null) props.answered(question.choices[index]?.right ?? false);
    setTaken(index);
    const shaft = view.value === null || question.look_at === undefined ? -1 : shaftAt(view.value, question.look_at);
    if (shaft >= 0) chosen.value = shaft;
  };
  return (
    <section class="step" aria-labelledby="question-title">
      <h3 id="question-title">Question {props.number} of {props.of}</h3>
      <p>{question.asks}</p>
      <p class="choices" role="group" aria-label="answers">
        {question.choices.map((one, index) => <button key={one.says} type="button" aria-pressed={taken === index} onClick={() => take(index)}>{one.says}</button>)}
      </p>
      <p role="status">{choice === undefined ? "" : choice.right ? `Right. ${question.because}` : `Not so: ${choice.slip ?? ""}. Try again.`}</p>
      <p>
        <button type="button" disabled={props.number === 1} onClick={() => props.go(-1)}>Question before</button>{" "}
        <button type="button" class="main" disabled={props.number === props.of} onClick={() => props.go(+1)}>Next question</button>
      </p>
    </section>
  );
}

function Quiz(props: { brief: BriefOf }) {
  const { questions } = props.brief;
  const [at, setAt] = useState(0);
  const [first, setFirst] = useState<Record<number, boolean>>({});
  const question = questions[Math.min(at, questions.length - 1)];
  if (question === undefined) return <p>This drive is too small to ask about.</p>;
  const right = Object.values(first).filter((one) => one).length;
  return (
    <>
      <Asked key={question.asks} question={question} number={Math.min(at, questions.length - 1) + 1} of={questions.length} go={(by) => setAt(at + by)} answered={(good) => setFirst((old) => at in old ? old : { ...old, [at]: good })} />
      <p>{Object.keys(first).length === 0 ? "" : `${right} of ${Object.keys(first).length} right at the first try.`}</p>
    </>
  );
}

export function Learn() {
  const { got, says } = useOfDrive<BriefOf>("/api/brief");
  const [step, setStep] = useState(0);
  return (
    <div class="wide scroll learn" tabIndex={0} role="region" aria-label="learn">
      <h2>How does it work?</h2>
      {says !== null && <p class="bad">{says}</p>}
      <div class="beside">
        <Moving />
        {got !== null && <div class="told">
          <Steps brief={got} at={Math.min(step, got.steps.length - 1)} go={setStep} />
          <Quiz brief={got} />
        </div>}
      </div>
    </div>
  );
}
