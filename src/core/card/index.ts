export * from './cardPdf.ts';
export * from './cardText.ts';
export * from './countOnCard.ts';
export * from './drawCard.ts';
export * from './findCodes.ts';
export { type Homography, homographyOf, type PointPair, project, solve, unproject } from './homography.ts';
export * from './readCard.ts';
export { type WindowPicture, windowPicture } from './windowPicture.ts';
