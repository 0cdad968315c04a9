export * from './density.ts';
export * from './labour.ts';
