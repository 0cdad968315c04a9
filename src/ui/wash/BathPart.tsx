import type { PlanStep, WashPlan } from '../../core/wash/index.ts';
import { rulebookOf, stepId } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { figure, temperatureWords } from '../dossier/figures.ts';
import { Part } from '../dossier/Part.tsx';
import { When } from '../kit/index.ts';
import { BathPlot } from './BathPlot.tsx';
import { clothPlot, phPlot, runOffPlot, warmthPlot, wholeRugReadings } from './bathPlots.ts';
import { rinseEnd } from './rinseEnd.ts';

/** The readings of baths and rinses as pictures against their limits, and whether the rinse is at its end. */
export function BathPart({ plan, step }: { readonly plan: WashPlan; readonly step: PlanStep | undefined }) {
  const { standing, visit, settings, nameOf } = useDossier();
  if (visit === null || visit.baths.length + visit.rinses.length === 0) return null;
  // A reading at one stain says nothing of the whole rug's rinse.
  const wholeRug = visit.rinses.filter(({ mark }) => mark === undefined);
  const readings = [...visit.baths, ...visit.rinses].sort((a, b) => (a.when < b.when ? -1 : 1));
  // Each step has its own band, so only the readings of one step share a picture: the latest measured.
  const measured = wholeRugReadings(visit).findLast(({ step }) => step !== undefined)?.step;
  const pictured = plan.steps.find((one) => stepId(one) === measured) ?? step;
  const { stops, residues } = rulebookOf(settings);
  const bath = { visit, plan, step: pictured, limits: stops };
  const plots = [
    phPlot(bath),
    warmthPlot(bath, (celsius) => temperatureWords(celsius, settings.units)),
    clothPlot(standing, visit),
    runOffPlot(visit, stops),
  ].filter((plot) => plot !== null);
  const rinse = rinseEnd(wholeRug, residues);
  return (
    <Part id="bath" title="Bath and rinse">
      {pictured !== undefined && (
        <p className="why">
          pH and warmth of step {pictured.order}, {pictured.kind}; cloth and run-off of the whole wash
        </p>
      )}
      <div className="bath-plots">
        {plots.map((plot) => (
          <BathPlot key={plot.name} plot={plot} />
        ))}
      </div>
      {wholeRug.length > 0 && (
        <>
          <h3>End of the rinse</h3>
          <ul className="criteria">
            {rinse.map(({ asked, found, met }) => (
              <li key={asked} className={met ? 'met' : 'unmet'}>
                <span aria-hidden="true">{met ? '✓' : '▲'} </span>
                <span className="unseen">{met ? 'met: ' : 'not met: '}</span>
                {asked}
                <span className="why">{found}</span>
              </li>
            ))}
          </ul>
        </>
      )}
      <details>
        <summary>All readings ({readings.length})</summary>
        <ul className="plain-list">
          {[...readings].reverse().map((one) => (
            <li key={one.entry}>
              <When at={one.when} />{' '}
              {[
                one.ph === undefined ? '' : `pH ${figure(one.ph, 2)}`,
                one.temperatureC === undefined ? '' : `${figure(one.temperatureC)} °C`,
                'conductivityUsPerCm' in one && one.conductivityUsPerCm !== undefined
                  ? `${figure(one.conductivityUsPerCm, 0)} µS/cm`
                  : '',
                one.whiteClothGrade === undefined ? '' : `white cloth ${one.whiteClothGrade}`,
                one.runOff === undefined ? '' : `run-off ${one.runOff}`,
              ]
                .filter((part) => part !== '')
                .join(', ')}
              <span className="why">{nameOf(one.by)}</span>
            </li>
          ))}
        </ul>
      </details>
    </Part>
  );
}
