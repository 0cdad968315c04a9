import { Button, Notice, spanWords, useNow } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { counted } from '../figures.ts';
import { Part } from '../Part.tsx';
import { type Blot, blotsOf, openBlots, validDays } from './blots.ts';
import { VerdictList } from './VerdictList.tsx';

/** What a blot's cell says: a sign, a word, and the same in a sentence for a screen reader. */
const saying = ({
  state,
}: Blot): { readonly sign: string; readonly words: string; readonly tone: string } => {
  switch (state.kind) {
    case 'lying':
      return { sign: '◷', words: 'lies', tone: 'lying' };
    case 'missing':
      return { sign: '▲', words: 'not tested', tone: 'missing' };
    case 'stopped':
      return { sign: '–', words: `stopped at ${state.at}`, tone: 'stopped' };
    case 'read': {
      const { reading } = state.test;
      if (reading.kind === 'unclear') return { sign: '?', words: 'unclear: test again', tone: 'missing' };
      if (state.stale)
        return { sign: '△', words: `${reading.staining}, does not cover this bath`, tone: 'missing' };
      return state.fails
        ? { sign: '✕', words: `${reading.staining}, fails`, tone: 'fails' }
        : { sign: '●', words: reading.staining, tone: 'holds' };
    }
  }
};

function Left({ startedAt, minutes }: { readonly startedAt: string; readonly minutes: number }) {
  const now = useNow();
  const seconds = Math.round(Date.parse(startedAt) / 1000 + minutes * 60 - now / 1000);
  return <span className="blot-left">{seconds <= 0 ? 'read it now' : spanWords(seconds)}</span>;
}

function BlotCell({ blot, name }: { readonly blot: Blot; readonly name: string }) {
  const { open, ask } = useDossier();
  const { sign, words, tone } = saying(blot);
  const { place, state } = blot;
  const where = `${place.side}${place.atUrinePlace ? ', at the urine' : ''}`;
  return (
    <li className="blot-place">
      <button
        type="button"
        className={`blot blot-${tone}`}
        disabled={!open}
        onClick={() => ask({ kind: 'blot', place })}
      >
        <span className="unseen">{name}, </span>
        <span className="blot-liquid">{place.liquid}</span>
        <span className="blot-side">{where}</span>
        <span className="blot-word">
          <span aria-hidden="true">{sign} </span>
          {words}
        </span>
        {state.kind === 'lying' && <Left startedAt={state.blot.when} minutes={state.blot.minutes} />}
      </button>
    </li>
  );
}

/** Colours against liquids, face and back: what holds, what fails, and what to test next. */
export function TestSection() {
  const { standing, visit, requiredTests, missingTests, plan, open, ask } = useDossier();
  if (standing.colours.length === 0) {
    return (
      <Part id="test" title="Dye tests">
        <p className="why">
          Name the colours first: every colour is tested, and every untested one counts as loose.
        </p>
      </Part>
    );
  }
  const rows = blotsOf(standing, requiredTests, missingTests);
  const waiting = openBlots(rows);
  const next = waiting[0];
  const nextName = rows.find(({ colour }) => colour.colour === next?.place.colour)?.colour.name ?? '';
  const refused = visit?.testRefusals ?? [];
  return (
    <Part id="test" title="Dye tests" aside={<span className="why">readings hold {validDays} days</span>}>
      {next !== undefined && (
        <Notice tone="stop" title={`${counted(waiting.length, 'blot')} to make.`}>
          <p>
            Next: <b>{nextName}</b>, {next.place.liquid}, {next.place.side}
            {next.place.atUrinePlace ? ', at the urine place' : ''}. {next.place.required?.because}
          </p>
          {open && (
            <Button wide onPress={() => ask({ kind: 'blot', place: next.place })}>
              Test {nextName}: {next.place.liquid}
            </Button>
          )}
        </Notice>
      )}
      {next === undefined && plan.ok && (
        <Notice tone="ok" title="Every blot the plan asks for is made.">
          <p>
            A test is one of many factors (CCI Notes 13/14): evidence, not a verdict. Keep watching in the
            wash.
          </p>
        </Notice>
      )}
      <p className="why">Weakest liquid first; stop at the first failure, grade 3 or worse.</p>
      {rows.map(({ colour, blots }) => (
        <div className="blot-row" key={colour.colour}>
          <div className="blot-head">
            <h3>
              <span
                className="swatch"
                style={{ background: colour.looks ?? 'transparent' }}
                aria-hidden="true"
              />
              {colour.name} <span className="why">{colour.kind}</span>
            </h3>
            {open && (
              <Button
                tone="ghost"
                label={`Client refuses: ${colour.name}`}
                onPress={() => ask({ kind: 'test refused', colour: colour.colour })}
              >
                Client refuses
              </Button>
            )}
          </div>
          <ul className="blots">
            {blots.map((blot) => (
              <BlotCell
                key={`${blot.place.side}${blot.place.liquid}${blot.place.atUrinePlace}`}
                blot={blot}
                name={colour.name}
              />
            ))}
          </ul>
          {refused
            .filter((refusal) => refusal.colour === colour.colour)
            .map((refusal) => (
              <p key={refusal.entry} className="open-fact">
                The client refused this test{refusal.signed ? ', signed' : ', not signed'}: “{refusal.words}”
              </p>
            ))}
        </div>
      ))}
      <VerdictList />
    </Part>
  );
}
