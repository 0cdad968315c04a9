import { useState } from 'react';
import type { Certainty, FindingCode } from '../../../core/wash/index.ts';
import { Button, Choice, ProblemNotice, Sheet } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { counted } from '../figures.ts';
import { nothingTyped, useField, useForm } from '../useForm.ts';
import { type Evidence, EvidenceField } from './EvidenceFields.tsx';
import { certaintyOptions } from './FindingSheet.tsx';
import { type FindingWords, findingGroups } from './findingWords.ts';

const short = certaintyOptions.map(({ value, words }) => ({ value, words }));

type Answers = { readonly [F in FindingCode]?: Certainty };

/** One group after the other: every finding seen, suspected or ruled out, recorded together. */
export function LookOverSheet({ onClose }: { readonly onClose: () => void }) {
  const { standing } = useDossier();
  const [page, setPage] = useState(0);
  const { form, act, isBusy, problem } = useForm('look over', onClose);
  const [answers, setAnswers] = useField<Answers>(form, 'answers', nothingTyped);
  const [evidence, setEvidence] = useField<Evidence | null>(form, 'evidence', 'seen');
  const group = findingGroups[page];
  const before = (code: FindingCode) =>
    standing.findings.find((noted) => noted.finding === code)?.certainty ?? null;
  const changed = (Object.entries(answers) as [FindingCode, Certainty][]).filter(
    ([code, certainty]) => before(code) !== certainty,
  );
  const entries =
    group === undefined ? [] : (Object.entries(group.findings) as [FindingCode, FindingWords][]);
  const ruleOutRest = () => {
    const rest = entries.filter(([code]) => answers[code] === undefined && before(code) === null);
    const ruledOut = Object.fromEntries(rest.map(([code]) => [code, 'ruled out'] as const));
    setAnswers({ ...answers, ...ruledOut });
  };
  const record = () => {
    if (evidence === null) return;
    act(
      ...changed.map(
        ([finding, certainty]) => ({ type: 'FindingNoted', finding, certainty, evidence }) as const,
      ),
    );
  };
  return (
    <Sheet
      title={
        group === undefined
          ? 'Record what was found'
          : `${group.title} (${page + 1} of ${findingGroups.length})`
      }
      isOpen
      onClose={onClose}
    >
      {group !== undefined && <p className="why">Suspected counts as seen until it is ruled out.</p>}
      {entries.map(([code, words]) => (
        <div className="look-over" key={code}>
          <Choice
            label={words.name}
            hint={words.look}
            columns={3}
            options={short}
            value={answers[code] ?? before(code)}
            onChange={(certainty) => setAnswers({ ...answers, [code]: certainty })}
          />
        </div>
      ))}
      {group === undefined && (
        <>
          <p>
            {counted(changed.length, 'finding')} to record:{' '}
            {changed.map(([code, certainty]) => `${code} ${certainty}`).join(', ') || 'nothing new'}.
          </p>
          <EvidenceField value={evidence} onChange={setEvidence} />
          {problem && <ProblemNotice problem={problem} />}
          <Button wide isDisabled={changed.length === 0 || evidence === null || isBusy} onPress={record}>
            Record
          </Button>
        </>
      )}
      {group !== undefined && (
        <div className="buttons">
          <Button tone="ghost" onPress={ruleOutRest}>
            I looked: none of the rest
          </Button>
          <Button onPress={() => setPage(page + 1)}>Next</Button>
        </div>
      )}
      {page > 0 && (
        <Button tone="ghost" onPress={() => setPage(page - 1)}>
          Back
        </Button>
      )}
    </Sheet>
  );
}
