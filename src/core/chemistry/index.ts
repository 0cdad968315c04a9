export * from './acidTable.ts';
export * from './bathPh.ts';
export * from './bathRecipe.ts';
export * from './dilution.ts';
export * from './dose.ts';
export * from './gasWarnings.ts';
