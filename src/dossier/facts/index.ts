import type * as z from 'zod/mini';
import type { Entry } from '../entry.ts';
import { agreementFacts } from './agreement.ts';
import { closingFacts } from './closing.ts';
import { colourFacts } from './colour.ts';
import { custodyFacts } from './custody.ts';
import { dryingFacts } from './drying.ts';
import { dyeTestFacts } from './dyeTest.ts';
import { intakeFacts } from './intake.ts';
import { knowledgeFacts } from './knowledge.ts';
import type { Frozen } from './shape.ts';
import { washFacts } from './wash.ts';

/** Every kind of fact a rug's stream may hold, by type. */
export const rugFacts = {
  ...intakeFacts,
  ...knowledgeFacts,
  ...dyeTestFacts,
  ...agreementFacts,
  ...washFacts,
  ...dryingFacts,
  ...closingFacts,
  ...colourFacts,
  ...custodyFacts,
};

export type RugFactType = keyof typeof rugFacts;
export type RugFactOf<Type extends RugFactType> = Frozen<z.infer<(typeof rugFacts)[Type]>>;
export type RugFact = { [Type in RugFactType]: RugFactOf<Type> }[RugFactType];
export type RugEntry = Entry<RugFact>;
