/** A problem that was expected: a permanent kebab-case code and the facts its words are made from. */
export interface Problem<Code extends string = string, Facts = Readonly<Record<string, unknown>>> {
  readonly code: Code;
  readonly facts: Facts;
}

export type Result<Value, P extends Problem = Problem> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: P };

/** Wraps a value as a success. */
export const done = <Value>(value: Value): { readonly ok: true; readonly value: Value } => ({
  ok: true,
  value,
});

/** Wraps a problem as a refusal. Words for the code are chosen in `text/`, never here. */
export const refused = <Code extends string, Facts>(
  code: Code,
  facts: Facts,
): { readonly ok: false; readonly problem: Problem<Code, Facts> } => ({
  ok: false,
  problem: { code, facts },
});
