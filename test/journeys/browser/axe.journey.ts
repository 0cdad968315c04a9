import axe from 'axe-core';
import { expect, test } from 'vitest';
import type { RowsAnswer, TodayAnswer } from '../../../src/contract/index.ts';
import { signIn } from './support/door.ts';
import type { Hand } from './support/hand.ts';
import { openWorkshop, phone, tabletSized } from './support/workshop.ts';

const workshop = openWorkshop('demo');

/** Everything axe-core holds against what is shown now, rule by rule, with the places. */
const barriers = (hand: Hand): Promise<readonly string[]> =>
  hand.page.evaluate(async () => {
    const { violations } = await (globalThis as unknown as { readonly axe: typeof axe }).axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    });
    return violations.map(
      ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ html }) => html).slice(0, 3)}`,
    );
  });

/** Opens every page in turn, and answers the barriers of each that has any, by day and by night. */
async function walk(hand: Hand, pages: Places) {
  const found: Record<string, readonly string[]> = {};
  for (const [name, open] of pages) {
    await open();
    await hand.page.evaluate(axe.source);
    for (const colorScheme of ['light', 'dark'] as const) {
      await hand.page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      const here = await barriers(hand);
      if (here.length > 0) found[`${name}, ${colorScheme}`] = here;
    }
  }
  return found;
}

type Places = readonly (readonly [string, () => Promise<void>])[];

const receiveSteps = [
  'What for',
  'Rug and tag',
  'Size',
  'Mass',
  'Wishes and value',
  'Pictures',
  'Marks',
  'All rugs',
  'Sign',
] as const;

/** Every page, as the owner sees it. */
function pagesOf(hand: Hand): Places {
  const at = (path: string, heading: string | RegExp) => async () => {
    await hand.page.goto(path);
    await hand.scope.getByRole('heading', { level: 1, name: heading }).waitFor();
  };
  const step = (name: string) => async () => {
    const all = hand.button('All steps');
    if (await all.isVisible()) await all.click();
    await hand.scope.getByRole('button', { name: new RegExp(`${name} ?, (open|complete)$`) }).click();
    await hand.heading(name);
  };
  return [
    ['Sign in', () => hand.heading('Larkfield Rug Workshop')],
    [
      'Today',
      async () => {
        await signIn(hand, 'Mirela Ostrand', workshop.server().passphrase);
        await hand.heading(/^Hands needed now/);
      },
    ],
    ['Rugs', at('/rugs', 'Rugs')],
    ['Receive: Client', at('/receive', 'Client')],
    ...receiveSteps.map((name) => [`Receive: ${name}`, step(name)] as const),
    ['Clients', at('/clients', 'Clients')],
    [
      'A client',
      async () => {
        await hand.page.goto('/clients');
        await hand.follow(/Berit Almqvist/);
        await hand.heading('Berit Almqvist');
      },
    ],
    ['Drying room', at('/rooms', 'Drying room')],
    ['Another drying room', at('/rooms/new', 'Another drying room')],
    ['Bench', at('/bench', 'Bench')],
    ['Convert', at('/bench/convert', 'Convert a knot density')],
    ['Plan', at('/bench/plan', 'Plan a wash')],
    ['Blot', at('/bench/blot', 'Grade a blot')],
    ['Compare', at('/bench/compare', 'Compare before and after')],
    ['Mix', at('/bench/mix', 'Mix and rinse')],
    ['Dry', at('/bench/dry', 'Drying')],
    ['Weave', at('/bench/weave', 'Count a weave')],
    ['Weave card', at('/bench/card', 'Weave card')],
    ['Shelf', at('/shelf', 'Shelf')],
    ['Rules', at('/rules', 'Rules')],
    ['People', at('/people', 'People')],
    ['Workshop', at('/workshop', 'Workshop')],
    ['Safekeeping', at('/safekeeping', 'Safekeeping')],
    ['No page', at('/nowhere', 'No page here')],
    ['A problem in words', at('/problems/wash-not-allowed', /^Not yet/)],
  ];
}

const allRugs = async (hand: Hand): Promise<RowsAnswer['rows']> =>
  ((await (await hand.page.request.get('/api/rugs?limit=100')).json()) as RowsAnswer).rows;

/** The one of the demo that is between two steps or in a dwell, with nothing hung up yet. */
async function rugInTheWash(hand: Hand): Promise<string> {
  const { rows } = (await (await hand.page.request.get('/api/today')).json()) as TodayAnswer;
  const washed = rows.find(({ next }) =>
    next.some(({ deed }) => ['end-dwell', 'finish-step', 'start-step'].includes(deed.code)),
  );
  if (washed === undefined) throw new Error('No rug of the demo is in the wash.');
  return washed.rug;
}

/** A dossier of every stage, and the wash floor and drying room of a few rugs that are wet. */
async function rugsOf(hand: Hand): Promise<Places> {
  const rows = await allRugs(hand);
  const staged = rows.filter(
    ({ stage }, index) => rows.findIndex((other) => other.stage === stage) === index,
  );
  const wet = rows.filter(({ body }) => body.wetSince !== null).slice(0, 3);
  const open = (rug: string, title: string, at: string): Places[number] => [
    `${title} ${at}`,
    async () => {
      await hand.page.goto(`/rugs/${rug}${at}`);
      await hand.heading(title);
    },
  ];
  return [
    ...staged.map(({ rug, body }) => open(rug, body.title, '')),
    ...wet.flatMap(({ rug, body }) => ['?at=wash', '?at=dry'].map((at) => open(rug, body.title, at))),
  ];
}

/** Opens each of these from the page that is shown, and shuts it again. */
const sheetsOf = (hand: Hand, rug: string): Places => {
  const page = async (at: string) => {
    await hand.page.goto(`/rugs/${rug}${at}`);
    await hand.scope.getByRole('heading', { level: 1 }).waitFor();
  };
  const sheet = (name: string, at: string, button: string | RegExp): Places[number] => [
    `Sheet: ${name}`,
    async () => {
      await page(at);
      await hand.scope.getByRole('button', { name: button }).first().click();
      await hand.scope.getByRole('dialog').waitFor();
    },
  ];
  return [
    sheet('who is here', '', /switch person, sign out/),
    sheet('more places', '', /^More$/),
    [
      'Sheet: a product of the shelf',
      async () => {
        await hand.page.goto('/shelf');
        await hand.press('Correct: Hearth crystals');
        await hand.scope.getByRole('dialog').waitFor();
      },
    ],
    [
      'Sheet: a change of the rulebook',
      async () => {
        await hand.page.goto('/rules?find=wool');
        await hand.press('Change wool: Water');
        await hand.scope.getByRole('dialog').waitFor();
      },
    ],
    sheet('a mark on the picture', '', 'Mark something'),
    sheet('a claim', '', /: Construction$/),
    sheet('the look over', '', /^Look (it|the rug) over/),
    sheet('a colour', '', 'Name a colour'),
    sheet('knots by hand', '', /by hand/),
    sheet('a quote', '', /^Quote/),
    sheet('an incident', '', 'Report an incident'),
    sheet('a withdrawal', '', /^Withdraw: /),
    sheet('a stop', '?at=wash', /Stop the wash/),
    sheet('a flow begun by hand', '?at=wash', /^Begin a flow/),
  ];
};

test('axe finds no barrier in the house on a phone', async () => {
  const hand = await workshop.device(phone);
  const pages = await walk(hand, pagesOf(hand));
  const sheets = await walk(hand, sheetsOf(hand, await rugInTheWash(hand)));
  expect({ ...pages, ...sheets }).toEqual({});
});

test('axe finds no barrier in the house on a tablet', async () => {
  const hand = await workshop.device(tabletSized);
  const pages = await walk(hand, pagesOf(hand));
  const rugs = await walk(hand, await rugsOf(hand));
  expect({ ...pages, ...rugs }).toEqual({});
});
