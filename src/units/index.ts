export * from './measure.ts';
export * from './quantity.ts';
export * from './result.ts';
