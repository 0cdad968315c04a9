export * from './cardPdf.ts';
export * from './cardText.ts';
export * from './countOnCard.ts';
export * from './drawCard.ts';
export * from './findCodes.ts';
export { type Homography, project } from './homography.ts';
export * from './readCard.ts';
export { type WindowPicture, windowPicture } from './windowPicture.ts';
