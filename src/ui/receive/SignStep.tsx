import type { WorkshopSettings } from '../../dossier/index.ts';
import { markLine, SignaturePad } from '../condition/index.ts';
import { massWords, sizeWords } from '../dossier/figures.ts';
import {
  Button,
  Choice,
  dayWords,
  FactList,
  moneyText,
  Notice,
  PassageField,
  Picture,
  ProblemNotice,
} from '../kit/index.ts';
import { clientName, type Intake, type RugIntake, type Step, steps, stepWords } from './intake.ts';
import { faultsOf } from './intakeChecks.ts';
import { areaM2, lifeIn, measuredFact, rugTitle } from './intakeFacts.ts';
import type { StepProps } from './stepProps.ts';
import { thisDay } from './thisDay.ts';
import { useSendIntake } from './useSendIntake.ts';

const authorityWords = {
  owner: 'as their owner',
  'for the owner': 'for their owner, with the owner’s knowledge',
  dealer: 'as the dealer who holds them',
  insurer: 'for the insurer',
  museum: 'for the museum',
} as const;

const signers = [
  { value: 'now', words: 'The person who brings it' },
  { value: 'nobody', words: 'Nobody is here to sign', hint: 'the reason goes on record' },
] as const;

/** What the client signs at the door. */
const statementOf = ({ rugs, authority }: Intake, { name }: WorkshopSettings): string =>
  `I hand over ${rugs.length === 1 ? 'one rug' : `${rugs.length} rugs`} to ${name} ${authorityWords[authority]}. The marks recorded today were there before; they were shown to me. The declared value is what I state. No wet work begins before I have agreed to a plan and a price.`;

interface Open {
  readonly step: Step;
  readonly rugAt: number;
  readonly fault: string;
}

/** Every fault of every step, in the order of the steps. */
const openOnes = (intake: Intake): readonly Open[] =>
  intake.rugs.flatMap((rug, rugAt) =>
    steps
      .filter((step) => step !== 'sign' && (rugAt === 0 || (step !== 'client' && step !== 'visit')))
      .flatMap((step) =>
        Object.values(faultsOf(intake, step, rug, thisDay())).map((fault) => ({ step, rugAt, fault })),
      ),
  );

/** Reads everything back, takes the signature, and records it all at once. */
export function SignStep(props: StepProps & { readonly settings: WorkshopSettings }) {
  const { intake, change, settings } = props;
  const { send, isBusy, problem } = useSendIntake(intake, change);
  const open = openOnes(intake);
  const isUnsettled = intake.unsigned === null ? intake.signature === null : intake.unsigned.trim() === '';
  return (
    <div className="form">
      <p>
        From <b>{clientName(intake.client)}</b>, for {intake.scope.join(', ')}
        {intake.route === 'heritage piece' ? ', as a heritage piece' : ''}.
      </p>
      {intake.rugs.map((rug) => (
        <RugSummary key={rug.rug} rug={rug} settings={settings} />
      ))}
      {open.length > 0 ? (
        <Notice
          tone="stop"
          title={open.length === 1 ? 'One thing is still open' : `${open.length} things are still open`}
        >
          <ul className="open">
            {open.map(({ step, rugAt, fault }) => (
              <li key={`${step} ${rugAt} ${fault}`}>
                <p>{fault}</p>
                <Button tone="ghost" onPress={() => change({ step, rugAt })}>
                  {intake.rugs.length > 1 && step !== 'client' && step !== 'visit'
                    ? `Rug ${rugAt + 1}: ${stepWords[step]}`
                    : stepWords[step]}
                </Button>
              </li>
            ))}
          </ul>
        </Notice>
      ) : (
        <>
          <Choice
            label="Who signs?"
            options={signers}
            value={intake.unsigned === null ? 'now' : 'nobody'}
            onChange={(who) => change({ unsigned: who === 'now' ? null : '', signature: null })}
          />
          {intake.unsigned === null ? (
            <SignaturePad
              statement={statementOf(intake, settings)}
              name={clientName(intake.client)}
              value={intake.signature}
              onChange={(signature) => change({ signature })}
            />
          ) : (
            <PassageField
              label="Why is there no signature?"
              rows={2}
              value={intake.unsigned}
              onChange={(unsigned) => change({ unsigned })}
              hint="For instance: came by carrier; the client signs at the shop tomorrow"
              isRequired
            />
          )}
        </>
      )}
      <ProblemNotice problem={problem} />
      <Button wide isDisabled={isBusy || open.length > 0 || isUnsettled} onPress={send}>
        {isBusy ? 'Recording…' : 'Record the receipt'}
      </Button>
    </div>
  );
}

function RugSummary({ rug, settings }: { readonly rug: RugIntake; readonly settings: WorkshopSettings }) {
  const measured = measuredFact(rug);
  const area = areaM2(rug);
  const life = lifeIn(rug.marks);
  const face = rug.photographs.find(({ shows }) => shows === 'face') ?? rug.photographs[0];
  return (
    <div className="rugSummary">
      {face === undefined ? null : <Picture photo={face.photo} form="thumbnail" alt={rugTitle(rug)} />}
      <div>
        <h2>
          <span className="tag">{rug.tag.trim() || '?'}</span>
          {rugTitle(rug)}
        </h2>
        <FactList
          rows={[
            {
              name: 'Size',
              value:
                measured === null || area === null
                  ? 'not measured'
                  : `${sizeWords(measured, settings.units)}, ${area.toFixed(2)} m²`,
            },
            {
              name: 'Mass',
              value:
                rug.weighsLater || rug.massKg === null
                  ? 'weighed later'
                  : massWords(rug.massKg, settings.units),
            },
            { name: 'Wish', value: rug.reason },
            ...(life === null ? [] : [{ name: 'Quarantine', value: `▲ yes: ${life}` }]),
            {
              name: 'Declared value',
              value:
                rug.declaredValue === null
                  ? 'none stated'
                  : moneyText(rug.declaredValue.amountMinor, rug.declaredValue.currency),
            },
            ...(rug.promisedFor === null ? [] : [{ name: 'Promised for', value: dayWords(rug.promisedFor) }]),
          ]}
        />
        {rug.marks.length === 0 ? (
          <p className="why">No marks put down.</p>
        ) : (
          <ol className="marksInWords">
            {rug.marks.map((mark) => (
              <li key={mark.mark}>{markLine(mark)}</li>
            ))}
          </ol>
        )}
      </div>
    </div>
  );
}
