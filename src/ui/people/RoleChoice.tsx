import type { Role } from '../../dossier/workshopFacts.ts';
import { ManyChoice } from '../kit/index.ts';

/** What a person may do here. */
export function RoleChoice(props: {
  readonly value: readonly Role[];
  readonly onChange: (roles: readonly Role[]) => void;
}) {
  return (
    <ManyChoice
      label="Roles"
      columns={1}
      options={[
        {
          value: 'owner',
          words: 'Owner',
          hint: 'decides, quotes, signs off, may override some rules, sees to people',
        },
        { value: 'washer', words: 'Washer', hint: 'tests, washes, dries, inspects' },
        { value: 'counter', words: 'Counter or driver', hint: 'takes rugs in, meets clients, hands back' },
      ]}
      value={props.value}
      onChange={props.onChange}
      problem={props.value.length === 0 ? 'No role is chosen. Choose at least one.' : null}
      isRequired
    />
  );
}
