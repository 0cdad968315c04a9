import { findingsSuggested, type RugFrame, rugFrame } from '../../core/condition/index.ts';
import { constructions, massBandOf } from '../../core/wash/index.ts';
import type { RugFact, RugFactOf } from '../../dossier/index.ts';
import { surveyFact } from '../condition/index.ts';
import type { Intake, RugIntake } from './intake.ts';

/** Each end of a tape laid by hand is uncertain by half a centimetre. */
export const tapeEndMm = 5;

const whole = (values: readonly (number | null)[]): readonly number[] =>
  values.flatMap((value) => (value === null ? [] : [value]));

/** The measurement, once all six sizes are there. */
export function measuredFact(rug: RugIntake): RugFactOf<'RugMeasured'> | null {
  const lengthsMm = whole(rug.lengthsMm);
  const widthsMm = whole(rug.widthsMm);
  if (lengthsMm.length < 3 || widthsMm.length < 3) return null;
  return {
    type: 'RugMeasured',
    occasion: 'intake',
    shape: rug.shape,
    lengthsMm,
    widthsMm,
    ...(rug.fringeStartMm === null ? {} : { fringeStartMm: rug.fringeStartMm }),
    ...(rug.fringeEndMm === null ? {} : { fringeEndMm: rug.fringeEndMm }),
    uncertaintyMm: tapeEndMm,
  };
}

export function frameOf(rug: RugIntake): RugFrame | null {
  const measured = measuredFact(rug);
  return measured === null ? null : rugFrame(measured);
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Area of the woven body [m²], once measured. */
export function areaM2(rug: RugIntake): number | null {
  const measured = measuredFact(rug);
  if (measured === null) return null;
  const box = (mean(measured.lengthsMm) / 1000) * (mean(measured.widthsMm) / 1000);
  return measured.shape === 'round' || measured.shape === 'oval' ? (box * Math.PI) / 4 : box;
}

/** What rugs of this area weigh, whatever their construction; null before it is measured. */
export function usualMassKg(rug: RugIntake): { readonly least: number; readonly most: number } | null {
  const area = areaM2(rug);
  if (area === null) return null;
  const bands = constructions.flatMap((construction) => massBandOf(construction) ?? []);
  return {
    least: Math.min(...bands.map(({ least }) => least)) * area,
    most: Math.max(...bands.map(({ most }) => most)) * area,
  };
}

/** Whether no construction weighs so much or so little per area. */
export function isUnusualMass(rug: RugIntake): boolean {
  const usual = usualMassKg(rug);
  return usual !== null && rug.massKg !== null && (rug.massKg < usual.least || rug.massKg > usual.most);
}

export function weighedFact(rug: RugIntake): RugFactOf<'RugWeighed'> | null {
  if (rug.weighsLater || rug.massKg === null) return null;
  return {
    type: 'RugWeighed',
    massKg: rug.massKg,
    ...(rug.airRhPercent === null ? {} : { airRh: rug.airRhPercent / 100 }),
    ...(rug.airC === null ? {} : { airC: rug.airC }),
    restedADay: rug.restedADay,
    occasion: 'intake',
    ...(rug.confirmedUnusual ? { confirmedUnusual: true } : {}),
  };
}

/** What may live in the rug by its marks, or null. An activity nobody knows counts as active. */
export function lifeIn(marks: RugIntake['marks']): RugFactOf<'Quarantined'>['why'] | null {
  const findings = new Set(marks.flatMap(({ word, activity }) => findingsSuggested(word, activity)));
  if (findings.has('active mould')) return 'mould';
  return findings.has('active moth') || findings.has('active beetle') ? 'moth or beetle' : null;
}

/** A rug in which something may live is in quarantine from the moment it is on record. */
function quarantinedFact({ marks }: RugIntake): RugFactOf<'Quarantined'> | null {
  const why = lifeIn(marks);
  return why === null ? null : { type: 'Quarantined', why, note: 'By the marks put down at the door.' };
}

const receivedFact = (intake: Intake, rug: RugIntake): RugFactOf<'RugReceived'> => {
  const { client, signature } = intake;
  return {
    type: 'RugReceived',
    visit: rug.visit,
    consignment: intake.consignment,
    client: client.kind === 'none' ? '' : client.client,
    tag: rug.tag.trim(),
    scope: intake.scope,
    route: intake.route,
    reason: rug.reason.trim(),
    authority: intake.authority,
    ...(rug.declaredValue === null ? {} : { declaredValue: rug.declaredValue }),
    ...(rug.monthsSinceWash === null ? {} : { monthsSinceWash: rug.monthsSinceWash }),
    ...(rug.soiling === null ? {} : { soiling: rug.soiling }),
    ...(rug.promisedFor === null ? {} : { promisedFor: rug.promisedFor }),
    ...(rug.place.trim() === '' ? {} : { place: rug.place.trim() }),
    ...(signature === null ? {} : { signature: signature.signature }),
  };
};

const present = <Fact>(fact: Fact | null): readonly Fact[] => (fact === null ? [] : [fact]);

/** All facts of one rug, in the order they stand on each other. */
export const rugFactsOf = (intake: Intake, rug: RugIntake): readonly RugFact[] => [
  ...(rug.known === null ? [{ type: 'DossierOpened', number: 1, title: rug.title.trim() } as const] : []),
  receivedFact(intake, rug),
  ...present(measuredFact(rug)),
  ...present(weighedFact(rug)),
  ...rug.photographs,
  ...Object.entries(rug.corners).map(([photo, corners]) => ({
    type: 'CornersTapped' as const,
    photo,
    corners,
  })),
  ...rug.marks,
  ...present(surveyFact(rug.survey, 'intake')),
  ...present(quarantinedFact(rug)),
  ...(intake.unsigned === null
    ? []
    : [{ type: 'NoteAdded', note: `Nobody signed at the door: ${intake.unsigned.trim()}` } as const]),
];

export const rugTitle = (rug: RugIntake): string =>
  rug.known?.title ?? (rug.title.trim() === '' ? 'Rug without a name yet' : rug.title.trim());
