import type { RugCorners } from '../../core/condition/index.ts';
import type { Route } from '../../core/wash/index.ts';
import type { RugFactOf } from '../../dossier/index.ts';
import { blankClient, type TypedClient } from '../client/ClientForm.tsx';
import { blankSurvey, type Mark, type Signature, type SurveyDraft } from '../condition/index.ts';
import type { Money } from '../kit/index.ts';

type Received = RugFactOf<'RugReceived'>;
type Measured = RugFactOf<'RugMeasured'>;
export type Photographed = RugFactOf<'PhotographTaken'>;

/** One rug as far as it has been taken in. What is not known yet is null or empty. */
export interface RugIntake {
  readonly rug: string;
  readonly visit: string;
  /** Set when the rug has been here before. */
  readonly known: { readonly number: number; readonly title: string } | null;
  readonly title: string;
  readonly tag: string;
  readonly shape: Measured['shape'];
  readonly lengthsMm: readonly (number | null)[];
  readonly widthsMm: readonly (number | null)[];
  readonly fringeStartMm: number | null;
  readonly fringeEndMm: number | null;
  readonly weighsLater: boolean;
  readonly massKg: number | null;
  readonly airRhPercent: number | null;
  readonly airC: number | null;
  readonly restedADay: boolean;
  readonly confirmedUnusual: boolean;
  readonly reason: string;
  readonly declaredValue: Money | null;
  readonly promisedFor: string | null;
  readonly place: string;
  readonly monthsSinceWash: number | null;
  readonly soiling: NonNullable<Received['soiling']> | null;
  readonly photographs: readonly Photographed[];
  readonly corners: Readonly<Record<string, RugCorners>>;
  readonly marks: readonly Mark[];
  readonly survey: SurveyDraft;
}

export type ClientIntake =
  | { readonly kind: 'none' }
  | { readonly kind: 'found'; readonly client: string; readonly name: string }
  | { readonly kind: 'new'; readonly client: string; readonly typed: TypedClient };

/** Everything typed at the door, kept on the device until the server has it. */
export interface Intake {
  readonly consignment: string;
  readonly step: Step;
  readonly rugAt: number;
  readonly client: ClientIntake;
  readonly scope: readonly Received['scope'][number][];
  readonly route: Route;
  readonly authority: Received['authority'];
  readonly rugs: readonly RugIntake[];
  readonly signature: Signature | null;
  /** Why nobody signed; null while somebody is there to sign. */
  readonly unsigned: string | null;
  /** What was sent last, so that sending it again records it once. */
  readonly sent: { readonly said: string; readonly ids: readonly (readonly string[])[] } | null;
  /** Set once the server has recorded it. */
  readonly recorded:
    | readonly {
        readonly rug: string;
        readonly number: number;
        readonly title: string;
        readonly tag: string;
      }[]
    | null;
}

export const rugSteps = ['rug', 'size', 'mass', 'terms', 'pictures', 'marks'] as const;
export const steps = ['client', 'visit', ...rugSteps, 'rugs', 'sign'] as const;
export type Step = (typeof steps)[number];

export const stepWords: { readonly [S in Step]: string } = {
  client: 'Client',
  visit: 'What for',
  rug: 'Rug and tag',
  size: 'Size',
  mass: 'Mass',
  terms: 'Wishes and value',
  pictures: 'Pictures',
  marks: 'Marks',
  rugs: 'All rugs',
  sign: 'Sign',
};

const unmeasured: readonly null[] = [null, null, null];

export const blankRug = (rug: string, visit: string): RugIntake => ({
  rug,
  visit,
  known: null,
  title: '',
  tag: '',
  shape: 'rectangle',
  lengthsMm: unmeasured,
  widthsMm: unmeasured,
  fringeStartMm: null,
  fringeEndMm: null,
  weighsLater: false,
  massKg: null,
  airRhPercent: null,
  airC: null,
  restedADay: false,
  confirmedUnusual: false,
  reason: '',
  declaredValue: null,
  promisedFor: null,
  place: '',
  monthsSinceWash: null,
  soiling: null,
  photographs: [],
  corners: {},
  marks: [],
  survey: blankSurvey,
});

export const blankIntake = (newId: () => string): Intake => ({
  consignment: newId(),
  step: 'client',
  rugAt: 0,
  client: { kind: 'none' },
  scope: ['wash'],
  route: 'rug in use',
  authority: 'owner',
  rugs: [blankRug(newId(), newId())],
  signature: null,
  unsigned: null,
  sent: null,
  recorded: null,
});

export const newClient = (client: string): ClientIntake => ({ kind: 'new', client, typed: blankClient });

export const clientName = (client: ClientIntake): string =>
  client.kind === 'none' ? '' : client.kind === 'found' ? client.name : client.typed.name.trim();
