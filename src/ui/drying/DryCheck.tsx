import { useState } from 'react';
import { decide, dryCriteria, type dryStandards, type RugFactOf } from '../../dossier/index.ts';
import { dryAskedWords, dryFoundWords } from '../../text/dryWords.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { Part } from '../dossier/Part.tsx';
import { useField, useForm } from '../dossier/useForm.ts';
import { Button, Notice, PassageField, ProblemNotice, Sheet, When } from '../kit/index.ts';

const standardWords: { readonly [S in (typeof dryStandards)[number]]: string } = {
  full: 'the full standard',
  'without scale': 'the weaker standard of a workshop without a scale',
  'without meter': 'the weaker standard of a workshop without a meter',
};

function AcceptSheet({ onClose }: { readonly onClose: () => void }) {
  const { settings, standing, asked, isOwner, ask } = useDossier();
  const { form, act, isBusy, problem } = useForm('accept dry', onClose);
  const [note, setNote] = useField(form, 'note', '');
  const fact: RugFactOf<'DryAccepted'> = {
    type: 'DryAccepted',
    standard: settings.dryStandard,
    ...(note.trim() === '' ? {} : { note: note.trim() }),
  };
  const may = decide(standing, fact, asked);
  return (
    <Sheet title="Accept it as dry" isOpen onClose={onClose}>
      <p>
        By {standardWords[settings.dryStandard]}; the papers say so. Then 24 h at 55 % RH or less and one more
        look before it is wrapped, in paper or muslin, never in plastic.
      </p>
      {!may.ok && <ProblemNotice problem={may.problem} />}
      {!may.ok && isOwner && (
        <Button tone="stop" wide onPress={() => ask({ kind: 'override', rule: 'dry standard' })}>
          Override the dry standard
        </Button>
      )}
      <PassageField label="Note" value={note} onChange={setNote} />
      <ProblemNotice problem={problem} />
      <Button wide isDisabled={isBusy || !may.ok} onPress={() => act(fact)}>
        Accept as dry
      </Button>
    </Sheet>
  );
}

/** The dry standard, every criterion named, met or not. */
export function DryCheck() {
  const { standing, visit, settings, open, nameOf } = useDossier();
  const [accepting, setAccepting] = useState(false);
  if (visit === null || visit.dryingStarted === null) return null;
  const criteria = dryCriteria(standing, visit, settings.dryStandard);
  const unmet = criteria.filter(({ met }) => !met).length;
  const accepted = visit.dryAccepted;
  return (
    <Part id="dry-standard" title="Dry standard">
      <p className="why">{standardWords[settings.dryStandard]}, workshop setting; all must be met</p>
      <ul className="criteria">
        {criteria.map(({ code, met, found }) => (
          <li key={code} className={met ? 'met' : 'unmet'}>
            <span aria-hidden="true">{met ? '✓' : '▲'} </span>
            <span className="unseen">{met ? 'met: ' : 'not met: '}</span>
            {dryAskedWords[code]}
            <span className="why">{dryFoundWords(found, settings.units)}</span>
          </li>
        ))}
      </ul>
      {accepted !== null ? (
        <Notice tone="ok" title="Accepted as dry.">
          <p>
            {nameOf(accepted.by)}, <When at={accepted.when} />, standard “{accepted.standard}”.{' '}
            {accepted.note}
          </p>
        </Notice>
      ) : (
        open && (
          <Button wide tone={unmet === 0 ? 'act' : 'ghost'} onPress={() => setAccepting(true)}>
            {unmet === 0 ? 'Accept it as dry' : `Not yet: ${unmet} not met`}
          </Button>
        )
      )}
      {accepting && <AcceptSheet onClose={() => setAccepting(false)} />}
    </Part>
  );
}
