export * from './ciede2000.ts';
export * from './colourProblem.ts';
export * from './fastnessGrade.ts';
export * from './gradeChances.ts';
export * from './lab.ts';
export * from './lightPlane.ts';
export * from './measureArea.ts';
export * from './readBlot.ts';
