import { Choice, ManyChoice, MoneyField, NumberField, Section } from '../kit/index.ts';
import type { SettingsProps } from './PaperFields.tsx';

/** What the plans reckon with. */
export function WorkFields({ settings, change, isDisabled }: SettingsProps) {
  return (
    <Section title="For the work">
      <div className="form">
        <Choice
          label="Dry standard"
          hint="When a rug counts as dry depends on the instruments you have."
          columns={1}
          options={[
            { value: 'full', words: 'Full', hint: 'scale, moisture meter and humidity pocket' },
            { value: 'without scale', words: 'Without a scale', hint: 'meter and humidity pocket' },
            { value: 'without meter', words: 'Without a meter', hint: 'scale and humidity pocket' },
          ]}
          value={settings.dryStandard}
          onChange={(dryStandard) => change({ dryStandard })}
          isDisabled={isDisabled}
        />
        <MoneyField
          label="A washer decides alone up to"
          hint="Above this declared value, or when no value is declared, the owner signs off before any wet step. Empty: always."
          currency={settings.currency}
          value={settings.washersAuthority}
          onChange={(washersAuthority) => change({ washersAuthority })}
        />
        <NumberField
          label="One person lifts at most"
          hint="Wet mass; above it the plan asks for more people. Your local rules on lifting come first."
          unit="kg"
          least={5}
          most={60}
          value={settings.liftingLimitKg}
          onChange={(kg) => {
            if (kg !== null) change({ liftingLimitKg: kg });
          }}
          isDisabled={isDisabled}
        />
        <ManyChoice
          label="Out of order now"
          hint="Plans change at once; agreed ones may need a new consent."
          options={[
            { value: 'extractor', words: 'Extractor' },
            { value: 'dryer', words: 'Dryer' },
            { value: 'power', words: 'Power' },
          ]}
          value={settings.equipmentDown}
          onChange={(equipmentDown) => change({ equipmentDown })}
          isDisabled={isDisabled}
        />
      </div>
    </Section>
  );
}
