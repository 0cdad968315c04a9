export * from './conditionProblem.ts';
export * from './conditionWords.ts';
export * from './extent.ts';
export * from './fewerPoints.ts';
export * from './likelyWords.ts';
export * from './pictureMap.ts';
export * from './rugFrame.ts';
export * from './sizeChange.ts';
