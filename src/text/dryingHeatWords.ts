/** Whether heat was on where a rug was put to dry, as the record has it. */
export const dryingHeatWords = (heated: boolean | undefined): string => {
  if (heated === undefined) return 'heat not known: counts as heated';
  return heated ? 'heat was on' : 'no heat when it was put there';
};
