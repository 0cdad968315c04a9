import { phBandOf, rescuePhBand } from '../core/wash/index.ts';
import type { Noted, Signed } from '../dossier/index.ts';
import { stepId, stopSaid, wasRescuing, wetSince } from '../dossier/index.ts';
import {
  figure,
  hoursBetween,
  lengthWords,
  momentWords,
  shortMoment,
  temperatureWords,
} from './measureWords.ts';
import type { PaperContext } from './paperContext.ts';
import type { PaperBody } from './paperKinds.ts';
import { facts, figures, heading, notice, row, table, text, words } from './parts.ts';
import { photographsOf, setPhotographs } from './photographs.ts';
import { planInForce } from './planInForce.ts';
import { markWords, stainLogParts, stepName } from './stainParts.ts';
import { personWords } from './visitWords.ts';

const ph = (value: number | undefined): string => (value === undefined ? '' : figure(value, 2));

const rinseWords = (rinse: Noted<'RinseMeasured'>): string =>
  [
    ...(rinse.conductivityUsPerCm === undefined ? [] : [`${figure(rinse.conductivityUsPerCm, 0)} µS/cm`]),
    ...(rinse.supplyConductivityUsPerCm === undefined
      ? []
      : [`supply ${figure(rinse.supplyConductivityUsPerCm, 0)} µS/cm`]),
    ...(rinse.supplyPh === undefined ? [] : [`supply pH ${figure(rinse.supplyPh, 2)}`]),
    ...(rinse.foam === undefined ? [] : [`foam ${rinse.foam}`]),
  ].join(', ');

/**
 * What was done to the rug in water, by whom and when: steps, baths, rinses, dusting, stops and overrides.
 *
 * @source none: contents by this project's rules for papers
 */
export function washLog(context: PaperContext): PaperBody {
  const { visit, timeZone } = context;
  const { units } = context.workshop.settings;
  const plan = planInForce(context)?.plan ?? null;
  const plannedAs = (step: string | undefined) => plan?.steps.find((known) => stepId(known) === step);
  const nameOf = (step: string | undefined): string => {
    const known = plannedAs(step);
    if (known !== undefined) return stepName(context, known);
    return step?.replace(/^\d+-/, '').replaceAll('-', ' ') ?? '';
  };
  /** The pH a bath was to keep: its step's, or the rescue's while a colour was rescued. */
  const bandOf = ({ step, when }: Noted<'BathMeasured'>): string => {
    const isRescue = wasRescuing(visit, when);
    const band = isRescue ? rescuePhBand : plan === null ? null : phBandOf(plannedAs(step), plan);
    return band === null
      ? ''
      : `${figure(band.least, 2)} to ${figure(band.most, 2)}${isRescue ? ' (rescue)' : ''}`;
  };
  const clothWords = (grade: string | undefined, on: string | undefined): string => {
    const name = context.rug.colours.find(({ colour }) => colour === on)?.name;
    return grade === undefined ? '' : `${grade}${name === undefined ? '' : `, ${name}`}`;
  };
  /** What a step took from the shelf, by the product's name where it is known. */
  const takenWords = (used: Noted<'StepDone'>['used'] = []): readonly string[] =>
    used.map(({ agent, lot, amount }) => {
      const product = context.shelf?.agents.find((one) => one.agent === agent);
      const of = product === undefined ? agent : `${product.unit} ${product.name}`;
      return `${figure(amount)} ${of}, lot ${lot}`;
    });
  const moment = (noted: { readonly when: string } | null) =>
    noted === null ? '' : shortMoment(noted.when, timeZone);
  const who = (noted: { readonly by: string } | null) =>
    noted === null ? '' : personWords(context, noted.by);
  /** Who stood ready for a step, in their own entries. */
  const helpersOf = (step: string, startedAt: string | undefined): string => {
    const hands = visit.hands.filter((hand) => hand.step === step && hand.when <= (startedAt ?? ''));
    return [...new Set(hands.map(who))].map((name) => `with ${name}`).join(', ');
  };
  const taken = photographsOf(context, 'work');
  /** Photographs taken with a reading, a spotter or a flow's step. */
  const readWith = (what: string, some: readonly (Signed & { readonly photos: readonly string[] })[]) =>
    some.flatMap(({ photos, when }) =>
      photos.map((photo) => ({ photo, caption: `${what}, ${shortMoment(when, timeZone)}` })),
    );
  const read = [
    ...readWith('bath reading', visit.baths),
    ...readWith(
      'rinse reading',
      visit.rinses.map((rinse) => ({ ...rinse, photos: rinse.photos ?? [] })),
    ),
    ...readWith('stain', visit.spots),
    ...readWith('flow', visit.flowLog),
  ];
  const wet = wetSince(visit);
  // A plan without extraction ends where the rug is put to dry.
  const wetUntil =
    visit.steps.find(
      ({ step, done }) => plannedAs(step)?.kind === 'extract' && done !== null && done.when >= (wet ?? ''),
    )?.done?.when ?? visit.dryingPlaces[0]?.when;
  const open = visit.stops.filter(({ cleared }) => cleared === null);
  return {
    subtitle:
      wet === null
        ? 'No water has touched the rug in this visit.'
        : `First wetted ${momentWords(wet, timeZone)}.`,
    parts: [
      ...open.map(({ called }) =>
        notice(
          'stop',
          `Stop not cleared: ${stopSaid(called, units)}`,
          called.note === undefined ? [] : [called.note],
        ),
      ),
      ...(plan === null
        ? []
        : [
            facts(
              row('Method of the plan', plan.method, `rulebook ${plan.rulebook}`),
              row(
                'pH of every bath',
                plan.bounds.bathPh === 'no liquid'
                  ? 'no liquid'
                  : `${figure(plan.bounds.bathPh.least)} to ${figure(plan.bounds.bathPh.most)}`,
              ),
              row('Water, at most', temperatureWords(plan.bounds.temperatureC)),
              ...(wet === null
                ? []
                : [
                    row(
                      'Wet until extracted',
                      wetUntil === undefined
                        ? 'not extracted yet'
                        : `${figure(hoursBetween(wet, wetUntil) * 60, 0)} min`,
                      `the plan allows ${figure(plan.bounds.wetMinutes, 0)} min`,
                    ),
                  ]),
            ),
          ]),
      heading(1, 'Dusting'),
      table(
        [
          figures('Pass', 0.6),
          words('Side', 0.8),
          figures('Soil, g', 1),
          figures('Minutes', 0.9),
          words('When', 2),
          words('Who', 1.2),
        ],
        visit.dustings.map((pass) => [
          String(pass.pass),
          pass.side,
          figure(pass.soilG),
          pass.minutes === undefined ? '' : figure(pass.minutes, 0),
          moment(pass),
          who(pass),
        ]),
        'No dusting is on record.',
      ),
      heading(1, 'Steps'),
      table(
        [
          words('Step', 1.5),
          words('Wet', 0.5),
          words('Started', 1.6),
          words('Done', 1.6),
          figures('Minutes', 0.8),
          words('By', 1),
          words('Taken, helpers, note', 1.8),
        ],
        visit.steps.map(({ step, started, done }) => [
          nameOf(step),
          started === null ? '' : started.wets ? 'yes' : 'no',
          moment(started),
          moment(done),
          started === null || done === null ? '' : figure(hoursBetween(started.when, done.when) * 60, 0),
          who(done ?? started),
          [
            ...takenWords(done?.used),
            done?.lot === undefined ? '' : `lot ${done.lot}`,
            started?.helpers ?? '',
            helpersOf(step, started?.when),
            done?.early === undefined ? '' : `before its dwell was over: ${done.early}`,
            done?.note ?? '',
          ]
            .filter((one) => one !== '')
            .join('\n'),
        ]),
        'No step has been started.',
      ),
      ...stainLogParts(context),
      heading(1, 'Baths'),
      table(
        [
          words('When', 1.6),
          words('Step', 1.2),
          figures('pH', 0.6),
          words('pH to keep', 0.9),
          figures('°C', 0.6),
          words('White cloth', 1.2),
          words('Run-off', 1),
          words('Who', 1),
        ],
        visit.baths.map((bath) => [
          moment(bath),
          nameOf(bath.step),
          ph(bath.ph),
          bath.ph === undefined ? '' : bandOf(bath),
          bath.temperatureC === undefined ? '' : figure(bath.temperatureC),
          clothWords(bath.whiteClothGrade, bath.clothOn),
          bath.runOff ?? '',
          who(bath),
        ]),
        'No bath was measured.',
      ),
      heading(1, 'Rinses'),
      table(
        [
          words('When', 1.6),
          words('Where', 1),
          figures('pH', 0.6),
          figures('°C', 0.6),
          words('Conductivity, supply, foam', 2),
          words('White cloth', 1.2),
          words('Run-off', 0.9),
          words('Who', 1),
        ],
        visit.rinses.map((rinse) => [
          moment(rinse),
          rinse.mark === undefined ? nameOf(rinse.step) : markWords(context, rinse.mark),
          ph(rinse.ph),
          rinse.temperatureC === undefined ? '' : figure(rinse.temperatureC),
          rinseWords(rinse),
          clothWords(rinse.whiteClothGrade, rinse.clothOn),
          rinse.runOff ?? '',
          who(rinse),
        ]),
        'No rinse was measured.',
      ),
      ...(visit.lengths.length === 0
        ? []
        : [
            heading(1, 'Size under work'),
            table(
              [words('When', 1.6), words('Length', 1), words('Width', 1), words('Who', 1)],
              visit.lengths.map((checked) => [
                moment(checked),
                checked.lengthMm === undefined ? '' : lengthWords(checked.lengthMm, units),
                checked.widthMm === undefined ? '' : lengthWords(checked.widthMm, units),
                who(checked),
              ]),
              '',
            ),
          ]),
      heading(1, 'Stops'),
      table(
        [words('Called', 1.5), words('Because', 2), words('Cleared', 1.5), words('How', 2)],
        visit.stops.map(({ called, cleared }) => [
          `${moment(called)}\n${called.raisedBy === undefined ? who(called) : `raised by a reading, ${who(called)}`}`,
          [stopSaid(called, units), ...(called.note === undefined ? [] : [called.note])].join('\n'),
          cleared === null ? 'not cleared' : `${moment(cleared)}\n${who(cleared)}`,
          cleared?.how ?? '',
        ]),
        'No stop was called.',
      ),
      ...(visit.overrides.length === 0
        ? []
        : [
            heading(1, 'Rules set aside'),
            facts(
              ...visit.overrides.map((override) =>
                row(`Rule ${override.rule}`, override.reason, `${who(override)}, ${moment(override)}`),
              ),
            ),
          ]),
      heading(1, 'Photographs of the work'),
      ...(read.length > 0 && taken.length === 0
        ? []
        : setPhotographs(taken, context, 'No photograph was taken during the work.')),
      ...(read.length === 0 ? [] : [{ kind: 'pictures', across: 2, pictures: read } as const]),
      text('White cloth grades are blots graded by eye on the ISO 105-A03 grey scale.', 'soft'),
    ],
  };
}
