import { Link } from 'wouter';
import {
  type AgentAmount,
  type BathRecipe,
  bathPh,
  chemicalAgents,
  dose,
  gasWarnings,
  rinsePlans,
  solutionOf,
  usualDoseUncertainty,
  usualRinse,
  usualRinsePace,
  waterToReckonWith,
} from '../../core/chemistry/index.ts';
import { Button, Notice, NumberField, Picker, ProblemNotice, Section, useKept } from '../kit/index.ts';
import { DetergentPart, HeldPart, SewerPart } from './MixParts.tsx';

interface Mixing {
  readonly litres: number | null;
  readonly temperatureC: number | null;
  readonly alkalinity: number | null;
  readonly agent: string;
  readonly targetPh: number | null;
  readonly massKg: number | null;
}

const nothingTyped: Mixing = {
  litres: null,
  temperatureC: 20,
  alkalinity: null,
  agent: 'citric acid, anhydrous',
  targetPh: 5,
  massKg: null,
};

const unknownWater = waterToReckonWith(null, '').alkalinity;

const grams = (value: number) => (value < 10 ? value.toFixed(2) : value.toFixed(0));

/** The dose of an agent that brings a bath to a pH, with the range it may truly need. */
function Dose({ mixing }: { readonly mixing: Mixing }) {
  const { litres, temperatureC, alkalinity, agent, targetPh } = mixing;
  if (litres === null || temperatureC === null || targetPh === null) {
    return (
      <Notice tone="plain" title="Not enough is known yet.">
        <p>Give litres, temperature and the pH wanted.</p>
      </Notice>
    );
  }
  const recipe = {
    litres,
    temperatureC,
    alkalinityMgPerLCaCO3: alkalinity ?? unknownWater.value,
    activity: 'davies',
    openToAir: false,
    add: [] as readonly AgentAmount[],
  } as const;
  const waterShare = alkalinity === null ? 1 : usualDoseUncertainty.alkalinity;
  const dosed = dose(recipe, agent, targetPh, { ...usualDoseUncertainty, alkalinity: waterShare });
  if (!dosed.ok) return <ProblemNotice problem={dosed.problem} />;
  const [least, most] = dosed.value.interval;
  const solution = solutionOf({ ...recipe, add: [{ agent, grams: dosed.value.grams }] });
  const bath = solution.ok ? bathPh(solution.value) : solution;
  const warnings = bath.ok && solution.ok ? gasWarnings(bath.value, solution.value.acidsMolPerL) : [];
  return (
    <>
      <p className="amt">
        {grams(dosed.value.grams)} g <small>{agent}</small>
      </p>
      <p>
        {grams(least)} to {grams(most)} g, with the agent’s strength ±{usualDoseUncertainty.strength * 100} %
        and the water ±{waterShare * 100} % (workshop setting).
      </p>
      {alkalinity === null ? (
        <Notice tone="caution" title="The water’s alkalinity is not known.">
          <p>
            Anything from {unknownWater.least} to {unknownWater.most} mg/L is assumed. It stands on the water
            supplier’s sheet and narrows the range; what the rug holds and what may go down the drain wait for
            it.
          </p>
        </Notice>
      ) : null}
      <p className="why">
        Computed by charge balance; the water is taken as bicarbonate that loses no carbon dioxide. Start at
        the lower end and measure the pH before use.
      </p>
      {warnings.map(({ gas, level }) => (
        <Notice
          key={gas}
          tone="stop"
          title={level === 'blocked' ? `Gives off ${gas}.` : `${gas}: ventilate.`}
        >
          <p>Never mix this; at no strength.</p>
        </Notice>
      ))}
    </>
  );
}

/** What the dosed bath leaves in the rug, and where it may go. */
function AfterBath({ mixing }: { readonly mixing: Mixing }) {
  const { litres, temperatureC, alkalinity, agent, targetPh } = mixing;
  if (litres === null || temperatureC === null || alkalinity === null || targetPh === null) return null;
  const bare: BathRecipe = {
    ...{ litres, temperatureC, alkalinityMgPerLCaCO3: alkalinity },
    ...{ activity: 'davies', openToAir: false, add: [] },
  };
  const dosed = dose(bare, agent, targetPh);
  if (!dosed.ok) return null;
  const bath = { ...bare, add: [{ agent, grams: dosed.value.grams }] };
  return (
    <>
      <HeldPart bath={bath} />
      <SewerPart bath={bath} />
    </>
  );
}

/** How much water each way of rinsing takes down to half a per cent of the bath. */
function Rinse({ massKg }: { readonly massKg: number | null }) {
  const ways = rinsePlans(massKg ?? 1, 0.005);
  if (!ways.ok) return <ProblemNotice problem={ways.problem} />;
  return (
    <div className="scroll">
      <table>
        <thead>
          <tr>
            <th scope="col">Way</th>
            <th scope="col" className="num">
              Fills
            </th>
            <th scope="col" className="num">
              Water
            </th>
            {massKg === null ? null : (
              <th scope="col" className="num">
                Minutes
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {ways.value.map(({ way, fills, litresPerKg, minutes }) => (
            <tr key={way}>
              <th scope="row">{way}</th>
              <td className="num">{fills ?? '–'}</td>
              <td className="num">
                {massKg === null
                  ? `${litresPerKg.toFixed(0)} L per kg of rug`
                  : `${(litresPerKg * massKg).toFixed(0)} L`}
              </td>
              {massKg === null ? null : (
                <td className="num">
                  {minutes.least.toFixed(0)}–{minutes.most.toFixed(0)}
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Mixing and rinsing at the bench: what to weigh for a bath, and how to get it out again. */
export function MixPage() {
  const [mixing, setMixing, forget] = useKept<Mixing>('bench/mix', nothingTyped);
  const set = (changed: Partial<Mixing>) => setMixing((before) => ({ ...before, ...changed }));
  return (
    <div className="page narrow">
      <Link className="crumb" href="/bench">
        Bench
      </Link>
      <h1>Mix and rinse</h1>
      <p className="lead">What to weigh for a bath, and how much water takes it out again.</p>
      <Section
        title="The bath"
        aside={
          <Button tone="ghost" onPress={forget}>
            Begin anew
          </Button>
        }
      >
        <div className="form">
          <NumberField
            label="Water"
            unit="L"
            least={0.1}
            most={10_000}
            value={mixing.litres}
            onChange={(litres) => set({ litres })}
          />
          <NumberField
            label="Temperature"
            unit="°C"
            least={0}
            most={60}
            value={mixing.temperatureC}
            onChange={(temperatureC) => set({ temperatureC })}
          />
          <NumberField
            label="Alkalinity of the water"
            unit="mg/L CaCO₃"
            hint="From the water supplier’s sheet; 100 soft, 250 hard."
            least={0}
            most={2000}
            value={mixing.alkalinity}
            onChange={(alkalinity) => set({ alkalinity })}
          />
          <Picker
            label="Agent"
            options={chemicalAgents
              .filter(({ kind }) => kind === 'acid' || kind === 'base')
              .map(({ agent }) => ({ value: agent, words: agent }))}
            value={mixing.agent}
            onChange={(agent) => set({ agent })}
          />
          <NumberField
            label="pH wanted"
            unit="pH"
            least={1}
            most={13}
            value={mixing.targetPh}
            onChange={(targetPh) => set({ targetPh })}
          />
        </div>
      </Section>
      <Section title="The dose">
        <Dose mixing={mixing} />
      </Section>
      <Section title="Rinsing to half a per cent">
        <div className="form">
          <NumberField
            label="Dry mass of the rug"
            unit="kg"
            least={0.1}
            most={200}
            value={mixing.massKg}
            onChange={(massKg) => set({ massKg })}
          />
        </div>
        <Rinse massKg={mixing.massKg} />
        <p className="why">
          Perfect mixing; the rug holds {usualRinse.drainedLPerKg} L/kg drained and{' '}
          {usualRinse.extractedLPerKg} L/kg extracted, a fill is {usualRinse.fillLPerKg} L/kg, water runs at{' '}
          {usualRinsePace.waterLPerMin} L/min (workshop settings). Least water first. The readings decide when
          the rinse is done.
        </p>
      </Section>
      <AfterBath mixing={mixing} />
      <DetergentPart litres={mixing.litres} />
      <Notice tone="caution" title="Gloves and goggles.">
        <p>
          The supplier’s safety data sheet comes first; acid into water, never water into acid. Never chlorine
          bleach with an acid. Waste water as the local authority allows.
        </p>
      </Notice>
    </div>
  );
}
