import { useState } from 'react';
import { clearingWords, type Residue } from '../../core/wash/index.ts';
import { carriedResidues, isCarried, isLeftByPlan, residuesIn } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { figure, percentWords, stainWords } from '../dossier/figures.ts';
import { Part } from '../dossier/Part.tsx';
import { useField, useForm } from '../dossier/useForm.ts';
import { Button, Notice, PassageField, ProblemNotice, Sheet, When } from '../kit/index.ts';
import { OldTreatmentSheet } from './OldTreatmentSheet.tsx';

const keyOf = ({ agent, where }: Residue): string => `${agent}/${where ?? ''}`;

function AnswerSheet({ residue, onClose }: { readonly residue: Residue; readonly onClose: () => void }) {
  const { agent, where } = residue;
  const { form, act, isBusy, problem } = useForm(`residue/${keyOf(residue)}`, onClose);
  const [reason, setReason] = useField(form, 'reason', '');
  return (
    <Sheet title={`No longer in the rug: ${agent}`} isOpen onClose={onClose}>
      <p>
        Only what is known for certain: a test strip, a wash elsewhere since then. A rinse read twice at the
        supply needs no answer.
      </p>
      <PassageField label="Why it is held to be out" value={reason} onChange={setReason} />
      <ProblemNotice problem={problem} />
      <Button
        wide
        isDisabled={reason.trim() === '' || isBusy}
        onPress={() =>
          act({
            ...{ type: 'ResidueAnswered', agent, reason: reason.trim() },
            ...(where === null ? {} : { mark: where }),
          })
        }
      >
        Record the answer
      </Button>
    </Sheet>
  );
}

/** The same agent at the same place, laid once or again and again. */
const grouped = (residues: readonly Residue[]): readonly (readonly Residue[])[] =>
  [...new Set(residues.map(keyOf))].map((key) => residues.filter((residue) => keyOf(residue) === key));

const phWords = (residues: readonly Residue[]): string => {
  const read = residues.flatMap(({ ph }) => (ph === undefined ? [] : [figure(ph)]));
  return read.length < residues.length
    ? 'its pH was not always read: the worst is assumed'
    : `pH ${[...new Set(read)].join(', ')}`;
};

function ResidueRow({ residues }: { readonly residues: readonly Residue[] }) {
  const { standing, open } = useDossier();
  const [isAnswering, setAnswering] = useState(false);
  const last = residues.at(-1);
  if (last === undefined) return null;
  const { agent, where, when, byOthers } = last;
  const old = residues.find((residue) => isCarried(standing, residue));
  const left = Math.max(...residues.map((residue) => residue.left));
  return (
    <li>
      <span aria-hidden="true">{old === undefined ? '◆ ' : '▲ '}</span>
      <b>{agent}</b>: {where === null ? 'all over the rug' : stainWords(standing.marks, where)}
      {old !== undefined && <b>, from before this visit</b>}
      <div className="why">
        {byOthers === true ? (
          'used by others'
        ) : (
          <>
            {residues.length === 1 ? 'laid ' : `laid ${residues.length} times, last `}
            <When at={when ?? ''} />
          </>
        )}
        {' · '}
        {phWords(residues)}
        {residues.every((residue) => isLeftByPlan(standing, residue)) && ' · the plan leaves it in'}
        {left < 1 && ` · by perfect mixing ${percentWords(left)} of it would be left, which proves nothing`}
      </div>
      {old !== undefined && open && (
        <Button tone="ghost" label={`No longer there: ${agent}`} onPress={() => setAnswering(true)}>
          No longer there
        </Button>
      )}
      {isAnswering && <AnswerSheet residue={last} onClose={() => setAnswering(false)} />}
    </li>
  );
}

/** Every agent that no reading has shown to be out: what was laid here, in earlier visits, or by others. */
export function ResiduePart() {
  const { standing, visit, open, settings } = useDossier();
  const [isTelling, setTelling] = useState(false);
  if (visit === null) return null;
  const residues = residuesIn(standing, settings);
  const carried = carriedResidues(standing, settings);
  return (
    <Part id="residues" title="Still in the rug">
      {carried.length > 0 && (
        <Notice tone="caution" title="Something is in it from before this visit.">
          What may not meet it is held back until a rinse is read clear, or somebody answers for it.
        </Notice>
      )}
      {residues.length === 0 ? (
        <p className="why">
          Nothing by the record. What others used before it came counts only once it is written down: ask the
          client.
        </p>
      ) : (
        <>
          <ul className="plain-list residues">
            {grouped(residues).map((same) => (
              <ResidueRow key={same.map(keyOf)[0]} residues={same} />
            ))}
          </ul>
          {[...new Set(residues.map(({ clears }) => clears))].map((clears) => (
            <p key={clears} className="note">
              <b>To clear {clears === 'airing' ? 'a solvent' : 'it'}: </b>
              {clearingWords(clears)}
            </p>
          ))}
        </>
      )}
      {open && (
        <Button tone="ghost" wide onPress={() => setTelling(true)}>
          Others treated it before …
        </Button>
      )}
      {isTelling && <OldTreatmentSheet onClose={() => setTelling(false)} />}
    </Part>
  );
}
