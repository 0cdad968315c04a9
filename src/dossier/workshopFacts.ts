import * as z from 'zod/mini';
import { equipment, type RuleChange } from '../core/wash/index.ts';
import type { Entry } from './entry.ts';
import { dryStandards } from './facts/drying.ts';
import { barMm, cardSerial } from './facts/knots.ts';
import { type Frozen, fact, id, line, massKg, money, passage } from './facts/shape.ts';

export const roles = ['owner', 'washer', 'counter'] as const;
export type Role = (typeof roles)[number];

const settings = z.object({
  name: line,
  /** Address lines as printed on papers. */
  lines: z.array(line).check(z.maxLength(6)),
  currency: z.string().check(z.regex(/^[A-Z]{3}$/)),
  units: z.enum(['metric', 'customary']),
  paper: z.enum(['a4', 'letter']),
  dryStandard: z.enum(dryStandards),
  /** Above this declared value the owner must sign off before any wet step. */
  washersAuthority: z.nullable(money),
  /** Wet mass one person may lift; above it a team plan. */
  liftingLimitKg: massKg,
  equipmentDown: z.array(z.enum(equipment)),
});

export type WorkshopSettings = Frozen<z.infer<typeof settings>> & {
  /** The owner's latest value of each changed address of the rulebook; changed by `RuleChanged` only. */
  readonly ruleChanges?: readonly RuleChange[];
};

/** Settings of a new workshop, each printed as "workshop setting" until the owner changes it. */
export const firstSettings: WorkshopSettings = {
  name: 'Rug workshop',
  lines: [],
  currency: 'EUR',
  units: 'metric',
  paper: 'a4',
  dryStandard: 'full',
  washersAuthority: null,
  liftingLimitKg: 25,
  equipmentDown: [],
};

export const workshopFacts = {
  SettingsChanged: fact('SettingsChanged', { settings: z.partial(settings), why: z.optional(passage) }),
  PersonAdded: fact('PersonAdded', {
    person: id,
    name: line,
    roles: z.array(z.enum(roles)).check(z.minLength(1)),
  }),
  PersonChanged: fact('PersonChanged', {
    person: id,
    name: line,
    roles: z.array(z.enum(roles)).check(z.minLength(1)),
  }),
  /** One value of the rulebook; `from` and `to` are null where the delivered value holds. */
  RuleChanged: fact('RuleChanged', { address: line, from: z.unknown(), to: z.unknown(), why: passage }),
  PersonLeft: fact('PersonLeft', { person: id }),
  /** The 100 mm bar of a printed weave card, measured with a ruler. */
  CardMeasured: fact('CardMeasured', { serial: cardSerial, barMm }),
  /** The client's key was destroyed at their wish; nothing personal stands here. */
  ClientErased: fact('ClientErased', { client: id, reason: passage }),
};

export type WorkshopFactType = keyof typeof workshopFacts;
export type WorkshopFactOf<Type extends WorkshopFactType> = Frozen<z.infer<(typeof workshopFacts)[Type]>>;
export type WorkshopFact = { [Type in WorkshopFactType]: WorkshopFactOf<Type> }[WorkshopFactType];
export type WorkshopEntry = Entry<WorkshopFact>;

export interface Person {
  readonly person: string;
  readonly name: string;
  readonly roles: readonly Role[];
  readonly left: boolean;
}

/** A change of the rulebook with who made it and when. */
export interface NotedRuleChange {
  readonly address: string;
  readonly from: unknown;
  readonly to: unknown;
  readonly why: string;
  readonly by: string;
  readonly at: string;
}

/** A printed weave card whose bar somebody measured. */
export interface MeasuredCard {
  readonly serial: string;
  readonly barMm: number;
  readonly measuredAt: string;
  readonly by: string;
}

export interface WorkshopStanding {
  readonly settings: WorkshopSettings;
  /** Every change of the rulebook, oldest first. */
  readonly ruleHistory: readonly NotedRuleChange[];
  readonly people: Readonly<Record<string, Person>>;
  /** By serial, each as it was measured last. */
  readonly cards: Readonly<Record<string, MeasuredCard>>;
}

/**
 * Folds the workshop's own stream.
 *
 * @param entries - the stream, oldest first
 * @source none: rule of this project
 */
export function workshopStanding(entries: readonly Entry[]): WorkshopStanding {
  let standing: WorkshopStanding = { settings: firstSettings, ruleHistory: [], people: {}, cards: {} };
  for (const { fact: recorded, by, at } of entries as readonly WorkshopEntry[]) {
    switch (recorded.type) {
      case 'SettingsChanged': {
        const changed = Object.entries(recorded.settings).filter(([, value]) => value !== undefined);
        standing = { ...standing, settings: { ...standing.settings, ...Object.fromEntries(changed) } };
        break;
      }
      case 'RuleChanged': {
        const { address, from, to, why } = recorded;
        const others = (standing.settings.ruleChanges ?? []).filter((one) => one.address !== address);
        const ruleChanges = to === null ? others : [...others, { address, value: to }];
        const ruleHistory = [...standing.ruleHistory, { address, from, to, why, by, at }];
        standing = { ...standing, settings: { ...standing.settings, ruleChanges }, ruleHistory };
        break;
      }
      case 'PersonAdded':
      case 'PersonChanged': {
        const { person, name, roles: held } = recorded;
        const people = { ...standing.people, [person]: { person, name, roles: held, left: false } };
        standing = { ...standing, people };
        break;
      }
      case 'PersonLeft': {
        const person = standing.people[recorded.person];
        if (person !== undefined) {
          const people = { ...standing.people, [recorded.person]: { ...person, left: true } };
          standing = { ...standing, people };
        }
        break;
      }
      case 'CardMeasured': {
        const { serial, barMm: measuredMm } = recorded;
        const card = { serial, barMm: measuredMm, measuredAt: at, by };
        standing = { ...standing, cards: { ...standing.cards, [serial]: card } };
        break;
      }
      case 'ClientErased':
        break;
    }
  }
  return standing;
}
