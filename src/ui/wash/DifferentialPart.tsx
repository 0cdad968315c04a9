import { type StainQuestion, stainQuestions } from '../../core/wash/index.ts';
import { differentialIn, type Noted, stainClassOf, stainOf } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { stainWords } from '../dossier/figures.ts';
import { Part } from '../dossier/Part.tsx';
import { useForm } from '../dossier/useForm.ts';
import { Choice, Notice, ProblemNotice } from '../kit/index.ts';

function Asking({ mark, question }: { readonly mark: string; readonly question: StainQuestion }) {
  const { act, problem } = useForm(`ask/${mark}/${question.id}`);
  return (
    <>
      <p className="why">{question.how}</p>
      <Choice
        label={question.ask}
        columns={1}
        options={question.answers.map(({ id, words }) => ({ value: id, words }))}
        value={null}
        onChange={(answer) => act({ type: 'StainAnswered', mark, question: question.id, answer })}
      />
      <ProblemNotice problem={problem} />
    </>
  );
}

const askWords = (id: string): string => stainQuestions.find((one) => one.id === id)?.ask ?? id;

function OneStain({ mark }: { readonly mark: Noted<'MarkRecorded'> }) {
  const { standing, open } = useDossier();
  const { candidates, contradicted, next } = differentialIn(standing, mark.mark);
  const known = stainClassOf(standing, mark);
  const answers = standing.stainAnswers.filter((one) => one.mark === mark.mark);
  return (
    <section aria-label={stainWords(standing.marks, mark.mark)}>
      <h3>{stainWords(standing.marks, mark.mark)}</h3>
      {answers.map(({ question, answer }) => (
        <p key={question} className="why">
          {askWords(question)}{' '}
          <b>
            {
              stainQuestions.find((one) => one.id === question)?.answers.find(({ id }) => id === answer)
                ?.words
            }
          </b>
        </p>
      ))}
      {contradicted.length > 0 ? (
        <Notice tone="caution" title="These answers contradict each other">
          <p>{contradicted.map(askWords).join(' — ')}</p>
          <p>Look again and withdraw the wrong one in the history. Until then it counts as unknown.</p>
        </Notice>
      ) : known !== 'unknown' ? (
        <Notice tone="ok" title={`Narrowed to: ${known}`}>
          <p>Its cards stand below. A spotter still needs its test on each colour.</p>
        </Notice>
      ) : (
        <p role="status">
          {answers.length === 0 ? 'It may be anything' : `It may still be: ${candidates.join('; ')}`}. Until
          it is narrowed, only what harms none of them is done.
        </p>
      )}
      {open && next !== null && known === 'unknown' && contradicted.length === 0 && (
        <Asking key={next.id} mark={mark.mark} question={next} />
      )}
    </section>
  );
}

/** Stains nobody knows, narrowed question by question. */
export function DifferentialPart() {
  const { standing } = useDossier();
  const unknown = standing.marks.filter((mark) => stainOf(mark) === 'unknown');
  if (unknown.length === 0) return null;
  return (
    <Part id="unknown-stains" title="What is this stain?">
      {unknown.map((mark) => (
        <OneStain key={mark.mark} mark={mark} />
      ))}
    </Part>
  );
}
