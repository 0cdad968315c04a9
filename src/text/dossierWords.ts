import type { RugProblem } from '../dossier/index.ts';
import { axisWords } from '../papers/limitWords.ts';
import { dryAskedWords } from './dryWords.ts';
import type { floorWords } from './floorWords.ts';
import type { shelfWords } from './shelfWords.ts';
import type { washWords } from './washWords.ts';
import type { WordsFor } from './words.ts';

const money = (minor: number, currency: string) => `${(minor / 100).toFixed(2)} ${currency}`;
const cm = (mm: number) => `${(mm / 10).toFixed(1)} cm`;
const instant = (at: string) => `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;
const listed = (items: readonly string[]) =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

const obstacleWords = {
  'not-inspected': 'the final inspection is not done',
  'not-dry': 'it was wetted and is not yet accepted as dry',
  quarantined: 'it is in quarantine',
  'is-out': 'it is out of the house',
  'stop-not-cleared': 'a stop is still open',
} as const;

/** What blocks a wet step, in a few words; used where several stand in one sentence. */
export const blockerWords = {
  'rug-quarantined': 'the rug is in quarantine',
  'rug-is-out': 'the rug is out of the house',
  'no-plan-possible': 'no wash plan is possible yet',
  'method-not-wet': 'the plan allows no wet method',
  'plan-not-agreed': 'no plan is on record',
  'plan-tightened': 'the plan has become tighter than the one agreed',
  'sign-off-missing': 'a sign-off is missing',
  'consent-missing': 'the client has not consented',
  'consent-refused': 'the client refused',
  'consent-withdrawn': 'the client took the consent back',
  'consent-for-another-plan': 'the consent is for another plan',
  'price-above-consent': 'the price is above what was agreed',
  'drying-forecast-stale': 'the drying forecast is too old',
  'stop-not-cleared': 'a stop is not cleared',
  'wet-minutes-used': 'its wet minutes are used up',
} as const;

/** Problems of one rug's record. */
export const dossierWords = {
  'rug-quarantined': ({ why }) => ({
    happened: `The rug is in quarantine: ${why}.`,
    matters: 'What lives or lies in it would spread to other people’s rugs and to whoever handles it.',
    now: 'Treat and inspect it, then the owner releases it. Nothing overrides this.',
  }),
  'rug-is-out': ({ to }) => ({
    happened: `The rug is out of the house, at ${to}.`,
    matters: 'The record must show where the rug truly is.',
    now: 'Record that it came back, then go on.',
  }),
  'no-plan-possible': ({ refusal }) => ({
    happened: 'What is known of this rug allows no wash plan.',
    matters: 'Without a plan nobody can say which wash it bears.',
    now: `Open the plan: it names what clashes (${refusal.code}) and what to find out.`,
  }),
  'method-not-wet': ({ method, because }) => ({
    happened: `The plan allows “${method}”, no wet step.`,
    matters: because.length > 0 ? because.join(' ') : 'A wet step now could harm the rug for good.',
    now: 'Look at “What would loosen this” in the plan: a test or an observation may allow more.',
  }),
  'plan-not-agreed': () => ({
    happened: 'No wash plan is on record for this visit.',
    matters: 'The client agrees to a plan, and every bath is judged by it.',
    now: 'Open the plan and put it on record.',
  }),
  'plan-tightened': ({ axes }) => ({
    happened: `What was found since makes the plan tighter than the one agreed (${axes.map((axis) => axisWords[axis]).join('; ')}).`,
    matters: 'The agreement was for more than the rug can now be said to bear, so it no longer holds.',
    now: 'Put the new plan on record and ask the client again.',
  }),
  'sign-off-missing': ({ who }) => ({
    happened: `A sign-off is missing: ${listed(who)}.`,
    matters: 'This rug’s value or route asks for a second judgement before water.',
    now: 'Record the sign-off with the name of who gives it.',
  }),
  'consent-missing': () => ({
    happened: 'The client has not consented to this plan.',
    matters: 'Somebody else’s rug is not wetted without their word.',
    now: 'Show the consent paper and record how they agreed. Nothing overrides this.',
  }),
  'consent-refused': ({ words }) => ({
    happened: `The client refused: “${words}”.`,
    matters: 'Their no stands until they say otherwise.',
    now: 'Offer another scope, or return the rug.',
  }),
  'consent-withdrawn': ({ words }) => ({
    happened: `The client took the consent back: “${words}”.`,
    matters: 'Work without consent cannot be undone.',
    now: 'Settle it with the client and record a new consent, or return the rug.',
  }),
  'consent-for-another-plan': () => ({
    happened: 'The consent on record is for an earlier plan.',
    matters: 'The client agreed to other risks than those of the plan that stands now.',
    now: 'Show the present plan and record the consent to it.',
  }),
  'price-above-consent': ({ agreedMinor, quotedMinor, currency }) => ({
    happened: `The price may reach ${money(quotedMinor, currency)}; the client agreed to at most ${money(agreedMinor, currency)}.`,
    matters: 'A raised price voids the consent.',
    now: 'Lower the quote, or ask the client to agree to the new ceiling.',
  }),
  'drying-forecast-stale': ({ madeAt, mostHours }) => ({
    happened: `The drying forecast was made on ${instant(madeAt)}; it holds for ${mostHours} h.`,
    matters:
      'Other rugs may hang in the room by now: whether this one is dry in time has to be asked again before the water.',
    now: 'Forecast it again; the plan stays as agreed unless the new forecast tightens it.',
  }),
  'drying-hours-need-owner': () => ({
    happened: 'Hours by hand in place of a forecast need the owner and a reason.',
    matters: 'The forecast stands on the record of the room; whoever sets it aside answers for the rug.',
    now: 'Let an owner enter the hours and say why, or forecast again.',
  }),
  'stop-not-cleared': ({ condition }) => ({
    happened: `A stop is open: ${condition.replace(/\.$/, '')}.`,
    matters: 'Going on before it is resolved can make the harm permanent.',
    now: 'Follow the rescue card, then record how it was resolved.',
  }),
  'wash-not-allowed': ({ blockers }) => ({
    happened: `Not yet: ${listed(blockers.map(({ code }) => blockerWords[code]))}.`,
    matters: 'A wash cannot be undone.',
    now: 'Clear each of these; the dossier shows the next one.',
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
  'step-not-planned': ({ step }) => ({
    happened: `The step “${step}” is not in the plan on record.`,
    matters: 'Only what the client agreed to is done.',
    now: 'Look at the plan again; it may have been put on record anew.',
  }),
  'step-wets': ({ step }) => ({
    happened: `The step “${step}” was sent with the wrong word on whether it wets the rug.`,
    matters: 'The wet clock starts with the first wet step.',
    now: 'Load the page again and start the step from the plan.',
  }),
  'step-not-started': ({ step }) => ({
    happened: `The step “${step}” has not been started.`,
    matters: 'Its time in the rug would be unknown.',
    now: 'Start the step, or record when it started.',
  }),
  'step-under-way': ({ step }) => ({
    happened: `The step “${step}” is already under way.`,
    matters: 'Its time runs from the first start.',
    now: 'Finish it first.',
  }),
  'too-few-people': ({ needed }) => ({
    happened: `This step needs ${needed} people, each under their own name.`,
    matters: 'One pair of hands cannot hold a heavy or bleeding rug.',
    now: 'Let whoever helps say so by PIN or on their own tablet, then start.',
  }),
  'wet-minutes-used': ({ used, allowed }) => ({
    happened: `The rug has been wet for ${used} min; it bears ${allowed}.`,
    matters: 'Every further minute moves dye, swells the foundation and brings browning nearer.',
    now: 'Rinse and extract now; these are never held back.',
  }),
  'nothing-measured': () => ({
    happened: 'The reading holds no value.',
    matters: 'An empty reading looks like one that was fine.',
    now: 'Give at least one value.',
  }),
  'stop-unknown': ({ stop }) => ({
    happened: `There is no open stop “${stop}”.`,
    matters: 'A stop is cleared once.',
    now: 'Load the page again; somebody may have cleared it.',
  }),
  'drying-not-started': () => ({
    happened: 'Drying has not been started.',
    matters: 'Readings belong to a posture and a place.',
    now: 'Record where and how the rug was laid or hung.',
  }),
  'dry-standard-unmet': ({ unmet }) => ({
    happened: `Not dry by the standard yet: ${unmet.map(({ code }) => dryAskedWords[code].toLowerCase()).join('; ')}.`,
    matters: 'Wool holds up to a third of its mass in water without feeling wet; mould needs two days.',
    now: 'Take the readings that are missing, or let it dry on.',
  }),
  'dry-standard-not-chosen': ({ standard, workshops }) => ({
    happened: `The standard “${standard}” is not the workshop’s (“${workshops}”).`,
    matters: 'A weaker standard is a setting of the owner’s and is printed on the papers.',
    now: `Use “${workshops}” or the full standard.`,
  }),
  'posture-not-allowed': ({ posture, limit }) => ({
    happened: `“${posture}” is not allowed for this rug; the plan asks for “${limit}”.`,
    matters: 'Weak, bleeding or soft pieces are lost by their own wet weight.',
    now: `Dry it ${limit}.`,
  }),
  'marks-not-inspected': ({ marks }) => ({
    happened: `${marks.length} mark${marks.length === 1 ? '' : 's'} from intake ${marks.length === 1 ? 'was' : 'were'} not looked at.`,
    matters: 'The comparison with intake is what settles an argument later.',
    now: 'Say of every mark whether it is unchanged, improved or worse.',
  }),
  'not-ready-to-return': ({ obstacles }) => ({
    happened: `The rug cannot go home yet: ${listed(obstacles.map((obstacle) => obstacleWords[obstacle]))}.`,
    matters: 'After the hand-back none of it can be made good here.',
    now: 'Do what is named, then hand it back.',
  }),
  'identity-differs': ({ which }) => ({
    happened: `It does not agree with intake: ${listed(which)}.`,
    matters: 'It may be another rug.',
    now: 'Check tag, size and pictures; if it is the rug after all, say why it differs.',
  }),
  'work-declined': ({ type }) => ({
    happened: `“${type}” cannot be recorded: the work was declined.`,
    matters: 'Nothing more is done to a rug whose work was declined; it only waits to be handed back.',
    now: 'Hand the rug back, or withdraw the decline in the history if the work goes on after all.',
  }),
  'quarantined-goes-home': ({ why }) => ({
    happened: `The rug is in quarantine: ${why}.`,
    matters: 'Whoever takes it home, and everything else that is there, is at risk.',
    now: 'Record how it was packed and what the client was told of the risk.',
  }),
  'day-not-possible': ({ what, day, from, until }) => ({
    happened: `The day “${what}” cannot be ${day}.`,
    matters: 'What is asked of an outside workshop or a client by a day must be a day that can be.',
    now: until === null ? `Give a day from ${from} on.` : `Give a day from ${from} to ${until}.`,
  }),
  'incident-unknown': () => ({
    happened: 'There is no such incident in this visit, or the client already knows of it.',
    matters: 'What the client was told must belong to a report.',
    now: 'Open the dossier anew and choose the incident.',
  }),
  'wet-rug-stays': () => ({
    happened: 'The rug is wet.',
    matters: 'A wet rug that leaves grows mould where nobody watches it.',
    now: 'Dry it to the standard first; the owner may override the dry standard with a reason.',
  }),
  'not-quarantined': () => ({
    happened: 'The rug is not in quarantine.',
    matters: 'A release without a quarantine proves nothing.',
    now: 'Load the page again; somebody may have released it.',
  }),
  'not-out': () => ({
    happened: 'The rug is not recorded as out of the house.',
    matters: 'The record must show where it was.',
    now: 'Load the page again, or record that it moved.',
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
        | keyof typeof floorWords
        | keyof typeof shelfWords
        | keyof typeof washWords;
    }
  >
>;
