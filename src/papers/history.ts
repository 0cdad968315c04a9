import { type RugEntry, stepId, withdrawnIds } from '../dossier/index.ts';
import { type FactNames, factWords } from './factWords.ts';
import { numberedMarks } from './markWords.ts';
import { shortMoment } from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import type { PaperContext } from './paperContext.ts';
import { figures, table, text, words } from './parts.ts';
import { agreedPlanOf, personWords } from './visitWords.ts';

const namesIn = (context: PaperContext): FactNames => {
  const { rug } = context;
  const numbers = new Map(numberedMarks(rug).map(({ number, mark }) => [mark.mark, number]));
  const steps = new Map(
    rug.visits.flatMap((visit) =>
      (agreedPlanOf(visit)?.steps ?? []).map((step) => [stepId(step), step.kind] as const),
    ),
  );
  return {
    colour: (id) => rug.colours.find(({ colour }) => colour === id)?.name ?? id,
    mark: (id) => numbers.get(id) ?? '(withdrawn)',
    step: (id) => steps.get(id) ?? id.replace(/^\d+-/, '').replaceAll('-', ' '),
  };
};

/**
 * Every entry of the rug's stream, oldest first, with who and when; a withdrawn entry stays readable beside
 * the withdrawal that took it out of account.
 *
 * @source none: rule of this project; nothing recorded is ever lost
 */
export function history(context: PaperContext): readonly PaperPart[] {
  const { entries, timeZone } = context;
  const names = namesIn(context);
  const withdrawn = withdrawnIds(entries);
  const numberOf = new Map(entries.map(({ id, revision }) => [id, revision]));
  const withdrawalOf = new Map(
    entries.flatMap(({ fact, revision }) =>
      fact.type === 'EntryWithdrawn' ? [[fact.entry, revision] as const] : [],
    ),
  );
  const said = ({ id, fact }: RugEntry): string => {
    const line = factWords(fact, names);
    if (fact.type === 'EntryWithdrawn')
      return `Withdraws entry ${numberOf.get(fact.entry) ?? fact.entry}: ${fact.reason}`;
    return withdrawn.has(id) ? `WITHDRAWN by entry ${withdrawalOf.get(id)}: ${line}` : line;
  };
  const when = ({ at, fact }: RugEntry): string =>
    fact.happenedAt === undefined || fact.happenedAt === at
      ? shortMoment(at, timeZone)
      : `${shortMoment(fact.happenedAt, timeZone)}\nwritten down ${shortMoment(at, timeZone)}`;
  return [
    text(
      'Nothing here was ever changed or removed: a mistake is withdrawn by a later entry, and both stay. Each entry is sealed over itself and the one before it; the last seal stands at the foot of every page.',
    ),
    table(
      [figures('No.', 0.4), words('When', 1.5), words('Who', 1), words('What', 4), words('Seal', 0.9)],
      entries.map((entry) => [
        String(entry.revision),
        when(entry),
        personWords(context, entry.by),
        said(entry),
        entry.seal.slice(0, 8),
      ]),
      'The dossier has no entry.',
    ),
  ];
}
