import type { DryCriterion, DryFound } from '../dossier/index.ts';
import { dryBounds } from '../dossier/index.ts';
import { measureWords, type UnitSystem } from '../units/index.ts';

const percent = (ratio: number) => `${(ratio * 100).toFixed(1)} %`;

/** What a criterion of the dry standard asks for. */
export const dryAskedWords = {
  'constant-mass': `Four weighings an hour apart within ${percent(dryBounds.massWithin)}, in a room at ${percent(dryBounds.roomRhAtMost)} RH or less`,
  'confirmed-later': `A fifth weighing ${dryBounds.confirmedAfterHours} h later that agrees, or pocket humidity of ${percent(dryBounds.pocketRhAtMost)} or less`,
  'meter-at-reference': `Every meter point at most ${dryBounds.meterAboveReference} above the dry reference`,
  'regain-at-room': 'No more water than the fibre holds at rest at 65 % RH',
  'mass-not-above-intake': 'Not heavier than at intake (an upper bound only, never proof)',
  'pocket-humidity': `Pocket humidity of ${percent(dryBounds.pocketRhAtMost)} or less`,
  'touch-smell-cloth': 'Dry to the touch, no smell, nothing on a white cloth',
} satisfies { readonly [Code in DryCriterion['code']]: string };

/** What the readings show for a criterion. */
export function dryFoundWords(found: DryFound, units: UnitSystem = 'metric'): string {
  switch (found.kind) {
    case 'not-measured':
      return 'not measured yet';
    case 'weighings':
      return `${found.count} of ${found.needed} weighings`;
    case 'spread':
      return `within ${percent(found.ratio)}`;
    case 'spread-or-spacing':
      return `the last four differ by ${percent(found.ratio)} or lie less than an hour apart`;
    case 'room-humidity-unknown':
      return 'the room’s humidity was not noted with every weighing';
    case 'room-too-damp':
      return `weighed in a room at up to ${percent(found.mostRh)} RH`;
    case 'fifth-agrees':
      return 'the later weighing agrees';
    case 'pocket':
      return `pocket humidity ${percent(found.rh)}`;
    case 'no-reference':
      return 'no dry reference noted for the meter';
    case 'meter':
      return `highest point ${found.highest}, dry reference ${found.reference}`;
    case 'no-intake-mass':
      return 'not weighed at intake';
    case 'water':
      return `${percent(found.ratio.likely)} of dry mass (between ${percent(found.ratio.least)} and ${percent(found.ratio.most)}), limit ${percent(found.limit)}`;
    case 'below-bone-dry':
      return `${measureWords('mass', found.nowKg, units)} is lighter than the rug without any water (${measureWords('mass', found.ovenDryKg, units)}): check the scale and that it is this rug, and weigh again`;
    case 'masses':
      return `${measureWords('mass', found.nowKg, units)} now, ${measureWords('mass', found.intakeKg, units)} at intake`;
    case 'senses':
      return `touch ${found.touch ?? 'not noted'}, smell ${found.smell ?? 'not noted'}, white cloth ${found.cloth ?? 'not noted'}`;
  }
}
