import { roomHeatOf } from '../../dossier/index.ts';
import { useRoom } from '../call/index.ts';
import { Choice } from '../kit/index.ts';

export type HeatTold = 'on' | 'off' | 'unknown';

const options = [
  { value: 'on', words: 'Yes, heat is on', hint: 'heater, stove, warm pipes, a heated dryer' },
  { value: 'off', words: 'No heat' },
  { value: 'unknown', words: 'I do not know', hint: 'counts as heat' },
] as const;

/** What is known of heat where a rug is put to dry: as the person says, else by the switches of the room. */
export interface HeatHere {
  readonly told: HeatTold | null;
  /** Why it is filled in, or what contradicts it. */
  readonly why: string;
}

/** The answer as the record keeps it; what nobody knows is left out, and counts as heat. */
export const heatedBy = (told: HeatTold | null): { readonly heated?: boolean } =>
  told === null || told === 'unknown' ? {} : { heated: told === 'on' };

/**
 * Whether heat is on where a rug is put to dry.
 *
 * @param room - the drying room chosen, null elsewhere
 * @param said - what the person answered; null: not yet
 */
export function useHeatHere(room: string | null, said: HeatTold | null): HeatHere {
  const { answer } = useRoom(room);
  const known = answer === null ? null : roomHeatOf(answer.standing);
  if (known === null || known.heat === 'unknown') {
    return { told: said, why: 'Solvent left in a rug catches fire in heat. Unknown counts as heat.' };
  }
  const names = known.by.join(' and ');
  const runs = known.heat === 'on';
  if (said === null || said === known.heat) {
    return {
      told: known.heat,
      why: `By the switches on record: ${names} ${runs ? 'runs' : 'stands still'}.`,
    };
  }
  const record = `The record says that ${names} ${runs ? 'runs' : 'stands still'}`;
  return { told: said, why: `${record}: switch it in the drying room too, so that both say the same.` };
}

/** Whether heat is on, in large answers. */
export function HeatField(props: { readonly heat: HeatHere; readonly onChange: (told: HeatTold) => void }) {
  const { heat, onChange } = props;
  return (
    <Choice
      label="Is heat on in this room?"
      columns={3}
      options={options}
      value={heat.told}
      onChange={onChange}
      hint={heat.why}
    />
  );
}
