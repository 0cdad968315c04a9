import { spanWords, useNow, When } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import type { Blot, ColourBlots, Site } from './blots.ts';

interface Saying {
  readonly sign: string;
  readonly words: string;
  readonly tone: 'lying' | 'missing' | 'wanted' | 'fails' | 'holds' | 'quiet';
}

/** What a cell says: a sign and a word, besides its colour. */
const saying = ({ state }: Blot): Saying => {
  switch (state.kind) {
    case 'lying':
      return { sign: '◷', words: 'lies', tone: 'lying' };
    case 'missing':
      return state.blocksWetWork
        ? { sign: '▲', words: 'not tested', tone: 'missing' }
        : { sign: '△', words: 'not tested', tone: 'wanted' };
    case 'not needed':
      return { sign: '–', words: 'not needed', tone: 'quiet' };
    case 'read': {
      const { reading } = state.test;
      if (reading.kind === 'unclear' || state.grade === null)
        return { sign: '?', words: 'unclear, again', tone: 'missing' };
      const grade = reading.by === 'photograph' ? `${state.grade}, measured` : state.grade;
      if (state.fails) return { sign: '✕', words: `${grade}, fails`, tone: 'fails' };
      if (state.again === null) return { sign: '●', words: grade, tone: 'holds' };
      return { sign: '▲', words: `${grade}, ${state.again}`, tone: 'missing' };
    }
  }
};

const siteWords = ({ side, atUrinePlace }: Site) => (atUrinePlace ? `${side}, at the mark` : side);

function Left({ startedAt, minutes }: { readonly startedAt: string; readonly minutes: number }) {
  const now = useNow();
  const seconds = Math.round(Date.parse(startedAt) / 1000 + minutes * 60 - now / 1000);
  return <span className="blot-left">{seconds <= 0 ? 'read it now' : spanWords(seconds)}</span>;
}

function Cell({ blot, name }: { readonly blot: Blot; readonly name: string }) {
  const { open, ask } = useDossier();
  const { sign, words, tone } = saying(blot);
  const { place, state } = blot;
  return (
    <button
      type="button"
      className={`blot blot-${tone}`}
      disabled={!open}
      onClick={() => ask({ kind: 'blot', place })}
    >
      <span className="unseen">
        {name}, {place.liquid}, {siteWords(place)}:{' '}
      </span>
      <span>
        <span aria-hidden="true">{sign} </span>
        {words}
      </span>
      {state.kind === 'read' && state.again === null && !state.fails && (
        <span className="blot-until">
          until <When at={state.clearsUntil} day />
        </span>
      )}
      {state.kind === 'lying' && <Left startedAt={state.blot.when} minutes={state.blot.minutes} />}
    </button>
  );
}

/** One colour: a row per liquid, weakest first, a column per place. */
export function BlotTable({ blots }: { readonly blots: ColourBlots }) {
  const { colour, sites, rows } = blots;
  return (
    <table className="blots">
      <caption className="unseen">Blots of {colour.name}</caption>
      <thead>
        <tr>
          <td />
          {sites.map((site) => (
            <th key={siteWords(site)} scope="col">
              {siteWords(site)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ liquid, agents, blots: cells }) => (
          <tr key={`${liquid} ${agents?.join() ?? ''}`}>
            <th scope="row">
              {liquid}
              {agents === undefined ? '' : `: ${agents.join(' and ')}`}
            </th>
            {sites.map((site, index) => {
              const blot = cells[index] ?? null;
              return (
                <td key={siteWords(site)}>
                  {blot === null ? (
                    <span className="blot-none">
                      <span aria-hidden="true">–</span>
                      <span className="unseen">not asked</span>
                    </span>
                  ) : (
                    <Cell blot={blot} name={colour.name} />
                  )}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
