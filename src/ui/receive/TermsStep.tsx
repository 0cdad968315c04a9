import { Choice, DayField, LineField, MoneyField, NumberField, PassageField } from '../kit/index.ts';
import type { RugStepProps } from './stepProps.ts';

const soilings = [
  { value: 'dust only', words: 'Dust only' },
  { value: 'soiled', words: 'Soiled' },
] as const;

/** What the client wishes, what they say it is worth, and until when. */
export function TermsStep({ rug, changeRug, settings, faults }: RugStepProps) {
  return (
    <div className="form">
      <PassageField
        label="What does the client want, and why?"
        value={rug.reason}
        onChange={(reason) => changeRug({ reason })}
        hint="In their own words"
        problem={faults['reason'] ?? null}
        isRequired
      />
      <MoneyField
        label="Value the client declares"
        currency={settings.currency}
        value={rug.declaredValue}
        onChange={(declaredValue) => changeRug({ declaredValue })}
        hint="What they say; it is not an appraisal"
      />
      <DayField
        label="Promised for"
        value={rug.promisedFor}
        onChange={(promisedFor) => changeRug({ promisedFor })}
        problem={faults['promised'] ?? null}
        hint="Leave it empty until the plan is made, if nothing was promised"
      />
      <LineField
        label="Where does it lie now?"
        value={rug.place}
        onChange={(place) => changeRug({ place })}
        hint="For instance: shelf B2"
      />
      <Choice
        label="Soil"
        options={soilings}
        value={rug.soiling}
        onChange={(soiling) => changeRug({ soiling })}
      />
      <NumberField
        label="Months since it was last washed, if known"
        unit="months"
        least={0}
        most={2400}
        value={rug.monthsSinceWash}
        onChange={(monthsSinceWash) => changeRug({ monthsSinceWash })}
      />
    </div>
  );
}
