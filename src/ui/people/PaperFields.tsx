import type { WorkshopSettings } from '../../dossier/workshopFacts.ts';
import { Choice, LineField, PassageField, Section } from '../kit/index.ts';

export interface SettingsProps {
  readonly settings: WorkshopSettings;
  readonly change: (changed: Partial<WorkshopSettings>) => void;
  readonly isDisabled: boolean;
}

/** How the workshop appears on paper. */
export function PaperFields({ settings, change, isDisabled }: SettingsProps) {
  const isNoCurrency = !/^[A-Z]{3}$/.test(settings.currency);
  return (
    <Section title="On papers">
      <div className="form">
        <LineField
          label="Name of the workshop"
          value={settings.name}
          onChange={(name) => change({ name })}
          isDisabled={isDisabled}
          problem={settings.name.trim() === '' ? 'The papers need a name. Write the workshop’s name.' : null}
          isRequired
        />
        <PassageField
          label="Lines under the name"
          hint="Address, phone, register number; up to six lines."
          value={settings.lines.join('\n')}
          onChange={(text) => change({ lines: text.split('\n').slice(0, 6) })}
          isDisabled={isDisabled}
          rows={4}
        />
        <LineField
          label="Currency"
          hint="Three capital letters, such as EUR."
          value={settings.currency}
          onChange={(currency) => change({ currency: currency.toUpperCase() })}
          isDisabled={isDisabled}
          mostCharacters={3}
          problem={
            isNoCurrency ? `“${settings.currency}” is no currency. Write three letters, such as EUR.` : null
          }
          isRequired
        />
        <Choice
          label="Units"
          options={[
            { value: 'metric', words: 'Metric', hint: 'cm, kg, L, °C' },
            { value: 'customary', words: 'Customary too', hint: 'feet and inches, pounds beside metric' },
          ]}
          value={settings.units}
          onChange={(units) => change({ units })}
          isDisabled={isDisabled}
        />
        <Choice
          label="Paper size"
          options={[
            { value: 'a4', words: 'A4' },
            { value: 'letter', words: 'Letter' },
          ]}
          value={settings.paper}
          onChange={(paper) => change({ paper })}
          isDisabled={isDisabled}
        />
      </div>
    </Section>
  );
}
