import { conditionWords } from '../core/condition/index.ts';
import type { ColourKind, FindingCode, StainClass } from '../core/wash/index.ts';
import type { Noted, NotedColour, RugStanding } from './standing.ts';

type Mark = Noted<'MarkRecorded'>;

const stainOfWord: Readonly<Record<string, StainClass>> = {
  grease: 'oil, wax or gum',
  browning: 'cellulosic browning',
  yellowing: 'yellowing',
  'tide line': 'tide line',
  urine: 'urine',
  stain: 'unknown',
};

/** Class of the stain a mark shows, or undefined where it shows none. */
export const stainOf = (mark: Mark): StainClass | undefined => mark.stain ?? stainOfWord[mark.word];

const weakeningStains: readonly StainClass[] = ['urine', 'tide line', 'unknown'];
const weakeningFindings: readonly FindingCode[] = ['urine', 'colour run'];

/** Whether dyes may stand worse under a mark than elsewhere: urine, a water mark, an old run. */
export function weakensDyes(mark: Mark): boolean {
  const stain = stainOf(mark);
  const suggests = conditionWords.find(({ word }) => word === mark.word)?.suggests ?? [];
  return (
    (stain !== undefined && weakeningStains.includes(stain)) ||
    suggests.some((code) => weakeningFindings.includes(code))
  );
}

/** Whether a mark or a finding says that there is such a place at all. */
export const hasMarkedPlaces = ({ marks, findings }: RugStanding): boolean =>
  marks.some(weakensDyes) ||
  findings.some(({ finding, certainty }) => weakeningFindings.includes(finding) && certainty !== 'ruled out');

/**
 * Whether a colour lies where urine, a water mark or an old run is: as somebody said it, else as the marks
 * name it. Undefined, which counts as yes, while a mark or a finding does not say which colours it lies on.
 */
export function atMarkedPlace(standing: RugStanding, named: NotedColour): boolean | undefined {
  if (named.atUrinePlace !== undefined) return named.atUrinePlace;
  const marks = standing.marks.filter(weakensDyes);
  const placeless = standing.findings.some(
    ({ finding, certainty }) => weakeningFindings.includes(finding) && certainty !== 'ruled out',
  );
  if (marks.length === 0 || placeless || marks.some(({ colours }) => colours === undefined)) return undefined;
  return marks.some(({ colours = [] }) => colours.includes(named.colour));
}

/** Something of the rug that is dyed by itself and has no row among the dye tests yet. */
export interface SiteProposed {
  readonly kind: ColourKind;
  readonly because: string;
}

/** Words of marks that show a dyed part of its own. */
const kindOfWord: Readonly<Record<string, ColourKind>> = {
  reknotting: 'repair yarn',
  repair: 'repair yarn',
  darn: 'repair yarn',
  patch: 'repair yarn',
  're-fringed': 'fringe',
  lining: 'lining',
  painted: 'touch-up',
};

/**
 * Parts to name among the colours, so that each is tested: fringe and selvedge of every rug, and what the
 * condition marks show.
 *
 * @param standing - the rug's standing
 * @returns one proposal for each kind of part nobody has named, in the order to look
 * @source workshop-setting, sites of the dye tests (data/wash/dyeTests.json)
 */
export function sitesProposed(standing: RugStanding): readonly SiteProposed[] {
  const named = new Set(standing.colours.map(({ kind }) => kind));
  const always: readonly SiteProposed[] = [
    { kind: 'fringe', because: 'The fringe takes up what the others give off.' },
    { kind: 'selvedge', because: 'The wrapping of the sides is often another yarn.' },
  ];
  const shown = standing.marks.flatMap(({ word }): readonly SiteProposed[] => {
    const kind = kindOfWord[word];
    return kind === undefined ? [] : [{ kind, because: `A mark says “${word}”.` }];
  });
  return [...shown, ...always].filter(
    ({ kind }, index, all) => !named.has(kind) && all.findIndex((one) => one.kind === kind) === index,
  );
}
