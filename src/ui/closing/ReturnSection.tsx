import { type RugFactOf, returnObstacles } from '../../dossier/index.ts';
import { problemWords } from '../../text/problemWords.ts';
import { markLine, type Signature, SignaturePad } from '../condition/index.ts';
import { Part } from '../dossier/Part.tsx';
import {
  Button,
  FactList,
  LineField,
  moneyText,
  Notice,
  PassageField,
  PhotoTaker,
  Picture,
  ProblemNotice,
  useKept,
  When,
} from '../kit/index.ts';
import { IdentityFields } from './IdentityFields.tsx';
import { owedMinor } from './MoneySection.tsx';
import { StillInIt } from './StillInIt.tsx';
import { photographFact, useClosing } from './useClosing.ts';
import './closing.css';

type Identity = RugFactOf<'RugReturned'>['identity'];

export interface ReturnDraft {
  readonly to: string | null;
  readonly tag: boolean;
  readonly size: boolean;
  readonly picture: boolean;
  readonly mass: Identity['mass'] | null;
  readonly massKg: number | null;
  readonly airRhPercent: number | null;
  readonly difference: string;
  readonly inQuarantine: string;
  readonly signature: Signature | null;
  readonly photos: readonly string[];
}

const blank: ReturnDraft = {
  to: null,
  tag: false,
  size: false,
  picture: false,
  mass: null,
  massKg: null,
  airRhPercent: null,
  difference: '',
  inQuarantine: '',
  signature: null,
  photos: [],
};

const statement = (workshop: string, declined: boolean) =>
  declined
    ? `I have received the rug from ${workshop}. I saw it before I took it. The work was not done; I was told why.`
    : `I have received the rug from ${workshop}. I saw it before I took it, with the marks of the final inspection, and had the care sheet.`;

/** The hand-back: the same rug, ready, paid or not, signed for. */
export function ReturnSection({ rug }: { readonly rug: string }) {
  const { standing, visit, client, isHere, settings, act, keepSignature, isBusy, problem } = useClosing(rug);
  const [draft, setDraft, forget] = useKept<ReturnDraft>(`closing/${rug}/return`, blank);
  if (visit === null) return null;
  if (visit.end !== null) return <Returned rug={rug} returned={visit.end.returned} />;
  if (!isHere) return null;
  const obstacles = returnObstacles(standing);
  if (obstacles.length > 0) {
    const waiting = problemWords({ code: 'not-ready-to-return', facts: { obstacles } });
    return (
      <Part id="return" title="Hand back">
        <p>{waiting.happened}</p>
        <p className="why">{waiting.now}</p>
      </Part>
    );
  }

  const name = client === null || client.erased === true ? '' : client.name;
  const to = draft.to ?? name;
  const differs = !draft.tag || !draft.size || !draft.picture || draft.mass === 'differs';
  const owed = owedMinor(visit);
  const missing = [
    ...(to.trim() === '' ? ['to whom'] : []),
    ...(draft.mass === null ? ['whether it was weighed'] : []),
    ...(differs && draft.difference.trim() === ''
      ? ['tag, size and picture that agree, or why they do not']
      : []),
    ...(standing.quarantine !== null && draft.inQuarantine.trim() === ''
      ? ['how it was packed and what the client was told']
      : []),
    ...(draft.signature === null ? ['the signature'] : []),
  ];
  const record = async () => {
    const { signature, mass, massKg, airRhPercent } = draft;
    if (signature === null || mass === null || !(await keepSignature(signature))) return;
    const difference = draft.difference.trim();
    const kept = await act({
      type: 'RugReturned',
      to: to.trim(),
      identity: { tag: draft.tag, size: draft.size, mass, picture: draft.picture },
      ...(massKg === null || mass === 'not weighed' ? {} : { massKg }),
      ...(massKg === null || airRhPercent === null ? {} : { airRh: airRhPercent / 100 }),
      ...(differs && difference !== '' ? { difference } : {}),
      ...(standing.quarantine === null ? {} : { inQuarantine: draft.inQuarantine.trim() }),
      signature: signature.signature,
      photos: [...draft.photos],
    });
    if (kept) forget();
  };
  const changed = standing.marks.filter(({ mark }) =>
    visit.inspected?.marks.some((seen) => seen.mark === mark && seen.outcome !== 'unchanged'),
  );
  return (
    <Part id="return" title="Hand back">
      <div className="form">
        {owed !== null && owed > 0 ? (
          <Notice tone="caution" title={`${moneyText(owed, settings.currency)} are still owed.`}>
            <p>Take the payment first, or hand the rug back on account.</p>
          </Notice>
        ) : null}
        <StillInIt rug={rug} standing={standing} settings={settings} />
        <IdentityFields
          standing={standing}
          visit={visit}
          draft={draft}
          settings={settings}
          onChange={setDraft}
        />
        {differs ? (
          <PassageField
            label="What does not agree, and why it is the rug all the same"
            rows={2}
            value={draft.difference}
            onChange={(difference) => setDraft({ ...draft, difference })}
          />
        ) : null}
        {standing.quarantine === null ? null : (
          <Notice tone="stop" title={`It goes home from quarantine: ${standing.quarantine.why}.`}>
            <PassageField
              label="How it was packed, and what the client was told"
              rows={2}
              value={draft.inQuarantine}
              onChange={(inQuarantine) => setDraft({ ...draft, inQuarantine })}
              hint="bagged and sealed; not to be opened near other textiles"
              isRequired
            />
          </Notice>
        )}
        {changed.length > 0 ? (
          <Notice tone="plain" title="Show the client what has changed">
            <ul className="doneList">
              {changed.map((mark) => (
                <li key={mark.mark}>
                  {markLine(mark)}: {visit.inspected?.marks.find((seen) => seen.mark === mark.mark)?.outcome}
                </li>
              ))}
            </ul>
          </Notice>
        ) : null}
        <LineField
          label="Handed to"
          value={to}
          onChange={(next) => setDraft({ ...draft, to: next, signature: null })}
          isRequired
        />
        <div className="closeUps">
          {draft.photos.map((photo, index) => (
            <Picture key={photo} photo={photo} form="thumbnail" alt={`At the hand-back ${index + 1}`} />
          ))}
          <PhotoTaker
            label="Photograph it as it goes"
            keptAs={`return/${rug}`}
            onTaken={async (photo) => {
              if (await act(photographFact(photo, 'face', 'return')))
                setDraft((before) => ({ ...before, photos: [...new Set([...before.photos, photo.photo])] }));
            }}
          />
        </div>
        <SignaturePad
          key={name}
          statement={statement(settings.name, visit.declined !== null)}
          name={to}
          value={draft.signature}
          onChange={(signature) => setDraft({ ...draft, signature })}
        />
        <ProblemNotice problem={problem} />
        {missing.length > 0 ? <p className="hint">Still missing: {missing.join('; ')}.</p> : null}
        <Button isDisabled={missing.length > 0 || isBusy} onPress={record}>
          Hand it back
        </Button>
      </div>
    </Part>
  );
}

function Returned(props: {
  readonly rug: string;
  readonly returned: RugFactOf<'RugReturned'> & { readonly when: string };
}) {
  const { returned } = props;
  return (
    <Part id="return" title="Handed back">
      <FactList
        rows={[
          { name: 'To', value: returned.to },
          { name: 'When', value: <When at={returned.when} /> },
          ...(returned.difference === undefined ? [] : [{ name: 'Differs', value: returned.difference }]),
          ...(returned.inQuarantine === undefined
            ? []
            : [{ name: 'From quarantine', value: returned.inQuarantine }]),
        ]}
      />
      <div className="actions">
        <a
          className="btn ghost"
          href={`/api/rugs/${props.rug}/papers/return.pdf`}
          target="_blank"
          rel="noreferrer"
        >
          Return paper
        </a>
        <a
          className="btn ghost"
          href={`/api/rugs/${props.rug}/papers/care-sheet.pdf`}
          target="_blank"
          rel="noreferrer"
        >
          Care sheet
        </a>
      </div>
    </Part>
  );
}
