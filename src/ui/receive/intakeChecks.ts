import { problemWords } from '../../text/problemWords.ts';
import type { Intake, RugIntake, Step } from './intake.ts';
import { isUnusualMass } from './intakeFacts.ts';

/** What still keeps a step from being recorded, by field. */
export type Faults = Readonly<Record<string, string>>;

const tagForm = /^[0-9A-Za-z-]{1,12}$/;

export const tagFault = (tag: string): string | null =>
  tag.trim() === ''
    ? 'There is no tag number. It is what tells this rug from all others on the wash floor. Give the number of the tag you tie to it.'
    : tagForm.test(tag.trim())
      ? null
      : `“${tag}” is no tag number. A tag is read on a wet floor, so it is short. Use 1 to 12 letters, digits or hyphens.`;

/** Three measures of a woven edge that differ by more than this share are taken for a slip. */
const mostSpread = 0.25;

const spreadFault = (values: readonly (number | null)[], what: 'lengths' | 'widths'): string | null => {
  const valuesMm = values.flatMap((value) => (value === null ? [] : [value]));
  const most = Math.max(...valuesMm);
  if ((most - Math.min(...valuesMm)) / most <= mostSpread) return null;
  const { happened, matters, now } = problemWords({
    code: 'sizes-disagree',
    facts: { which: what, valuesMm },
  });
  return `${happened} ${matters} ${now}`;
};

const sizeFault = (
  values: readonly (number | null)[],
  what: 'lengths' | 'widths',
  isIrregular: boolean,
): string | null =>
  values.some((value) => value === null)
    ? `${values.filter((value) => value === null).length} of three ${what} are missing. Three of each show whether the rug is square, and later whether it moved. Measure at both edges and in the middle.`
    : isIrregular
      ? null
      : spreadFault(values, what);

const given = (faults: Readonly<Record<string, string | null>>): Faults =>
  Object.fromEntries(Object.entries(faults).filter((entry): entry is [string, string] => entry[1] !== null));

const clientFaults = ({ client }: Intake): Faults =>
  given({
    client:
      client.kind === 'none'
        ? 'No client is chosen. The receipt and the rug need an owner. Find the client or add them.'
        : null,
    name:
      client.kind === 'new' && client.typed.name.trim() === ''
        ? 'The name is missing. The receipt is made out to it. Write the name of the person who hands the rug over.'
        : null,
    email:
      client.kind === 'new' &&
      client.typed.email.trim() !== '' &&
      !/^\S+@\S+\.\S+$/.test(client.typed.email.trim())
        ? `“${client.typed.email}” is no e-mail address. Papers sent there would not arrive. Write it such as name@example.org, or leave it empty.`
        : null,
  });

const rugFaults = (intake: Intake, rug: RugIntake): Faults => {
  const twin = intake.rugs.find((other) => other.rug !== rug.rug && other.tag.trim() === rug.tag.trim());
  return given({
    title:
      rug.known === null && rug.title.trim() === ''
        ? 'The rug has no name. People look for it by what it looks like. Write a few words, such as “red runner with three medallions”.'
        : null,
    tag:
      tagFault(rug.tag) ??
      (twin === undefined
        ? null
        : `Tag ${rug.tag.trim()} is on another rug of this receipt. Two rugs with one tag cannot be told apart when wet. Give this one its own tag.`),
  });
};

/**
 * What is missing or cannot be right on a step; empty when it is complete.
 *
 * @param intake - as typed so far
 * @param step - which step
 * @param rug - which rug, for the steps of a rug
 * @param today - such as `2026-11-25`; a promise lies on it or after it
 */
export function faultsOf(intake: Intake, step: Step, rug: RugIntake, today: string): Faults {
  switch (step) {
    case 'client':
      return clientFaults(intake);
    case 'visit':
      return given({
        scope:
          intake.scope.length === 0
            ? 'Nothing is chosen. What the rug came for decides which work is done. Choose at least one.'
            : null,
      });
    case 'rug':
      return rugFaults(intake, rug);
    case 'size':
      return given({
        lengths: sizeFault(rug.lengthsMm, 'lengths', rug.shape === 'irregular'),
        widths: sizeFault(rug.widthsMm, 'widths', rug.shape === 'irregular'),
      });
    case 'mass':
      return given({
        mass:
          !rug.weighsLater && rug.massKg === null
            ? 'The mass is missing. Drying is followed by weighing, and lifting is planned by it. Weigh the rug, or choose to weigh it later.'
            : null,
        unusual:
          !rug.weighsLater && !rug.confirmedUnusual && isUnusualMass(rug)
            ? 'The mass is outside what rugs of this size weigh. A slip would spoil the drying and the lifting plan. Weigh and measure once more, then confirm it.'
            : null,
      });
    case 'terms':
      return given({
        reason:
          rug.reason.trim() === ''
            ? 'The reason is missing. It is the client’s wish as they said it, printed on the receipt. Write it in a few words.'
            : null,
        promised:
          rug.promisedFor !== null && rug.promisedFor < today
            ? `${rug.promisedFor} has passed. A promise is a day still to come. Give a later day, or leave it empty.`
            : null,
      });
    case 'marks':
      return given({
        survey:
          rug.survey.sides === null
            ? 'Nobody has said which sides were looked over. A list of marks proves something only when the rest was seen to be free of them. Choose the sides, or “not yet”.'
            : null,
      });
    case 'pictures':
    case 'rugs':
      return {};
    case 'sign':
      return given({
        signature:
          intake.signature === null && (intake.unsigned ?? '').trim() === ''
            ? 'Nobody has signed. The signature shows that the condition was seen by both. Let the client sign, or type the name under the statement.'
            : null,
      });
  }
}
