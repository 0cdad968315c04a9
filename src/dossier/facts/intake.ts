import * as z from 'zod/mini';
import { routes, stainClasses } from '../../core/wash/index.ts';
import {
  confidence,
  day,
  fact,
  fractionOfOne,
  id,
  lengthMm,
  line,
  massKg,
  money,
  passage,
  pointMm,
  sha256,
  side,
  temperatureC,
} from './shape.ts';

/** What a visit may be for. A visit without `wash` passes without the wet stages. */
export const scopes = ['wash', 'dusting only', 'repair', 'appraisal', 'storage', 'stain removal'] as const;
export const rugShapes = ['rectangle', 'runner', 'square', 'round', 'oval', 'irregular'] as const;

export const intakeFacts = {
  /** First entry of a dossier: the number it keeps for life. */
  DossierOpened: fact('DossierOpened', { number: z.int().check(z.gte(1)), title: line }),
  /** A rug came through the door: a visit begins. */
  RugReceived: fact('RugReceived', {
    visit: id,
    consignment: id,
    client: id,
    tag: z.string().check(z.trim(), z.regex(/^[0-9A-Za-z-]{1,12}$/)),
    scope: z.array(z.enum(scopes)).check(z.minLength(1)),
    route: z.enum(routes),
    reason: passage,
    /** In what right the person hands it over. */
    authority: z.enum(['owner', 'for the owner', 'dealer', 'insurer', 'museum']),
    declaredValue: z.optional(money),
    /** Months since it was last washed, if known. */
    monthsSinceWash: z.optional(z.number().check(z.gte(0), z.lte(2400))),
    soiling: z.optional(z.enum(['dust only', 'soiled'])),
    promisedFor: z.optional(day),
    place: z.optional(line),
    /** Signature on the receipt, kept in the client's own stream. */
    signature: z.optional(id),
  }),
  /** A receipt made out while nobody was there to sign is signed later. */
  ReceiptSigned: fact('ReceiptSigned', { signature: id }),
  /** Three lengths and three widths show a rug that is out of square. */
  RugMeasured: fact('RugMeasured', {
    occasion: z.enum(['intake', 'after work']),
    shape: z.enum(rugShapes),
    lengthsMm: z.array(lengthMm).check(z.length(3)),
    widthsMm: z.array(lengthMm).check(z.length(3)),
    fringeStartMm: z.optional(z.number().check(z.gte(0), z.lte(1000))),
    fringeEndMm: z.optional(z.number().check(z.gte(0), z.lte(1000))),
    pileHeightMm: z.optional(z.number().check(z.gte(0), z.lte(150))),
    /** Each end of a measured length is uncertain by this much. */
    uncertaintyMm: z.number().check(z.gte(1), z.lte(100)),
  }),
  /** A mass means nothing without the air it was taken in. */
  RugWeighed: fact('RugWeighed', {
    massKg,
    airRh: z.optional(fractionOfOne),
    airC: z.optional(temperatureC),
    /** True when the rug had lain at least 24 h in this air. */
    restedADay: z.boolean(),
    occasion: z.enum(['intake', 'after dusting', 'other']),
    /** Set when a person confirmed a mass outside the construction's usual band. */
    confirmedUnusual: z.optional(z.boolean()),
  }),
  PhotographTaken: fact('PhotographTaken', {
    photo: sha256,
    widthPx: z.int().check(z.gte(1)),
    heightPx: z.int().check(z.gte(1)),
    shows: z.enum(['face', 'back', 'detail', 'label', 'damage', 'paper', 'reading', 'other']),
    occasion: z.enum(['intake', 'work', 'after work', 'return']),
    caption: z.optional(line),
    light: z.optional(line),
  }),
  /** The rug's four corners on a picture: start-left, start-right, end-right, end-left, in 0 … 1 of the picture. */
  CornersTapped: fact('CornersTapped', {
    photo: sha256,
    corners: z.array(z.object({ x: z.number(), y: z.number() })).check(z.length(4)),
  }),
  /** Somebody looked the rug over; without this, an empty list of marks proves nothing. */
  ConditionSurveyed: fact('ConditionSurveyed', {
    occasion: z.enum(['intake', 'after work']),
    sides: z.enum(['face', 'back', 'face and back']),
    light: line,
    /** What could not be seen, and why. */
    limits: z.optional(passage),
  }),
  MarkRecorded: fact('MarkRecorded', {
    mark: id,
    /** Word of the condition list. */
    word: line,
    side,
    shape: z.enum(['point', 'line', 'polygon']),
    /** In rug millimetres; empty while it is drawn on a picture without corners. */
    pointsMm: z.array(pointMm),
    /** Where it was drawn, in 0 … 1 of the picture. */
    drawn: z.optional(
      z.object({ photo: sha256, points: z.array(z.object({ x: fractionOfOne, y: fractionOfOne })) }),
    ),
    /** 0 inherent, 1 soil or finish, 2 pile or colour, 3 foundation exposed or edge open, 4 hole, rot, active life. */
    grade: z.int().check(z.gte(0), z.lte(4)),
    areaCm2: z.optional(z.number().check(z.gte(0), z.lte(1e6))),
    lengthCm: z.optional(z.number().check(z.gte(0), z.lte(1e4))),
    count: z.optional(z.int().check(z.gte(0), z.lte(1e6))),
    activity: z.enum(['stable', 'slow', 'active', 'unknown']),
    /** For stains: the class, as far as known. */
    stain: z.optional(z.enum(stainClasses)),
    /** Ids of the colours under it; absent: all. */
    colours: z.optional(z.array(id)),
    cause: z.optional(line),
    causeConfidence: z.optional(confidence),
    photos: z.array(sha256),
    clientInitials: z.optional(z.string().check(z.maxLength(8))),
    note: z.optional(passage),
    /** True when it was found during work, not at the door. */
    foundDuringWork: z.optional(z.boolean()),
  }),
};
