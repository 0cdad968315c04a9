import {
  type BathRecipe,
  type Correction,
  carryOver,
  effluent,
  hardnessBinders,
  hardnessConsumed,
  peroxideVolumes,
  surfactantByArea,
  usualSewerLimits,
  waterToReckonWith,
} from '../../core/chemistry/index.ts';
import { Notice, NumberField, Picker, ProblemNotice, Section, useKept } from '../kit/index.ts';

const grams = (value: number) => (value < 10 ? value.toFixed(2) : value.toFixed(0));

function CorrectionLine({ correction }: { readonly correction: Correction }) {
  const { agent, interval } = correction;
  if (agent === null) return <p>Nothing is needed: it stands at the target.</p>;
  return (
    <>
      <p className="amt">
        {grams(correction.grams)} g <small>{agent}</small>
      </p>
      <p>
        {grams(interval[0])} to {grams(interval[1])} g, as strength and water are uncertain. Add it in parts
        and measure the pH between: carbon dioxide that fizzes off leaves less to do.
      </p>
    </>
  );
}

/** What brings the water a rug still holds to a pH. */
export function HeldPart({ bath }: { readonly bath: BathRecipe }) {
  const [held, setHeld] = useKept('bench/mix/held', {
    massKg: null as number | null,
    retained: 0.33 as number | null,
    pH: 5.5 as number | null,
  });
  const { massKg, retained, pH } = held;
  const found =
    massKg === null || retained === null || pH === null
      ? null
      : carryOver(bath, { massKg, retainedLPerKg: retained }, null, pH);
  return (
    <Section title="What the rug still holds">
      <div className="form">
        <NumberField
          label="Dry mass of the rug in this bath"
          unit="kg"
          least={0.1}
          most={200}
          value={massKg}
          onChange={(value) => setHeld((before) => ({ ...before, massKg: value }))}
        />
        <NumberField
          label="Water left in it"
          unit="L/kg"
          hint="About 2 drained, 0.33 well extracted."
          least={0.05}
          most={5}
          value={retained}
          onChange={(value) => setHeld((before) => ({ ...before, retained: value }))}
        />
        <NumberField
          label="pH it should come to"
          unit="pH"
          least={3}
          most={9}
          value={pH}
          onChange={(value) => setHeld((before) => ({ ...before, pH: value }))}
        />
      </div>
      {found === null ? (
        <p className="why">Give the rug’s dry mass to see what neutralises the bath it still holds.</p>
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
export function SewerPart({ bath }: { readonly bath: BathRecipe }) {
  const [sewer, setSewer] = useKept('bench/mix/sewer', {
    rinse: 0 as number | null,
    mostPh: usualSewerLimits.mostPh as number | null,
    mostC: usualSewerLimits.mostTemperatureC as number | null,
  });
  const { rinse, mostPh, mostC } = sewer;
  const limits = {
    leastPh: usualSewerLimits.leastPh,
    mostPh: mostPh ?? usualSewerLimits.mostPh,
    mostTemperatureC: mostC ?? usualSewerLimits.mostTemperatureC,
  };
  const water = rinse === null || rinse === 0 ? [] : [{ ...bath, litres: rinse, add: [] }];
  const found = effluent([bath, ...water], limits);
  return (
    <Section title="Down the drain">
      <div className="form">
        <NumberField
          label="Rinse water run in with it"
          unit="L"
          least={0}
          most={10_000}
          value={rinse}
          onChange={(value) => setSewer((before) => ({ ...before, rinse: value }))}
        />
        <NumberField
          label="Highest pH your authority allows"
          unit="pH"
          hint="The lowest is 5.0 (40 CFR 403.5)."
          least={6}
          most={12}
          value={mostPh}
          onChange={(value) => setSewer((before) => ({ ...before, mostPh: value }))}
        />
        <NumberField
          label="Highest temperature it allows"
          unit="°C"
          least={20}
          most={65}
          value={mostC}
          onChange={(value) => setSewer((before) => ({ ...before, mostC: value }))}
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

/** Detergent by area, what hard water uses up of a soap, and the volumes of a peroxide. */
export function DetergentPart({ litres }: { readonly litres: number | null }) {
  const [wanted, setWanted] = useKept('bench/mix/detergent', {
    areaM2: null as number | null,
    hardness: null as number | null,
    agent: 'soap, as sodium oleate',
    peroxide: null as number | null,
  });
  const { areaM2, hardness, agent, peroxide } = wanted;
  const byArea = areaM2 === null || litres === null ? null : surfactantByArea(areaM2, litres);
  const worst = waterToReckonWith(null, '').hardness.most;
  const used =
    litres === null
      ? null
      : hardnessConsumed({ value: hardness ?? worst, unit: 'mg/L CaCO₃' }, litres, agent);
  return (
    <Section title="Detergent, soap and peroxide">
      <div className="form">
        <NumberField
          label="Area of the rug"
          unit="m²"
          least={0.1}
          most={100}
          value={areaM2}
          onChange={(value) => setWanted((before) => ({ ...before, areaM2: value }))}
        />
        <NumberField
          label="Hardness of the water"
          unit="mg/L CaCO₃"
          least={0}
          most={2000}
          value={hardness}
          onChange={(value) => setWanted((before) => ({ ...before, hardness: value }))}
        />
        <Picker
          label="Soap or softener"
          options={hardnessBinders.map((name) => ({ value: name, words: name }))}
          value={agent}
          onChange={(value) => setWanted((before) => ({ ...before, agent: value }))}
        />
        <NumberField
          label="Hydrogen peroxide in the bottle"
          unit="g/L"
          hint="30 g/L is 3 %."
          least={0}
          most={500}
          value={peroxide}
          onChange={(value) => setWanted((before) => ({ ...before, peroxide: value }))}
        />
      </div>
      {byArea === null ? (
        <p className="why">Give the litres of the bath and the rug’s area for the detergent.</p>
      ) : byArea.ok ? (
        <p>
          Detergent concentrate {grams(byArea.value.grams.least)} to {grams(byArea.value.grams.most)} g: the
          bath is then {byArea.value.gPerL.least.toFixed(1)} to {byArea.value.gPerL.most.toFixed(1)} g/L (15
          to 40 g/m², workshop setting; the supplier’s sheet comes first).
        </p>
      ) : (
        <ProblemNotice problem={byArea.problem} />
      )}
      {used === null ? null : used.ok ? (
        <p>
          The water uses up {grams(used.value.grams)} g of {agent} before any is left to work
          {hardness === null ? ` (hardness not given: ${worst} mg/L is assumed)` : ''}. For synthetic
          detergents, citrate and phosphates there is no fixed figure.
        </p>
      ) : (
        <ProblemNotice problem={used.problem} />
      )}
      {peroxide === null ? null : (
        <p>
          {(peroxide / 10).toFixed(1)} % peroxide is {peroxideVolumes(peroxide / 34.015).toFixed(0)} volumes.
          On a rug at most 3 %, never warm.
        </p>
      )}
    </Section>
  );
}
