import { useState } from 'react';
import type { Agent, RequiredDyeTest } from '../../../core/wash/index.ts';
import { isOneLiquid } from '../../../dossier/index.ts';
import { Button, FactList, Notice, ProblemNotice, Sheet, TimerFace } from '../../kit/index.ts';
import type { BlotPlace } from '../ask.ts';
import { useDossier } from '../dossierView.ts';
import { minutesWords } from '../figures.ts';
import { useForm } from '../useForm.ts';
import { conditionWords } from './conditionWords.ts';
import { ReadBlot } from './ReadBlot.tsx';

const isCrock = (liquid: BlotPlace['liquid']) => liquid === 'dry crock' || liquid === 'damp crock';

type Laid = Omit<BlotPlace, 'atUrinePlace' | 'required'> & {
  readonly atUrinePlace?: boolean | undefined;
  readonly agents?: readonly Agent[] | undefined;
};

const ifNotMade = ({ liquid, blocksWetWork }: RequiredDyeTest): string =>
  liquid === 'spotter'
    ? 'this spotter is not laid on the rug'
    : blocksWetWork
      ? 'no wet step'
      : 'the plan keeps tighter caps';

const howTo = (place: BlotPlace): string => {
  if (place.liquid === 'dry crock') return 'Rub ten firm strokes with dry white cotton over a finger.';
  if (place.liquid === 'damp crock')
    return 'Rub ten firm strokes with white cotton damped with water and wrung out.';
  if (place.liquid === 'covered 24 h')
    return 'Wet the place, blotter above and below, cover with film, 500 g on top, and leave it a day.';
  return 'Wet the place, white cotton blotter above and below, 500 g over 5 × 5 cm on top.';
};

/** Lays one blot, waits for it with a timer every tablet shows, and reads it by eye. */
export function BlotSheet({ place, onClose }: { readonly place: BlotPlace; readonly onClose: () => void }) {
  const { standing, colourName, requiredTests, ask } = useDossier();
  const [reading, setReading] = useState(isCrock(place.liquid));
  const { act, isBusy, problem } = useForm('blot');
  const isHere = (one: Laid) =>
    one.colour === place.colour &&
    one.side === place.side &&
    isOneLiquid(one, { liquid: place.liquid, agents: place.required?.agents }) &&
    (one.atUrinePlace ?? false) === place.atUrinePlace;
  const required = place.required ?? requiredTests.find((test) => isHere(test));
  const lying = standing.lyingBlots.findLast((blot) => isHere(blot));
  const earlier = standing.dyeTests.filter((test) => isHere(test));
  const minutes = required?.minutes;
  const spotter = place.liquid === 'spotter' ? ` ${required?.agents.join(' and ') ?? ''}` : '';
  const title = `${colourName(place.colour)}: ${place.liquid}${spotter}, ${place.side}${place.atUrinePlace ? ', at the marked place' : ''}`;
  return (
    <Sheet title={title} isOpen onClose={onClose}>
      {!reading && (
        <>
          <p>{howTo(place)}</p>
          <p className="why">Lay a second blotter that touches no rug beside it: the control.</p>
          {required !== undefined && (
            <FactList
              rows={[
                { name: 'Liquid', value: conditionWords(required) || 'water', why: required.because },
                {
                  name: 'If not made',
                  value: ifNotMade(required),
                },
              ]}
            />
          )}
          {place.liquid !== 'cold water' && !isCrock(place.liquid) && (
            <p className="why">Gloves and goggles; follow the safety data sheet of the agent.</p>
          )}
          {lying === undefined ? (
            <>
              {minutes !== undefined && (
                <Button
                  wide
                  isDisabled={isBusy}
                  onPress={() =>
                    act({
                      type: 'DyeTestStarted',
                      colour: place.colour,
                      side: place.side,
                      liquid: place.liquid,
                      minutes,
                      ...(place.liquid === 'spotter' && required !== undefined
                        ? { agents: [...required.agents] }
                        : {}),
                      ...(place.atUrinePlace ? { atUrinePlace: true } : {}),
                    })
                  }
                >
                  It lies: start {minutesWords(minutes)}
                </Button>
              )}
              <Button tone={minutes === undefined ? 'act' : 'ghost'} wide onPress={() => setReading(true)}>
                Read it now
              </Button>
            </>
          ) : (
            <>
              <TimerFace startedAt={lying.when} minutes={lying.minutes} label="blot lies" />
              <p className="why">You may close this; it runs on, and Today shows it on every tablet.</p>
              <Button wide onPress={() => setReading(true)}>
                Read the blot
              </Button>
            </>
          )}
          <Button tone="ghost" wide onPress={() => ask({ kind: 'test refused', colour: place.colour })}>
            The client refuses the test
          </Button>
          {problem && <ProblemNotice problem={problem} />}
        </>
      )}
      {reading && isCrock(place.liquid) && (
        <>
          <p>{howTo(place)}</p>
          {required !== undefined && <p className="why">{required.because}</p>}
        </>
      )}
      {reading && <ReadBlot place={place} required={required} lying={lying} onClose={onClose} />}
      {earlier.length > 0 && (
        <Notice tone="plain" title="Read before">
          <ul className="plain-list">
            {earlier.map((test) => (
              <li key={test.entry}>
                {test.reading.kind === 'graded' ? `grade ${test.reading.staining}` : 'unclear'},{' '}
                {conditionWords({ ...test, pH: test.ph }) || 'conditions not noted'}
              </li>
            ))}
          </ul>
        </Notice>
      )}
    </Sheet>
  );
}
