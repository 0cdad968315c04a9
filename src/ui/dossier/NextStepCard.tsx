import { useLocation } from 'wouter';
import type { Deed, NextStep } from '../../dossier/index.ts';
import { nextStepWords } from '../../text/nextStepWords.ts';
import { Button, When } from '../kit/index.ts';
import type { Ask } from './ask.ts';
import { type DossierView, useDossier } from './dossierView.ts';

/** Where the button of a next step leads: a sheet, another view of the rug, or a section of the page. */
type Way =
  | { readonly kind: 'ask'; readonly ask: Ask }
  | { readonly kind: 'view'; readonly view: 'wash' | 'dry' }
  | { readonly kind: 'part'; readonly part: string }
  | { readonly kind: 'page'; readonly href: string };

const asks = (ask: Ask): Way => ({ kind: 'ask', ask });
const part = (id: string): Way => ({ kind: 'part', part: id });

const wayTo = (deed: Deed, view: DossierView): Way => {
  switch (deed.code) {
    case 'resolve-stop':
    case 'end-dwell':
    case 'finish-step':
    case 'start-step':
      return { kind: 'view', view: 'wash' };
    case 'mend-shelf':
      return part('shelf-gaps');
    case 'start-drying':
    case 'take-drying-reading':
    case 'turn-rug':
    case 'accept-dry':
      return { kind: 'view', view: 'dry' };
    case 'read-blot': {
      const blot = view.standing.lyingBlots.find(
        ({ liquid, colour }) => liquid === deed.liquid && view.colourName(colour) === deed.colour,
      );
      return blot === undefined
        ? part('test')
        : asks({
            kind: 'blot',
            place: {
              colour: blot.colour,
              side: blot.side,
              liquid: blot.liquid,
              atUrinePlace: blot.atUrinePlace === true,
            },
          });
    }
    case 'release-quarantine':
      return asks({ kind: 'release' });
    case 'fetch-back':
      return asks({ kind: 'came back' });
    case 'measure':
      return asks({ kind: 'measure' });
    case 'survey-condition':
      return part('condition');
    case 'identify':
      return deed.missing[0] === 'construction' ||
        deed.missing[0] === 'pile' ||
        deed.missing[0] === 'warp' ||
        deed.missing[0] === 'weft'
        ? asks({ kind: 'claim', about: deed.missing[0] })
        : part('identify');
    case 'weigh':
      return asks({ kind: 'weigh' });
    case 'name-colours':
      return asks({ kind: 'colour', colour: null });
    case 'test-dye': {
      const { colour, side, liquid, atUrinePlace } = deed.test;
      return asks({ kind: 'blot', place: { colour, side, liquid, atUrinePlace, required: deed.test } });
    }
    case 'enter-drying-hours':
    case 'forecast-drying':
      return asks({ kind: 'drying hours' });
    case 'resolve-plan':
    case 'agree-plan':
      return part('plan');
    case 'sign-off':
      return deed.who[0] === 'owner' || deed.who[0] === 'conservator'
        ? asks({ kind: 'sign-off', who: deed.who[0] })
        : part('plan');
    case 'quote-price':
      return part('money');
    case 'ask-consent':
      return asks({ kind: 'consent' });
    case 'settle-refusal':
      return part('agree');
    case 'do-the-work':
      return deed.scope.includes('dusting only') ? asks({ kind: 'dust' }) : part('finish');
    case 'inspect':
      return part('inspect');
    case 'hand-back':
      return part('return');
    case 'receive-again':
      return { kind: 'page', href: '/receive' };
  }
};

/** Goes to a part of the page and gives it the focus, so that a keyboard goes on from there. */
export const goToPart = (id: string) => {
  const element = document.getElementById(id);
  element?.closest('details')?.setAttribute('open', '');
  element?.scrollIntoView({ block: 'start' });
  element?.focus({ preventScroll: true });
};

const signs: { readonly [U in NextStep['urgency']]: string } = {
  now: '▲ Now',
  soon: '◆ Soon',
  later: 'Next',
  waiting: 'Waiting for somebody outside',
};

/** The one next step, with the button that starts it. */
export function NextStepCard() {
  const view = useDossier();
  const [, go] = useLocation();
  const { next } = view;
  const words = nextStepWords(next.deed);
  const follow = () => {
    const way = wayTo(next.deed, view);
    if (way.kind === 'ask') view.ask(way.ask);
    else if (way.kind === 'view') go(`/rugs/${view.rug}?at=${way.view}`);
    else if (way.kind === 'page') go(way.href);
    else goToPart(way.part);
  };
  return (
    <section className={`sect next-step next-${next.urgency}`} aria-labelledby="next-title">
      <div className="stepno">{signs[next.urgency]}</div>
      <h2 id="next-title">{words.title}</h2>
      <p>{words.detail}</p>
      {next.dueAt !== null && (
        <p className="why">
          {next.dueAt <= view.now ? 'since' : 'by'} <When at={next.dueAt} />
        </p>
      )}
      <Button wide onPress={follow}>
        {words.button}
      </Button>
    </section>
  );
}
