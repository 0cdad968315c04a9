export * from './mouldIndexHukka1999.ts';
export * from './wetClock.ts';
