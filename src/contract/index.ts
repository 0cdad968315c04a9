export * from './access.ts';
export * from './cards.ts';
export * from './readShape.ts';
export * from './record.ts';
export * from './rooms.ts';
export * from './rulebook.ts';
export * from './safekeeping.ts';
export * from './shelf.ts';
