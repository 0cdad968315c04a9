import type { Signatory } from '../../../core/wash/index.ts';
import { overrideAbout, planFingerprint } from '../../../dossier/index.ts';
import { Button, LineField, Notice, PassageField, ProblemNotice, Sheet } from '../../kit/index.ts';
import type { OverrideRule } from '../ask.ts';
import { useDossier } from '../dossierView.ts';
import { counted } from '../figures.ts';
import { axisNames, isLimited, valueWords } from '../limitWords.ts';
import { useField, useForm } from '../useForm.ts';

interface SheetProps {
  readonly onClose: () => void;
}

export function CorrectiveAimSheet({ onClose }: SheetProps) {
  const { form, act, isBusy, problem } = useForm('corrective aim', onClose);
  const [aim, setAim] = useField(form, 'aim', '');
  return (
    <Sheet title="What is to be put right" isOpen onClose={onClose}>
      <p>
        Colours have already run. An ordinary wash waits until the client and you agree what is to be tried.
      </p>
      <PassageField label="Aim" value={aim} onChange={setAim} isRequired />
      {problem && <ProblemNotice problem={problem} />}
      <Button
        wide
        isDisabled={aim.trim() === '' || isBusy}
        onPress={() => act({ type: 'CorrectiveAimAgreed', aim: aim.trim() })}
      >
        Record
      </Button>
    </Sheet>
  );
}

/** Puts the plan as it stands on record; consent and work are bound to it. */
export function PlanOnRecordSheet({ onClose }: SheetProps) {
  const { plan } = useDossier();
  const { form, act, isBusy, problem } = useForm('plan on record', onClose);
  const [note, setNote] = useField(form, 'note', '');
  if (!plan.ok) return null;
  const { value } = plan;
  return (
    <Sheet title="Put this plan on record" isOpen onClose={onClose}>
      <p className="plan-method">{value.method}</p>
      <ul className="plain-list">
        {(['bathPh', 'temperatureC', 'wetMinutes', 'agitation', 'dryingPosture'] as const)
          .filter((axis) => isLimited(axis, value.bounds) && value.bounds.bathPh !== 'no liquid')
          .map((axis) => (
            <li key={axis}>
              {axisNames[axis]}: {valueWords(axis, value.bounds[axis])}
            </li>
          ))}
      </ul>
      <p className="why">
        {counted(value.steps.length, 'step')}, {counted(value.consents.length, 'risk')} to agree. It is kept
        whole: later rules do not change what was agreed. A finding, a withdrawal or a higher price that
        tightens it voids the consent.
      </p>
      {value.missingDyeTests.some(({ blocksWetWork }) => blocksWetWork) && (
        <Notice tone="caution" title="Dye tests are missing.">
          <p>This plan holds no wet step for the colours not yet proven. Test first if a wash is meant.</p>
        </Notice>
      )}
      <PassageField label="Note" value={note} onChange={setNote} />
      {problem && <ProblemNotice problem={problem} />}
      <Button
        wide
        isDisabled={isBusy}
        onPress={() =>
          act({
            type: 'PlanAgreed',
            rulebook: value.rulebook,
            fingerprint: planFingerprint(value),
            method: value.method,
            plan: { ...value },
            ...(note.trim() === '' ? {} : { note: note.trim() }),
          })
        }
      >
        Put on record
      </Button>
    </Sheet>
  );
}

export function OverrideSheet({ rule, onClose }: SheetProps & { readonly rule: OverrideRule }) {
  const { plan } = useDossier();
  const { form, act, isBusy, problem } = useForm(`override/${rule}`, onClose);
  const [reason, setReason] = useField(form, 'reason', '');
  const about = overrideAbout(plan, rule) ?? [];
  const because = plan.ok ? plan.value.limits.find((limit) => limit.rule === rule)?.because : undefined;
  return (
    <Sheet title={`Override ${rule}`} isOpen onClose={onClose}>
      <p>
        {rule === 'dry standard'
          ? 'The readings do not meet the dry standard: damp left in it may grow mould.'
          : because}
      </p>
      <Notice tone="stop" title="You take responsibility for this rule.">
        <p>
          Your name and reason are printed on the work order and the dossier. None is possible for a forbidden
          mixture, missing consent or quarantine.
        </p>
      </Notice>
      <PassageField label="Reason" value={reason} onChange={setReason} isRequired />
      {problem && <ProblemNotice problem={problem} />}
      <Button
        wide
        tone="stop"
        isDisabled={reason.trim() === '' || isBusy}
        onPress={() => act({ type: 'OverrideGranted', rule, reason: reason.trim(), about: [...about] })}
      >
        Override {rule}
      </Button>
    </Sheet>
  );
}

export function SignOffSheet({ who, onClose }: SheetProps & { readonly who: Signatory }) {
  const { plan, isOwner } = useDossier();
  const asked = plan.ok ? plan.value.signOffs.filter((one) => one.who === who) : [];
  const { form, act, isBusy, problem } = useForm(`sign-off/${who}`, onClose);
  const [name, setName] = useField(form, 'name', '');
  const [about, setAbout] = useField(form, 'about', asked.map(({ because }) => because).join(' '));
  return (
    <Sheet title={`Sign-off by the ${who}`} isOpen onClose={onClose}>
      {who === 'owner' && !isOwner && (
        <Notice tone="caution" title="Only the owner can sign off.">
          <p>Let the owner switch to their name on this tablet.</p>
        </Notice>
      )}
      <LineField label="Name of who signs off" value={name} onChange={setName} isRequired />
      <PassageField label="What is signed off" value={about} onChange={setAbout} isRequired />
      {problem && <ProblemNotice problem={problem} />}
      <Button
        wide
        isDisabled={name.trim() === '' || about.trim() === '' || isBusy}
        onPress={() => act({ type: 'SignedOff', as: who, name: name.trim(), about: about.trim() })}
      >
        Sign off
      </Button>
    </Sheet>
  );
}
