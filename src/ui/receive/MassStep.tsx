import { massProblem, soundClaim } from '../../dossier/index.ts';
import type { Problem } from '../../units/index.ts';
import { useRug } from '../call/index.ts';
import { massWords } from '../dossier/figures.ts';
import { Check, Choice, Notice, NumberField, ProblemNotice } from '../kit/index.ts';
import { areaM2, isUnusualMass, usualMassKg } from './intakeFacts.ts';
import { AirTemperatureField, MassField } from './measureFields.tsx';
import type { RugStepProps } from './stepProps.ts';

const when = [
  { value: 'now', words: 'Weigh it now' },
  { value: 'later', words: 'Weigh it later', hint: 'before any water' },
] as const;

/** The mass with the air it was taken in; what drying is followed by. */
export function MassStep(props: RugStepProps) {
  const { rug, changeRug, settings, faults } = props;
  const { units } = settings;
  return (
    <div className="form">
      <Choice
        label="Mass"
        options={when}
        value={rug.weighsLater ? 'later' : 'now'}
        onChange={(value) => changeRug({ weighsLater: value === 'later' })}
      />
      {rug.weighsLater ? (
        <Notice tone="plain">
          The plan can be made without it, but drying is followed by weighing: weigh it dry, before the wash.
        </Notice>
      ) : (
        <>
          <MassField
            label="Mass as it is"
            units={units}
            value={rug.massKg}
            onChange={(massKg) => changeRug({ massKg, confirmedUnusual: false })}
            problem={faults['mass'] ?? null}
            isRequired
          />
          {rug.known === null ? <BandOfAny {...props} /> : <BandOfKnown {...props} />}
          <NumberField
            label="Humidity of the air"
            unit="%"
            least={0}
            most={100}
            value={rug.airRhPercent}
            onChange={(airRhPercent) => changeRug({ airRhPercent })}
            hint="Wool takes up a tenth of its mass from damp air"
          />
          <AirTemperatureField
            label="Temperature of the air"
            units={units}
            value={rug.airC}
            onChange={(airC) => changeRug({ airC })}
          />
          <Check
            label="It has lain in this air for a day"
            hint="Otherwise the dry mass is less certain"
            isSelected={rug.restedADay}
            onChange={(restedADay) => changeRug({ restedADay })}
          />
        </>
      )}
    </div>
  );
}

function Confirm({ rug, changeRug, problem }: RugStepProps & { readonly problem: Problem }) {
  return (
    <>
      <ProblemNotice problem={problem} />
      <Check
        label="I have weighed it twice; the mass is right"
        isSelected={rug.confirmedUnusual}
        onChange={(confirmedUnusual) => changeRug({ confirmedUnusual })}
      />
    </>
  );
}

/** The construction is known from an earlier visit, and with it the band. */
function BandOfKnown(props: RugStepProps) {
  const { rug } = props;
  const { standing } = useRug(rug.rug);
  const area = areaM2(rug);
  const construction = soundClaim(standing, 'construction')?.construction;
  const problem = rug.massKg === null || area === null ? null : massProblem(rug.massKg, area, construction);
  return problem === null ? <BandOfAny {...props} /> : <Confirm {...props} problem={problem} />;
}

/** No construction weighs so much or so little per area; asked again once the construction is known. */
function BandOfAny(props: RugStepProps) {
  const { rug, changeRug, settings, faults } = props;
  const area = areaM2(rug);
  const usual = usualMassKg(rug);
  if (rug.massKg === null || area === null || usual === null || !isUnusualMass(rug)) return null;
  return (
    <>
      <Notice
        tone="caution"
        title={`${massWords(rug.massKg, settings.units)} is unusual for ${area.toFixed(2)} m².`}
      >
        <p>
          Rugs of this size weigh {massWords(usual.least, settings.units)} to{' '}
          {massWords(usual.most, settings.units)}. A slip of the scale or of the tape would spoil the drying
          and the lifting plan.
        </p>
        <p>
          <b>Weigh and measure once more, then confirm.</b>
        </p>
      </Notice>
      <Check
        label="I have weighed it twice; the mass is right"
        isSelected={rug.confirmedUnusual}
        onChange={(confirmedUnusual) => changeRug({ confirmedUnusual })}
      />
      {faults['unusual'] === undefined ? null : <p className="fault">{faults['unusual']}</p>}
    </>
  );
}
