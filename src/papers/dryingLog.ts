import {
  dryBounds,
  dryCriteria,
  expectedDrying,
  type Noted,
  type RugFactOf,
  type WorkshopSettings,
  wetClockHours,
  wetSince,
} from '../dossier/index.ts';
import { measureWords } from '../units/index.ts';
import { dryingPlot } from './dryingPlot.ts';
import {
  figure,
  heatWords,
  hoursBetween,
  humidityWords,
  instantAfter,
  lengthWords,
  momentWords,
  shortMoment,
  temperatureWords,
} from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import type { PaperBody } from './paperKinds.ts';
import { facts, figures, heading, notice, row, table, text, words } from './parts.ts';
import { personWords } from './visitWords.ts';

const standardWords = {
  full: 'full: scale, meter, touch, smell and white cloth',
  'without meter': 'without a moisture meter: a weaker standard',
  'without scale': 'without a scale: a weaker standard',
} as const;

const plots = (context: PaperContext, wet: string): readonly PaperPart[] => {
  const { visit, rug } = context;
  const points = (value: (reading: Noted<'DryingReading'>) => number | undefined) =>
    [...visit.readings]
      .sort((a, b) => (a.when < b.when ? -1 : 1))
      .flatMap((reading) => {
        const read = value(reading);
        return read === undefined ? [] : [{ hours: hoursBetween(wet, reading.when), value: read }];
      });
  const intake = rug.weighings.findLast(({ when }) => when >= visit.received.when && when <= wet);
  const mass = dryingPlot({
    name: 'mass, kg',
    points: points(({ massKg }) => massKg),
    level:
      intake === undefined
        ? null
        : { value: intake.massKg, name: `before washing ${figure(intake.massKg, 2)} kg` },
  });
  const pocket = dryingPlot({
    name: 'pocket humidity, % RH',
    points: points(({ pocketRh }) => (pocketRh === undefined ? undefined : pocketRh * 100)),
    level: {
      value: dryBounds.pocketRhAtMost * 100,
      name: `at most ${figure(dryBounds.pocketRhAtMost * 100, 0)} %`,
    },
  });
  return [mass, pocket].filter((plot) => plot !== null);
};

/** The room's air, one reading an hour: more would not be seen at this size. */
function airPlots({ roomAir = [] }: PaperContext, wet: string): readonly PaperPart[] {
  const hourly = (value: (air: (typeof roomAir)[number]) => number | undefined) => {
    const byHour = new Map<number, { readonly hours: number; readonly value: number }>();
    for (const air of roomAir) {
      const [read, hours] = [value(air), hoursBetween(wet, air.when)];
      if (read !== undefined && !byHour.has(Math.floor(hours)))
        byHour.set(Math.floor(hours), { hours, value: read });
    }
    return [...byHour.values()];
  };
  const plots = [
    dryingPlot({ name: 'room, °C', points: hourly(({ airC }) => airC), level: null }),
    dryingPlot({
      name: 'room, % RH',
      points: hourly(({ rh }) => (rh === undefined ? undefined : rh * 100)),
      level: { value: 45, name: 'aim: at most 45 %' },
    }),
  ].filter((plot) => plot !== null);
  return plots.length === 0
    ? []
    : [
        heading(1, 'Air of the drying room'),
        ...plots,
        text(`${roomAir.length} readings by people, loggers and sensors; the aim is a workshop setting.`),
      ];
}

/** Hours are told only once drying has ended: a paper lies about while the clock runs on. */
const clockParts = (context: PaperContext, wet: string): readonly PaperPart[] => {
  const { visit, timeZone } = context;
  const after = (hours: number) => momentWords(instantAfter(wet, hours), timeZone);
  const lines = [
    `First wetted ${momentWords(wet, timeZone)}; 24 h end ${after(wetClockHours.amberHours)}, 48 h ${after(wetClockHours.redHours)}.`,
    'Dried within 24 to 48 hours, mould will in most cases not grow (US EPA mould course).',
  ];
  if (visit.dryAccepted === null)
    return [
      notice(
        'caution',
        `Not accepted as dry yet; past the safe time from ${after(wetClockHours.redHours)}`,
        lines,
      ),
    ];
  const hours = hoursBetween(wet, visit.dryAccepted.when);
  const tone =
    hours >= wetClockHours.redHours ? 'stop' : hours >= wetClockHours.amberHours ? 'caution' : 'held';
  return [notice(tone, `Accepted as dry ${figure(hours)} h after first wetting`, lines)];
};

type Units = WorkshopSettings['units'];

/** Kilograms as the column says, with pounds under them where the workshop thinks in them. */
const massCell = (massKg: number, units: Units): string =>
  units === 'metric' ? figure(massKg, 2) : `${figure(massKg, 2)}\n(${measureWords('mass', massKg, units)})`;

const warmthCell = (airC: number, units: Units): string =>
  units === 'metric'
    ? temperatureWords(airC)
    : `${temperatureWords(airC)} (${measureWords('temperature', airC, units)})`;

const readingRow = (
  reading: Noted<'DryingReading'>,
  wet: string | null,
  context: PaperContext,
): readonly string[] => [
  `${shortMoment(reading.when, context.timeZone)}\n${personWords(context, reading.by)}`,
  wet === null ? '' : figure(hoursBetween(wet, reading.when)),
  reading.massKg === undefined ? '' : massCell(reading.massKg, context.workshop.settings.units),
  [
    ...(reading.meter ?? []).map(({ reading: read, at }) => `${at}: ${figure(read)}`),
    ...(reading.meterDryReference === undefined
      ? []
      : [`dry reference: ${figure(reading.meterDryReference)}`]),
  ].join('\n'),
  reading.pocketRh === undefined ? '' : humidityWords(reading.pocketRh),
  [
    ...(reading.airRh === undefined ? [] : [humidityWords(reading.airRh)]),
    ...(reading.airC === undefined ? [] : [warmthCell(reading.airC, context.workshop.settings.units)]),
  ].join(', '),
  [
    ...(reading.touch === undefined ? [] : [`touch ${reading.touch}`]),
    ...(reading.smell === undefined ? [] : [`smell ${reading.smell}`]),
    ...(reading.whiteCloth === undefined ? [] : [`white cloth ${reading.whiteCloth}`]),
  ].join('\n'),
];

/** Where along its pole or mesh it was put, where somebody measured. */
const positionWords = (position: RugFactOf<'DryingStarted'>['position'], units: Units): string =>
  position === undefined ? '' : `, ${lengthWords(position.mm, units)} from its ${position.from} end`;

/**
 * How the rug dried: the readings, drawn and listed, and the dry standard criterion by criterion.
 *
 * @source epa-mould-course, 24 and 48 hours; iso-8543, the idea of constant mass; the bounds are workshop settings
 */
export function dryingLog(context: PaperContext): PaperBody {
  const { rug, visit, workshop, timeZone, words: say } = context;
  const wet = wetSince(visit);
  const standard = visit.dryAccepted?.standard ?? workshop.settings.dryStandard;
  const criteria = dryCriteria(rug, visit, standard);
  const met = criteria.filter((criterion) => criterion.met).length;
  const accepted = visit.dryAccepted;
  const expected = expectedDrying(visit);
  const typed = expected?.from === 'estimated by hand' ? visit.dryingExpected : null;
  const expectedWhy = [
    expected?.from ?? '',
    typed === null ? '' : personWords(context, typed.by),
    typed?.why ?? '',
  ]
    .filter((part) => part !== '')
    .join(', ');
  if (wet === null && visit.readings.length === 0 && visit.dryingStarted === null)
    return { subtitle: 'The rug was not wetted in this visit.', parts: [text('There was nothing to dry.')] };
  return {
    subtitle: wet === null ? 'The rug was not wetted in this visit.' : 'From first wetting to dry.',
    parts: [
      ...(wet === null ? [] : clockParts(context, wet)),
      facts(
        row(
          'Drying began',
          visit.dryingStarted === null ? undefined : momentWords(visit.dryingStarted.when, timeZone),
        ),
        ...visit.dryingPlaces.map((put, at) =>
          row(
            at === 0 ? 'Posture and place' : 'Moved',
            `${put.posture}, ${put.place}${positionWords(put.position, workshop.settings.units)}`,
            [
              at === 0 ? '' : momentWords(put.when, timeZone),
              personWords(context, put.by),
              heatWords(put.heated),
            ]
              .filter((part) => part !== '')
              .join(', '),
          ),
        ),
        ...visit.turnings.map((turning) =>
          row(
            'Turned',
            turning.posture,
            `${momentWords(turning.when, timeZone)}, ${personWords(context, turning.by)}`,
          ),
        ),
        row(
          'Accepted as dry',
          accepted === null ? 'not yet' : momentWords(accepted.when, timeZone),
          accepted === null ? '' : personWords(context, accepted.by),
        ),
        expected === null
          ? null
          : row('Expected before the wash', `${figure(expected.hours)} h`, expectedWhy),
      ),
      ...visit.overrides
        .filter(({ rule }) => rule === 'R38' || rule === 'dry standard')
        .map(({ rule, reason, by, when }) =>
          notice(
            'caution',
            `The owner set aside ${rule === 'R38' ? 'rule R38, dry in 48 hours' : 'the dry standard'}`,
            [reason, `${personWords(context, by)}, ${momentWords(when, timeZone)}`],
          ),
        ),
      heading(1, 'The dry standard'),
      facts(row('Standard used', standardWords[standard], 'workshop setting; touch alone never passes')),
      ...(standard === 'full'
        ? []
        : [
            notice('caution', 'A weaker standard was used', [
              'This workshop dried the rug without one of the instruments the full standard asks for.',
            ]),
          ]),
      table(
        [words('', 0.7), words('Asked', 2.6), words('Found', 2.4)],
        criteria.map(({ code, met: isMet, found }) => [
          isMet ? 'met' : 'NOT MET',
          say.dryAsked(code),
          say.dryFound(found),
        ]),
        'No criterion applies.',
        `${met} of ${criteria.length} criteria met. Bounds are workshop settings; constant mass after the idea of ISO 8543.`,
      ),
      ...(accepted !== null && met < criteria.length
        ? [
            notice(
              'caution',
              `Accepted as dry with ${criteria.length - met} of ${criteria.length} criteria not met`,
              ['The readings do not support it by the standard named.'],
            ),
          ]
        : []),
      ...(accepted?.note === undefined ? [] : [text(accepted.note)]),
      heading(1, 'Readings'),
      ...(wet === null ? [] : plots(context, wet)),
      table(
        [
          words('When, who', 1.7),
          figures('Hours wet', 0.7),
          figures('Mass, kg', 0.8),
          words('Meter', 1.5),
          figures('Pocket', 0.8),
          words('Air', 0.9),
          words('Senses', 1.4),
        ],
        visit.readings.map((reading) => readingRow(reading, wet, context)),
        'No reading is on record.',
      ),
      ...(wet === null ? [] : airPlots(context, wet)),
    ],
  };
}
