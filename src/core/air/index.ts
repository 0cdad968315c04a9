export * from './monotoneCurve.ts';
export * from './regain.ts';
