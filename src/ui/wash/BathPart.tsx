import {
  type PlanStep,
  phBandOf,
  rescuePhBand,
  temperatureBandOf,
  type WashPlan,
} from '../../core/wash/index.ts';
import { isRescuing, stepId } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { figure } from '../dossier/figures.ts';
import { Part } from '../dossier/Part.tsx';
import { When } from '../kit/index.ts';
import { BandPlot, type PlotPoint } from './BandPlot.tsx';
import { rinseEnd } from './rinseEnd.ts';

/** The readings of baths and rinses as pictures against their bands, and whether the rinse is at its end. */
export function BathPart({ plan, step }: { readonly plan: WashPlan; readonly step: PlanStep | undefined }) {
  const { visit, nameOf } = useDossier();
  if (visit === null || visit.baths.length + visit.rinses.length === 0) return null;
  const rescuing = isRescuing(visit);
  // A reading at one stain says nothing of the whole rug's rinse.
  const wholeRug = visit.rinses.filter(({ mark }) => mark === undefined);
  const readings = [...visit.baths, ...visit.rinses].sort((a, b) => (a.when < b.when ? -1 : 1));
  // Each step has its own band, so only the readings of one step share a picture: the latest measured.
  const measured = readings.findLast(({ step }) => step !== undefined)?.step;
  const pictured = plan.steps.find((one) => stepId(one) === measured) ?? step;
  const points = (value: (one: (typeof readings)[number]) => number | undefined): readonly PlotPoint[] =>
    readings.flatMap((one) => {
      if (one.step !== undefined && one.step !== measured) return [];
      if ('mark' in one && one.mark !== undefined) return [];
      const figureRead = value(one);
      return figureRead === undefined ? [] : [{ at: one.when, value: figureRead }];
    });
  const ph = points((one) => one.ph);
  const warmth = points((one) => one.temperatureC);
  const phBand = rescuing ? rescuePhBand : phBandOf(pictured, plan);
  const rinse = rinseEnd(wholeRug);
  return (
    <Part id="bath" title="Bath and rinse">
      {pictured !== undefined && (
        <p className="why">
          Step {pictured.order}: {pictured.kind}
        </p>
      )}
      {ph.length > 0 && phBand !== null && <BandPlot name="pH" unit="" points={ph} band={phBand} />}
      {warmth.length > 0 && (
        <BandPlot name="Warmth" unit="°C" points={warmth} band={temperatureBandOf(pictured, plan)} />
      )}
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
