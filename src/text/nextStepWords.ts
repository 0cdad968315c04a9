import { type Deed, stopSaid } from '../dossier/index.ts';
import { shelfGapWords } from './shelfGapWords.ts';

/** What is to be done in a washer's words, and where or why in a few more. */
export interface DeedWords {
  readonly title: string;
  readonly detail: string;
  /** What the button says that opens the right place. */
  readonly button: string;
}

const listed = (items: readonly string[]) => items.join(', ');

/**
 * The words of a next step.
 *
 * @param deed - what is to be done
 * @source none: wording of this project
 */
export function nextStepWords(deed: Deed): DeedWords {
  switch (deed.code) {
    case 'resolve-stop':
      return {
        title: 'Resolve the stop',
        detail: stopSaid(deed, deed.units),
        button: 'Open the rescue card',
      };
    case 'end-dwell':
      return {
        title: `End the dwell: ${deed.kind}`,
        detail: 'Look, then finish the step',
        button: 'Open the step',
      };
    case 'finish-step':
      return { title: `Finish: ${deed.kind}`, detail: 'The step is under way', button: 'Open the step' };
    case 'start-step':
      return {
        title: `Start: ${deed.kind}`,
        detail: 'Next step of the agreed plan',
        button: 'Open the wash',
      };
    case 'mend-shelf': {
      const { title, happened } = shelfGapWords(deed.gap, deed.isWet);
      return {
        title,
        detail: `${happened}${deed.more > 0 ? ` ${deed.more} more after it.` : ''}`,
        button: 'See what to do',
      };
    }
    case 'read-blot':
      return {
        title: `Read the blot: ${deed.colour}`,
        detail: `${deed.liquid}, grade it against the control`,
        button: 'Read the blot',
      };
    case 'start-drying':
      return {
        title: 'Lay or hang it to dry',
        detail: 'The wash is done; air within 15 minutes',
        button: 'Start drying',
      };
    case 'take-drying-reading':
      return {
        title: 'Weigh and read it',
        detail: `Wet for ${Math.floor(deed.wetHours)} h`,
        button: 'Take a reading',
      };
    case 'accept-dry':
      return { title: 'Accept it as dry', detail: 'Every criterion is met', button: 'Look and accept' };
    case 'release-quarantine':
      return { title: 'In quarantine', detail: deed.why, button: 'Open the quarantine' };
    case 'fetch-back':
      return { title: 'Out of the house', detail: `At ${deed.from}`, button: 'It came back' };
    case 'measure':
      return { title: 'Measure it', detail: 'Three lengths, three widths', button: 'Measure' };
    case 'survey-condition':
      return {
        title: 'Look it over, face and back',
        detail: 'Mark what was there before; say when nothing is',
        button: 'Look it over',
      };
    case 'identify':
      return {
        title: 'Find out what it is',
        detail: `Not sure yet: ${listed(deed.missing)}`,
        button: 'Identify it',
      };
    case 'weigh':
      return { title: 'Weigh it dry', detail: 'With the room’s humidity and temperature', button: 'Weigh' };
    case 'name-colours':
      return { title: 'Name its colours', detail: 'Every colour will be tested', button: 'Name colours' };
    case 'test-dye':
      return {
        title: `Test ${deed.test.name}`,
        detail: `${deed.test.liquid}, ${deed.test.side}${deed.more > 0 ? `; ${deed.more} more after it` : ''}`,
        button: 'Start the test',
      };
    case 'enter-drying-hours':
      return {
        title: 'Say how long it will dry',
        detail: 'By the drying room’s forecast, or by hand; above 48 h no wash',
        button: 'Forecast the drying',
      };
    case 'forecast-drying':
      return {
        title: 'Forecast its drying again',
        detail: 'The forecast is too old to wet a rug by',
        button: 'Forecast the drying',
      };
    case 'turn-rug':
      return {
        title: 'Turn it',
        detail: 'Every 4 to 6 h; two people for a heavy wet rug',
        button: 'Open drying',
      };
    case 'resolve-plan':
      return {
        title: 'No plan is possible',
        detail: 'See what clashes and what would loosen it',
        button: 'Open the plan',
      };
    case 'agree-plan':
      return {
        title: deed.again ? 'Put the tighter plan on record' : 'Put the plan on record',
        detail: deed.again ? 'The agreed one no longer holds' : 'Read the limits and their reasons',
        button: 'Open the plan',
      };
    case 'sign-off':
      return { title: `Sign-off: ${listed(deed.who)}`, detail: 'Before any wet step', button: 'Sign off' };
    case 'quote-price':
      return { title: 'Quote the price', detail: 'With a ceiling not to exceed', button: 'Quote' };
    case 'ask-consent':
      return {
        title: deed.again ? 'Ask for consent again' : 'Ask for consent',
        detail: deed.again ? 'The earlier consent no longer holds' : 'Each risk of this rug, in plain words',
        button: 'Open the consent',
      };
    case 'settle-refusal':
      return { title: 'Settle it with the client', detail: 'They said no', button: 'Open the agreement' };
    case 'do-the-work':
      return {
        title: `Do the work: ${listed(deed.scope)}`,
        detail: 'Then record it',
        button: 'Record the work',
      };
    case 'inspect':
      return { title: 'Inspect it', detail: 'Every mark from intake, one by one', button: 'Inspect' };
    case 'hand-back':
      return { title: 'Hand it back', detail: 'Ready for its owner', button: 'Return it' };
    case 'receive-again':
      return { title: 'Not in the workshop', detail: 'A new visit begins at the door', button: 'Receive it' };
  }
}
