import { type BathRecipe, type Correction, carryOver, dose, effluent } from '../../core/chemistry/index.ts';
import { rulebookOf } from '../../dossier/index.ts';
import { useSettings } from '../call/index.ts';
import { MeasureField, Notice, NumberField, ProblemNotice, Section } from '../kit/index.ts';
import { bareBath, type MixingProps, massText } from './mixing.ts';

/** What the dosed bath leaves in the rug, and where it may go; both wait for water that is known. */
export function AfterBath({ mixing, set }: MixingProps) {
  const { alkalinity, agent, targetPh } = mixing;
  const bare = bareBath(mixing);
  if (bare === null || alkalinity === null || targetPh === null) return null;
  const dosed = dose(bare, agent, targetPh);
  if (!dosed.ok) return null;
  const bath = { ...bare, add: [{ agent, grams: dosed.value.grams }] };
  return (
    <>
      <HeldPart bath={bath} mixing={mixing} set={set} />
      <SewerPart bath={bath} mixing={mixing} set={set} />
    </>
  );
}

function CorrectionLine({ correction }: { readonly correction: Correction }) {
  const { agent, interval } = correction;
  if (agent === null) return <p>Nothing is needed: it stands at the target.</p>;
  return (
    <>
      <p className="amt">
        {massText(correction.grams)} <small>{agent}</small>
      </p>
      <p>
        {massText(interval[0])} to {massText(interval[1])}, as strength and water are uncertain. Add it in
        parts and measure the pH between: carbon dioxide that fizzes off leaves less to do.
      </p>
    </>
  );
}

type BathProps = MixingProps & { readonly bath: BathRecipe };

/** What brings the water a rug still holds to a pH. */
function HeldPart({ bath, mixing, set }: BathProps) {
  const { massKg, retainedLPerKg, heldPh } = mixing;
  const found =
    massKg === null || retainedLPerKg === null || heldPh === null
      ? null
      : carryOver(bath, { massKg, retainedLPerKg }, null, heldPh);
  return (
    <Section title="What the rug still holds">
      <div className="form">
        <NumberField
          label="Water left in it"
          unit="L/kg"
          hint="About 2 drained, 0.33 well extracted."
          least={0.05}
          most={5}
          value={retainedLPerKg}
          onChange={(value) => set({ retainedLPerKg: value })}
        />
        <NumberField
          label="pH it should come to"
          unit="pH"
          least={3}
          most={9}
          value={heldPh}
          onChange={(value) => set({ heldPh: value })}
        />
      </div>
      {found === null ? (
        <p className="why">Give the rug’s dry mass above to see what neutralises the bath it still holds.</p>
      ) : found.ok ? (
        <>
          <p>
            The rug holds {found.value.heldLitres.toFixed(1)} L at pH {found.value.phNow.toFixed(1)}.
          </p>
          <CorrectionLine correction={found.value} />
        </>
      ) : (
        <ProblemNotice problem={found.problem} />
      )}
    </Section>
  );
}

const reasonWords = {
  'too acid': 'It is too acid.',
  'too alkaline': 'It is too alkaline.',
  'diluted only': 'Only water brings it into the limits; diluting is no treatment.',
  'too hot': 'A bath in it is too hot; let it cool.',
} as const;

/** Whether the bath, run together with plain rinse water, may go to the sewer. */
function SewerPart({ bath, mixing, set }: BathProps) {
  const settings = useSettings();
  const { units } = settings;
  const { sewer } = rulebookOf(settings);
  const { rinseWaterL, sewerMostPh, sewerMostC } = mixing;
  const limits = {
    leastPh: sewer.leastPh,
    mostPh: sewerMostPh ?? sewer.mostPh,
    mostTemperatureC: sewerMostC ?? sewer.mostTemperatureC,
  };
  const water = rinseWaterL === null || rinseWaterL === 0 ? [] : [{ ...bath, litres: rinseWaterL, add: [] }];
  const found = effluent([bath, ...water], limits);
  return (
    <Section title="Down the drain">
      <div className="form">
        <MeasureField
          label="Rinse water run in with it"
          measure="bath"
          units={units}
          least={0}
          most={10_000}
          value={rinseWaterL}
          onChange={(value) => set({ rinseWaterL: value })}
        />
        <NumberField
          label="Highest pH your authority allows"
          unit="pH"
          hint={`The workshop keeps to ${sewer.mostPh}. The lowest is ${sewer.leastPh.toFixed(1)}; never below 5.0 (40 CFR 403.5).`}
          least={6}
          most={12}
          value={sewerMostPh}
          onChange={(value) => set({ sewerMostPh: value })}
        />
        <MeasureField
          label="Highest temperature it allows"
          measure="temperature"
          units={units}
          hint={`The workshop keeps to ${sewer.mostTemperatureC} °C.`}
          least={20}
          most={65}
          value={sewerMostC}
          onChange={(value) => set({ sewerMostC: value })}
        />
      </div>
      {!found.ok ? (
        <ProblemNotice problem={found.problem} />
      ) : (
        <Notice
          tone={found.value.mayGo ? 'plain' : 'stop'}
          title={`pH ${found.value.pH.toFixed(1)}, ${found.value.temperatureC.toFixed(0)} °C: ${found.value.mayGo ? 'within the limits.' : 'not down the drain yet.'}`}
        >
          {found.value.reasons.map((reason) => (
            <p key={reason}>{reasonWords[reason]}</p>
          ))}
          {found.value.correction === null ? null : <CorrectionLine correction={found.value.correction} />}
          <p>Computed; measure it. Neutralise only as the local authority allows; its permit comes first.</p>
        </Notice>
      )}
    </Section>
  );
}
