import sharp from 'sharp';

/** A photograph of an invented rug: red field, blue border, seen from above on a grey floor. */
export function rugPicture(turn = 0): Promise<Buffer> {
  const rug = `<svg xmlns="http://www.w3.org/2000/svg" width="900" height="1200">
    <rect width="900" height="1200" fill="#8f8d88"/>
    <g transform="rotate(${turn} 450 600)">
      <rect x="150" y="150" width="600" height="900" fill="#27406b"/>
      <rect x="210" y="210" width="480" height="780" fill="#8d2f2a"/>
      <ellipse cx="450" cy="600" rx="130" ry="210" fill="#d9c9a3"/>
    </g></svg>`;
  return sharp(Buffer.from(rug)).jpeg({ quality: 80 }).toBuffer();
}
