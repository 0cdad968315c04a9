export * from './countWeave.ts';
export * from './density.ts';
export * from './labour.ts';
export type { NodesHint } from './nodes.ts';
export * from './overlay.ts';
export type { Picture, Window } from './picture.ts';
export * from './severalPlaces.ts';
export * from './weaveAnswer.ts';
