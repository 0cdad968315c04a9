import { useRef, useState } from 'react';
import type { RugFact } from '../../dossier/index.ts';
import type { Problem } from '../../units/index.ts';
import { goToSlip, useKept } from '../kit/index.ts';
import { forgetValue } from '../kit/kept.ts';
import { useDossier } from './dossierView.ts';

/** A form of the dossier, to be handed to `useField` for each of its fields. */
export interface Form {
  readonly key: string;
  readonly fields: Set<string>;
}

/** Constants for fields that begin empty. */
export const noItems: readonly never[] = [];
export const nothingTyped = {};

/**
 * Records from a form. What is typed in its fields outlives a closed sheet, a reload and an expired
 * session; it is forgotten once the server has acknowledged it.
 *
 * @param name - one per form and subject, such as `note` or `claim/pile`
 * @param onKept - called when it is on record
 */
export function useForm(name: string, onKept: () => void = () => {}) {
  const { rug, record } = useDossier();
  const fields = useRef(new Set<string>());
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  const key = `dossier/${rug}/${name}`;
  const forget = () => {
    for (const field of fields.current) forgetValue(`${key}/${field}`);
  };
  const act = async (...facts: readonly RugFact[]): Promise<boolean> => {
    if (goToSlip()) return false;
    setBusy(true);
    setProblem(null);
    const kept = await record(facts);
    setBusy(false);
    if (!kept.ok) {
      setProblem(kept.problem);
      return false;
    }
    forget();
    onKept();
    return true;
  };
  const form: Form = { key, fields: fields.current };
  return { form, act, isBusy, problem, forget };
}

/** State of one field of a form; `initial` is a constant, not a new object each time. */
export function useField<Value>({ key, fields }: Form, field: string, initial: Value) {
  fields.add(field);
  const [value, set] = useKept<Value>(`${key}/${field}`, initial);
  return [value, set] as const;
}
