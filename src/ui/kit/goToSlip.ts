/** Marks a field whose text is no value: what stands there would not be recorded. */
export const slipMark = (isSlip: boolean) => (isSlip ? { 'data-slip': '' } : {});

/**
 * Takes the person to the first field, around what was pressed, whose text is no value. A record made
 * beside it would be without what they typed there.
 *
 * @returns whether there was one
 */
export function goToSlip(): boolean {
  const around = document.activeElement?.closest('[role=dialog], section, main') ?? null;
  const inputs = [...(around?.querySelectorAll<HTMLInputElement>('input, textarea') ?? [])];
  const slip = inputs.find(
    (input) => input.closest('[data-slip]') !== null || (input.type === 'date' && input.validity.badInput),
  );
  slip?.focus();
  return slip !== undefined;
}
