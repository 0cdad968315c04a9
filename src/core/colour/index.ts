export * from './ciede2000.ts';
export * from './fastnessGrade.ts';
export * from './lab.ts';
