import { atMarkedPlace, hasMarkedPlaces, washesIn } from '../../../dossier/index.ts';
import { Button, Notice } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { Part } from '../Part.tsx';

const asks = (answer: boolean | undefined, yes: string, no: string, unknown: string) =>
  answer === undefined ? unknown : answer ? yes : no;

/** The colours of the rug, named so that each can be tested. */
export function ColoursPart() {
  const { standing, visit, open, ask } = useDossier();
  const washes = visit !== null && washesIn(visit);
  const { colours } = standing;
  const markedFound = hasMarkedPlaces(standing);
  return (
    <Part title="Colours" id="colours">
      {colours.length === 0 && washes && (
        <Notice tone="caution" title="No colour named yet.">
          Name every colour, the fringe, the selvedge and every repair yarn: each is tested on its own. Until
          then no water.
        </Notice>
      )}
      <ul className="colours">
        {colours.map((colour) => (
          <li key={colour.colour}>
            <span
              className="swatch"
              style={{ background: colour.looks ?? 'transparent' }}
              aria-hidden="true"
            />
            <div>
              <b>{colour.name}</b>
              <div className="why">
                {colour.kind} · dye {colour.dyeClass} ·{' '}
                {asks(
                  colour.besideLightField,
                  'beside a light field',
                  'no light field beside it',
                  'not said whether a light field touches it: counts as yes',
                )}
                {markedFound &&
                  ` · ${asks(atMarkedPlace(standing, colour), 'lies at a urine, water or run mark', 'not at a urine, water or run mark', 'not said whether it lies at the urine, water or run mark: counts as yes')}`}
              </div>
            </div>
            {open && (
              <Button
                tone="ghost"
                label={`Change: ${colour.name}`}
                onPress={() => ask({ kind: 'colour', colour: colour.colour })}
              >
                Change
              </Button>
            )}
          </li>
        ))}
      </ul>
      {open && (
        <Button
          tone={colours.length === 0 && washes ? 'act' : 'ghost'}
          wide
          onPress={() => ask({ kind: 'colour', colour: null })}
        >
          Name a colour
        </Button>
      )}
    </Part>
  );
}
