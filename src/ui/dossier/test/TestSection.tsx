import { rulebookOf } from '../../../dossier/index.ts';
import { Button, Notice } from '../../kit/index.ts';
import { SpotTestsWaiting } from '../../wash/SpotTests.tsx';
import { useDossier } from '../dossierView.ts';
import { counted } from '../figures.ts';
import { Part } from '../Part.tsx';
import { BlotTable } from './BlotTable.tsx';
import { blotsOf, type ColourBlots } from './blots.ts';
import { ColourClass } from './ColourClass.tsx';
import { SitesToName } from './SitesToName.tsx';
import { WhatFollows } from './WhatFollows.tsx';

/** What to test next, and how many wait. */
function NextBlot() {
  const { missingTests, open, ask } = useDossier();
  const [next] = missingTests;
  if (next === undefined)
    return (
      <Notice tone="ok" title="Every blot the plan asks for is made.">
        <p>
          A test is one of many factors (CCI Notes 13/14): evidence, not a verdict. Keep watching in the wash.
        </p>
      </Notice>
    );
  const blocking = missingTests.filter(({ blocksWetWork }) => blocksWetWork).length;
  const others = missingTests.length - blocking;
  const title =
    blocking > 0
      ? `${counted(blocking, 'blot')} to make before any water.`
      : `${counted(others, 'blot')} would loosen the caps.`;
  return (
    <Notice tone={blocking > 0 ? 'stop' : 'caution'} title={title}>
      {blocking > 0 && others > 0 && <p>{others} more are no condition, but would loosen the caps.</p>}
      <p>
        Next: <b>{next.name}</b>, {next.liquid}, {next.side}
        {next.atUrinePlace ? ', at the marked place' : ''}. {next.because}
      </p>
      {open && (
        <Button wide onPress={() => ask({ kind: 'blot', place: { ...next, required: next } })}>
          Test {next.name}: {next.liquid}
        </Button>
      )}
    </Notice>
  );
}

/** Where the testing of a colour ended, and that nothing stronger is to touch it. */
function Stopped({ blots: { rows } }: { readonly blots: ColourBlots }) {
  const failed = rows.find(
    ({ liquid, blots }) =>
      liquid !== 'dry crock' &&
      liquid !== 'damp crock' &&
      blots.some((blot) => blot?.state.kind === 'read' && blot.state.fails),
  );
  if (failed === undefined) return null;
  return (
    <p className="open-fact">
      Stopped at the first failure, {failed.liquid}: nothing stronger needs to touch this colour.
    </p>
  );
}

/** Colours against liquids, face and back: what holds, what fails, and what to test next. */
export function TestSection() {
  const { standing, visit, requiredTests, missingTests, plan, open, now, ask, settings } = useDossier();
  if (standing.colours.length === 0) {
    return (
      <Part id="test" title="Dye tests">
        <p className="why">
          Name the colours first: every colour is tested, and every untested one counts as loose.
        </p>
      </Part>
    );
  }
  const { validDays } = rulebookOf(settings).tests;
  const refusals = visit?.testRefusals ?? [];
  return (
    <Part id="test" title="Dye tests" aside={<span className="why">readings hold {validDays} days</span>}>
      {plan.ok && <NextBlot />}
      <p className="why">Weakest liquid first; stop at the first failure, grade 3 or worse.</p>
      {blotsOf(standing, requiredTests, missingTests, { now, validDays }).map((blots) => (
        <div className="blot-row" key={blots.colour.colour}>
          <div className="blot-head">
            <h3>
              <span
                className="swatch"
                style={{ background: blots.colour.looks ?? 'transparent' }}
                aria-hidden="true"
              />
              {blots.colour.name} <span className="why">{blots.colour.kind}</span>
            </h3>
            {open && (
              <Button
                tone="ghost"
                label={`Client refuses: ${blots.colour.name}`}
                onPress={() => ask({ kind: 'test refused', colour: blots.colour.colour })}
              >
                Client refuses
              </Button>
            )}
          </div>
          <ColourClass colour={blots.colour.colour} />
          <BlotTable blots={blots} />
          <Stopped blots={blots} />
          {refusals
            .filter((refusal) => refusal.colour === blots.colour.colour)
            .map((refusal) => (
              <p key={refusal.entry} className="open-fact">
                The client refused this test{refusal.signed ? ', signed' : ', not signed'}: “{refusal.words}”
              </p>
            ))}
        </div>
      ))}
      <SpotTestsWaiting />
      <SitesToName />
      <WhatFollows />
    </Part>
  );
}
