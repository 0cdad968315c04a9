import { stopSaid } from '../dossier/index.ts';
import { done, type Result, refused } from '../units/index.ts';
import { extentWords, gradeWords, numberedMarks, placeWords } from './markWords.ts';
import { momentWords, shortMoment } from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import type { PaperBody } from './paperKinds.ts';
import type { PaperHasNoGround } from './paperProblem.ts';
import { facts, figures, heading, notice, row, table, text, words } from './parts.ts';
import { setPhotographs } from './photographs.ts';
import { clientName, personWords } from './visitWords.ts';

type Incident = PaperContext['visit']['incidents'][number];

const incidentParts = (incident: Incident, at: number, context: PaperContext): readonly PaperPart[] => {
  const pictures = context.rug.photographs.filter(({ photo }) => incident.photos.includes(photo));
  return [
    heading(1, `Incident ${at + 1}`),
    facts(
      row('When', momentWords(incident.when, context.timeZone)),
      row('Reported by', personWords(context, incident.by)),
      row('What happened', incident.what),
      row('Cause', incident.cause ?? 'not known'),
      row('What was done', incident.action),
    ),
    incident.clientTold
      ? notice(
          'note',
          'The client was told',
          incident.told === undefined
            ? []
            : [`${incident.told.how}; ${momentWords(incident.told.when, context.timeZone)}`],
        )
      : notice('stop', 'The client has not been told', [
          'Work that is not needed to keep the rug safe waits until they have been, and have agreed again.',
        ]),
    ...setPhotographs(pictures, context, 'No photograph belongs to this report.'),
  ];
};

/**
 * What went wrong, when, why as far as known, what was done, and whether the client knows.
 *
 * @refuses paper-has-no-ground - no incident was reported in this visit
 * @source none: contents by this project's rules for papers
 */
export function incidentReport(context: PaperContext): Result<PaperBody, PaperHasNoGround> {
  const { visit, rug } = context;
  if (visit.incidents.length === 0)
    return refused('paper-has-no-ground', { paper: 'incident-report', missing: 'incident', because: '' });
  const found = numberedMarks(rug).filter(({ mark }) => mark.foundDuringWork === true);
  const stops = visit.stops.map(({ called, cleared }) => [
    shortMoment(called.when, context.timeZone),
    stopSaid(called, context.workshop.settings.units),
    cleared === null ? 'not cleared' : `${cleared.how}\n${shortMoment(cleared.when, context.timeZone)}`,
  ]);
  return done({
    subtitle: 'What happened that nobody planned.',
    parts: [
      facts(row('Client', clientName(context)), row('Rug came in for', visit.received.scope.join(', '))),
      ...visit.incidents.flatMap((incident, at) => incidentParts(incident, at, context)),
      heading(1, 'Marks found during work'),
      table(
        [
          figures('No.', 0.5),
          words('Word', 1.5),
          words('Where, cm', 1.5),
          words('Extent', 1.2),
          words('Grade', 1.8),
        ],
        found.map(({ number, mark }) => [
          number,
          mark.word,
          placeWords(mark),
          extentWords(mark),
          `${mark.grade} ${gradeWords[mark.grade] ?? ''}`,
        ]),
        'None was recorded.',
      ),
      heading(1, 'Stops called'),
      table(
        [words('When', 1.2), words('Condition', 1.6), words('How it ended', 2.4)],
        stops,
        'None was called.',
      ),
      text('This report states what was seen and done. It admits or denies no liability.', 'soft'),
    ],
  });
}
