import type { RugProblem } from '../dossier/index.ts';
import type { blockedWords } from './blockedWords.ts';
import type { floorWords } from './floorWords.ts';
import type { shelfWords } from './shelfWords.ts';
import type { washWords } from './washWords.ts';
import type { WordsFor } from './words.ts';
import type { workWords } from './workWords.ts';

const money = (minor: number, currency: string) => `${(minor / 100).toFixed(2)} ${currency}`;
const cm = (mm: number) => `${(mm / 10).toFixed(1)} cm`;
const instant = (at: string) => `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;
const listed = (items: readonly string[]) =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

/** Problems of one rug's record: its dossier, its receipt, what was found, tested and agreed. */
export const dossierWords = {
  'drying-hours-need-owner': () => ({
    happened: 'Hours by hand in place of a forecast need the owner and a reason.',
    matters: 'The forecast stands on the record of the room; whoever sets it aside answers for the rug.',
    now: 'Let an owner enter the hours and say why, or forecast again.',
  }),
  'size-not-measured': () => ({
    happened: 'The rug has not been measured.',
    matters: 'Amounts, weights and loads all come from its area.',
    now: 'Measure three lengths and three widths.',
  }),
  'dossier-open-already': ({ number }) => ({
    happened: `This rug already has dossier ${number}.`,
    matters: 'A rug has one dossier for life.',
    now: 'Open that dossier and begin a new visit in it.',
  }),
  'dossier-not-open': () => ({
    happened: 'There is no dossier for this rug yet.',
    matters: 'Every fact needs a rug it belongs to.',
    now: 'Receive the rug first.',
  }),
  'visit-under-way': ({ tag }) => ({
    happened: `The rug is already here, under tag ${tag}.`,
    matters: 'Two visits at once would mix two agreements.',
    now: 'Go on with the visit that is open, or end it first.',
  }),
  'no-visit': ({ type }) => ({
    happened: `“${type}” cannot be recorded: the rug is not in the workshop.`,
    matters: 'Work belongs to a visit with its own agreement.',
    now: 'Receive the rug again to begin a visit.',
  }),
  'before-receipt': ({ happenedAt, receivedAt }) => ({
    happened: `${instant(happenedAt)} lies before the rug was received (${instant(receivedAt)}).`,
    matters: 'What happened before it came is not this workshop’s to record as its own.',
    now: `Give a time after ${instant(receivedAt)}.`,
  }),
  'in-the-future': ({ happenedAt, now }) => ({
    happened: `${instant(happenedAt)} has not come yet; it is ${instant(now)}.`,
    matters: 'The record holds what has happened.',
    now: 'Correct the time, or leave it empty for now.',
  }),
  'role-missing': ({ needs }) => ({
    happened: `This needs the role of ${needs.join(' or ')}.`,
    matters: 'Some decisions bind the workshop and belong to one person.',
    now: `Ask somebody with the role of ${needs.join(' or ')} to record it.`,
  }),
  'sizes-disagree': ({ which, valuesMm }) => ({
    happened: `The three ${which} differ by more than a quarter: ${valuesMm.map(cm).join(', ')}.`,
    matters: 'The area, and with it every amount, would be wrong.',
    now: `Measure the ${which} again, or choose the shape “irregular”.`,
  }),
  'mass-outside-band': ({ massKg, areaM2, construction, leastKg, mostKg }) => ({
    happened: `${massKg} kg is unusual for ${areaM2.toFixed(2)} m² of ${construction}; usual is ${leastKg.toFixed(1)} to ${mostKg.toFixed(1)} kg.`,
    matters: 'A wrong mass or size misleads the drying and the loads.',
    now: 'Weigh and measure again. If it truly is so, confirm the mass.',
  }),
  'mark-points-wrong': ({ shape, points, needed }) => ({
    happened: `A ${shape} with ${points} point${points === 1 ? '' : 's'} cannot be placed.`,
    matters: 'The mark must be found again on the rug.',
    now: `Give ${shape === 'point' ? 'exactly one point' : `at least ${needed} points`}.`,
  }),
  'mark-outside-rug': ({ xMm, yMm, widthMm, lengthMm }) => ({
    happened: `The point ${cm(xMm)} across and ${cm(yMm)} up lies outside the rug.`,
    matters: 'A mark in the wrong place proves nothing.',
    now: `Across runs from 0 to ${cm(widthMm)}, up from 0 to ${cm(lengthMm)}, from the lower left with the pile lying toward you.`,
  }),
  'mark-word-unknown': ({ word }) => ({
    happened: `“${word}” is no word of the condition list.`,
    matters: 'One word for one thing lets two people, and the plan, read the same.',
    now: 'Choose the nearest word of the list and say the rest in the note.',
  }),
  'blend-not-whole': ({ sum }) => ({
    happened: `The shares of the pile add up to ${(sum * 100).toFixed(0)} %.`,
    matters: 'An unnamed fibre could be the one that decides the wash.',
    now: 'Make them add up to 100 %; name what is not known “unknown”.',
  }),
  'years-reversed': ({ fromYear, untilYear }) => ({
    happened: `The period runs from ${fromYear} to ${untilYear}.`,
    matters: 'The earlier bound must come first.',
    now: 'Swap or correct the two years.',
  }),
  'colour-not-named': ({ colour }) => ({
    happened: `No colour “${colour}” has been named for this rug.`,
    matters: 'A test clears only the colour it was made on.',
    now: 'Name the colour first.',
  }),
  'control-stained': ({ control }) => ({
    happened: `The control blotter reads ${control}.`,
    matters:
      'A blotter that touched no rug should stay clean: cloth, water or light is at fault, and the grade says nothing.',
    now: 'Change cloth and water and test again, or record the reading as unclear.',
  }),
  'measured-without-photograph': () => ({
    happened: 'The reading says it was taken from a photograph, but names none.',
    matters: 'A measured grade is worth what its picture shows.',
    now: 'Send the photograph with it, or grade the blot by eye.',
  }),
  'measured-figures-disagree': ({ figure, given, expected }) => ({
    happened: `The ${figure} is ${given}, but the other figures of the same reading give ${expected}.`,
    matters: 'Figures that do not belong together were not measured together.',
    now: 'Measure the photographs again and record what comes out.',
  }),
  'picture-of-another-rug': ({ photo }) => ({
    happened: `The photograph ${photo.slice(0, 8)}… is none of this rug’s.`,
    matters: 'Two different rugs compared would show a change that never was.',
    now: 'Choose two photographs of this dossier, or take the picture here first.',
  }),
  'pictures-swapped': ({ beforeAt, afterAt }) => ({
    happened: `The picture from before was taken ${beforeAt.slice(0, 16).replace('T', ' ')}, the one from after ${afterAt.slice(0, 16).replace('T', ' ')} (UTC).`,
    matters: 'Swapped, a rug that grew cleaner would be said to have grown darker.',
    now: 'Choose the older picture as the one from before.',
  }),
  'test-without-minutes': ({ liquid }) => ({
    happened: `The ${liquid} test has no time.`,
    matters: 'Dye that holds a minute may run in ten: without its time a test covers nothing.',
    now: 'Give the minutes the blot lay.',
  }),
  'bath-not-planned': () => ({
    happened: 'No such bath is planned for this rug.',
    matters: 'Somebody may have dropped it already.',
    now: 'Look at the plan again: it lists the baths that are planned.',
  }),
  'plan-not-current': () => ({
    happened: 'The rug’s record has changed since this plan was made.',
    matters: 'Only the plan that follows from what is known now can be put on record.',
    now: 'Look at the plan again and put that one on record.',
  }),
  'currency-differs': ({ given, expected }) => ({
    happened: `The amount is in ${given}; this workshop counts in ${expected}.`,
    matters: 'Sums over two currencies mean nothing.',
    now: `Give the amount in ${expected}.`,
  }),
  'ceiling-below-sum': ({ sumMinor, notToExceedMinor, currency }) => ({
    happened: `The lines add up to ${money(sumMinor, currency)}, above the ceiling of ${money(notToExceedMinor, currency)}.`,
    matters: 'The ceiling is what the client agrees to.',
    now: 'Raise the ceiling or lower the lines.',
  }),
  'nothing-quoted': () => ({
    happened: 'No price has been quoted.',
    matters: 'Consent is to the risks and to a price not to exceed.',
    now: 'Quote the price first.',
  }),
  'rule-not-overridable': ({ rule }) => ({
    happened: `Rule ${rule} cannot be overridden.`,
    matters:
      'It guards against harm nobody may take on for another: forbidden mixtures, missing consent, quarantine.',
    now: 'Change what the rule stands on, or return the rug.',
  }),
  'rule-does-not-hold': ({ rule, about }) => ({
    happened:
      about.length === 0
        ? `Rule ${rule} holds nothing for this rug now.`
        : `Rule ${rule} now holds for other reasons: ${listed(about)}.`,
    matters: 'An override is for what is known when it is granted, never for what may be found later.',
    now: 'Look at the plan again and override what it shows.',
  }),
  'entry-unknown': ({ entry }) => ({
    happened: `There is no entry ${entry} in this dossier.`,
    matters: 'Only what was recorded can be withdrawn.',
    now: 'Load the page again and choose the entry from the history.',
  }),
  'entry-withdrawn-already': () => ({
    happened: 'This entry has been withdrawn already.',
    matters: 'A withdrawal stands once.',
    now: 'Nothing needs doing.',
  }),
  'entry-not-withdrawable': ({ type }) => ({
    happened: `“${type}” cannot be withdrawn.`,
    matters: 'The dossier stands on it; a withdrawal itself is corrected by recording the fact again.',
    now: 'Add a note with the correction, or record the right fact anew.',
  }),
  'count-not-confirmed': ({ place }) => ({
    happened: `The automatic count at “${place}” is not sure enough to stand alone.`,
    matters: 'A count by the wrong factor would make the rug half or twice as fine on every paper.',
    now: 'Look at the strokes on the picture and confirm both axes, or tap the two ends of five to ten knots.',
  }),
} satisfies WordsFor<
  Exclude<
    RugProblem,
    {
      code:
        | 'out-of-range'
        | 'card-other-tag'
        | keyof typeof blockedWords
        | keyof typeof floorWords
        | keyof typeof shelfWords
        | keyof typeof washWords
        | keyof typeof workWords;
    }
  >
>;
