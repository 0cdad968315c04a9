export * from './desorption.ts';
export * from './humidAir.ts';
export * from './monotoneCurve.ts';
export * from './regain.ts';
export * from './saturation.ts';
