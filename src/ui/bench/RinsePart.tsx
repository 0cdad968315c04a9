import { rinsePlans, usualRinse } from '../../core/chemistry/index.ts';
import { rinsePaceOf } from '../../core/wash/index.ts';
import { rulebookOf } from '../../dossier/index.ts';
import { shownIn, unitOf } from '../../units/index.ts';
import { useSettings } from '../call/index.ts';
import { ProblemNotice, Section } from '../kit/index.ts';
import { RinsePlot, rinseClass } from './RinsePlot.tsx';

/** Half a per cent of the bath: what a rinse comes to before the readings decide. */
const end = 0.005;

/** How much water and time each way of rinsing takes, for this rug or for a kilogram of any. */
export function RinsePart({ massKg }: { readonly massKg: number | null }) {
  const settings = useSettings();
  const { units } = settings;
  const pace = rinsePaceOf(rulebookOf(settings));
  const plans = rinsePlans(massKg ?? 1, end, null, usualRinse, pace);
  if (!plans.ok) return <ProblemNotice problem={plans.problem} />;
  const unit = massKg === null ? 'L per kg of rug' : unitOf('bath', units);
  const shown = (litresPerKg: number) =>
    massKg === null ? litresPerKg : shownIn('bath', litresPerKg * massKg, units);
  return (
    <Section title="Rinsing to half a per cent">
      <RinsePlot ways={plans.value} end={end} shown={shown} unit={massKg === null ? 'L/kg' : unit} />
      <div className="scroll">
        <table className="mixWays">
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
            {plans.value.map(({ way, fills, litresPerKg, minutes }) => (
              <tr key={way}>
                <th scope="row">
                  <svg className="rinseKey" viewBox="0 0 44 12" aria-hidden="true">
                    <line x1="0" x2="44" y1="6" y2="6" className={rinseClass[way]} />
                  </svg>
                  {way}
                </th>
                <td className="num">{fills ?? '–'}</td>
                <td className="num">
                  {shown(litresPerKg).toFixed(0)} {unit}
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
      <p className="why">
        {massKg === null ? 'Give the rug’s dry mass for its litres and minutes. ' : ''}
        Perfect mixing; the rug holds {usualRinse.drainedLPerKg} L/kg drained and {usualRinse.extractedLPerKg}{' '}
        L/kg extracted, a fill is {usualRinse.fillLPerKg} L/kg, water runs at {pace.waterLPerMin} L/min
        (workshop settings). Least water first. The readings decide when the rinse is done.
      </p>
    </Section>
  );
}
